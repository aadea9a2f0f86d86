import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openFormula, setText } from './documents.ts';
import { check, eventually } from './runner.ts';

const text = `flour mill white:
  protein 12%

formula Quay Tin:
  yield 10 pieces of 800 g
  mill white   100%
  water        65%
  salt         2%

preferment poolish:
  draws 20% of flour
  mill white   100%
  water        100%
  instant yeast 0.1%

mix by hand:
  load flour, water, poolish
  knead 9 min # accept under-developed: folded in the bulk
`;

async function openNames(): Promise<vscode.TextDocument> {
  const document = await openFormula();
  await setText(document, text);
  return document;
}

/** Where the words stand for the n-th time, counted from one. */
function placeOf(document: vscode.TextDocument, words: string, time = 1): vscode.Position {
  let at = -1;
  for (let count = 0; count < time; count++) at = document.getText().indexOf(words, at + 1);
  assert.ok(at >= 0, `no “${words}” for the ${time}th time`);
  return document.positionAt(at + 1);
}

function ask<T>(provider: string, ...asked: unknown[]): Thenable<T> {
  return vscode.commands.executeCommand<T>(`vscode.${provider}`, ...asked);
}

type Found = vscode.Location | vscode.LocationLink;
const lineOf = (found: Found): number =>
  ('targetRange' in found ? (found.targetSelectionRange ?? found.targetRange) : found.range).start.line;

check('a name leads to its definition, and to all who use it', async () => {
  const document = await openNames();
  const use = placeOf(document, 'mill white', 3);
  await eventually('the definition', async () => {
    const found = await ask<Found[]>('executeDefinitionProvider', document.uri, use);
    return found.some((one) => lineOf(one) === 0) ? true : undefined;
  });
  const uses = await ask<vscode.Location[]>('executeReferenceProvider', document.uri, use);
  assert.deepEqual(
    uses.map(lineOf).sort((one, other) => one - other),
    [0, 5, 11],
  );
  const marked = await ask<vscode.DocumentHighlight[]>('executeDocumentHighlights', document.uri, use);
  assert.equal(marked.length, 3);
});

check('a line leads to the section that its name is of', async () => {
  const document = await openNames();
  const use = placeOf(document, 'mill white', 2);
  await eventually('the section', async () => {
    const found = await ask<Found[]>('executeTypeDefinitionProvider', document.uri, use);
    return found.length > 0 ? true : undefined;
  });
});

check('a name is changed everywhere at once', async () => {
  const document = await openNames();
  const edit = await eventually('the renaming', async () =>
    ask<vscode.WorkspaceEdit | undefined>(
      'executeDocumentRenameProvider',
      document.uri,
      placeOf(document, 'poolish', 2),
      'night poolish',
    ),
  );
  assert.ok(await vscode.workspace.applyEdit(edit), 'the edit was refused');
  assert.match(document.getText(), /preferment night poolish:/);
  assert.match(document.getText(), /load flour, water, night poolish/);
});

check('symbols are found in the file and in the workspace', async () => {
  const document = await openNames();
  await eventually('the outline', async () => {
    const found = await ask<vscode.DocumentSymbol[]>('executeDocumentSymbolProvider', document.uri);
    const names = found.flatMap(({ name, children }) => [name, ...children.map((child) => child.name)]);
    return ['mill white', 'Quay Tin', 'poolish'].every((wanted) => names.some((one) => one.includes(wanted)))
      ? true
      : undefined;
  });
  await eventually('the formula in the workspace', async () => {
    const found = await ask<vscode.SymbolInformation[]>('executeWorkspaceSymbolProvider', 'quaytin');
    return found.some(({ name }) => name === 'Quay Tin') ? true : undefined;
  });
});

check('what goes into what is told as a hierarchy', async () => {
  const document = await openNames();
  const [formula] = await eventually('the formula', async () => {
    const found = await ask<vscode.CallHierarchyItem[] | undefined>(
      'prepareCallHierarchy',
      document.uri,
      placeOf(document, 'Quay Tin'),
    );
    return found && found.length > 0 ? found : undefined;
  });
  const into = await ask<vscode.CallHierarchyOutgoingCall[]>('provideOutgoingCalls', formula);
  const names = into.map(({ to }) => to.name);
  assert.ok(names.includes('mill white') && names.includes('poolish'), names.join(', '));
});

check('a selection grows from word to line to section', async () => {
  const document = await openNames();
  const word = placeOf(document, 'salt');
  await eventually('the growing selection', async () => {
    const [found] = await ask<vscode.SelectionRange[]>('executeSelectionRangeProvider', document.uri, [word]);
    let steps = 0;
    for (let at = found; at !== undefined; at = at.parent) steps++;
    return steps >= 3 ? true : undefined;
  });
});

check('an accepted code links to its page, and headers carry their totals', async () => {
  const document = await openNames();
  await eventually('the link', async () => {
    const found = await ask<vscode.DocumentLink[]>('executeLinkProvider', document.uri);
    return found.some(({ target }) => target?.path.endsWith('under-developed.md')) ? true : undefined;
  });
  await eventually('the lenses', async () => {
    const found = await ask<vscode.CodeLens[]>('executeCodeLensProvider', document.uri, 10);
    const titles = found.map(({ command }) => command?.title ?? '');
    return titles.some((title) => title.includes('flour') || title.includes('pieces')) &&
      titles.some((title) => title.includes('used by'))
      ? true
      : undefined;
  });
});

check('a file is brought into the canonical form', async () => {
  const document = await openNames();
  await setText(document, text.replace('  water        65%', 'water 65%'));
  const edits = await eventually('the edits', async () => {
    const found = await ask<vscode.TextEdit[] | undefined>('executeFormatDocumentProvider', document.uri, {
      tabSize: 2,
      insertSpaces: true,
    });
    return found && found.length > 0 ? found : undefined;
  });
  const edit = new vscode.WorkspaceEdit();
  edit.set(document.uri, edits);
  assert.ok(await vscode.workspace.applyEdit(edit), 'the edit was refused');
  assert.match(document.getText(), /^ {2}water +65%$/m);
});
