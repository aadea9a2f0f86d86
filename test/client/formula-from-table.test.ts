import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createTableImports } from '../../client/imports/formula-from-table.ts';
import { languageId } from '../../client/names.ts';
import type { Wire } from '../../client/wire.ts';

/** An editor with one document of formulas and something selected in it. */
const at = vi.hoisted(() => ({
  editor: {} as Record<string, unknown>,
  written: [] as { where: unknown; text: string }[],
  opened: [] as string[],
}));

vi.mock('vscode', () => ({
  l10n: { t: (text: string) => text },
  window: {
    get activeTextEditor() {
      return at.editor;
    },
    showTextDocument: async () => at.editor,
    showInformationMessage: async () => undefined,
  },
  workspace: {
    getWorkspaceFolder: () => true,
    openTextDocument: async ({ content }: { content: string }) => {
      at.opened.push(content);
      return {};
    },
  },
}));

const selected = { isEmpty: false, start: { line: 2 }, end: { line: 4, isEqual: () => true } };
const elsewhere = { isEmpty: true, start: { line: 9 }, end: { line: 9, isEqual: () => true } };

function importing(meanwhile: () => void) {
  const askImportTable = async () => {
    meanwhile();
    return { text: 'formula Tin:\n', formulas: ['Tin'], notes: [] };
  };
  const log = { info: () => {}, warn: () => {} };
  return createTableImports({ askImportTable } as unknown as Wire, log as never).fromSelection();
}

describe('a formula made of a selected table', () => {
  beforeEach(() => {
    Object.assign(at, { written: [], opened: [] });
    at.editor = {
      document: {
        ...{ languageId, version: 3, uri: 'file:///quay/tin.dough' },
        getText: () => 'flour\t100',
        lineAt: () => ({ text: '', range: { end: { isEqual: () => true } } }),
      },
      selection: selected,
      edit: async (make: (edit: { replace(where: unknown, text: string): void }) => void) => {
        make({ replace: (where, text) => at.written.push({ where, text }) });
        return true;
      },
    };
  });

  it('takes the place of what was selected, wherever the cursor is by then', async () => {
    await importing(() => {
      at.editor.selection = elsewhere;
    });
    expect(at.written).toEqual([{ where: selected, text: 'formula Tin:' }]);
  });

  it('opens beside a text that was typed in meanwhile', async () => {
    await importing(() => {
      (at.editor.document as { version: number }).version = 4;
    });
    expect(at.written).toEqual([]);
    expect(at.opened).toEqual(['formula Tin:\n']);
  });
});
