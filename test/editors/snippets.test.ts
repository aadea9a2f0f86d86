import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram, projectFolder } from './places.ts';
import { runProgram } from './processes.ts';

const neovim = process.env.NEOVIM ?? 'nvim';
const folder = mkdtempSync(join(tmpdir(), 'doughwright-snippets-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The snippets of one section of the guide, as they stand there. */
function snippets(heading: string, language: string): string[] {
  const page = readFileSync(join(projectFolder, 'docs/guide/other-editors.md'), 'utf8');
  const section = page.split(/^## /m).find((one) => one.startsWith(heading)) ?? '';
  return [...section.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].flatMap(([, own, text]) =>
    own === language && text !== undefined ? [text] : [],
  );
}

/** A machine on which `doughwright` is on the path, and a file with two faults below a repository. */
function machine(): { readonly file: string; readonly env: Record<string, string | undefined> } {
  const [bin, bakery] = [join(folder, 'bin'), join(folder, 'bakery')];
  for (const path of [bin, join(bakery, '.git'), join(bakery, 'formulas')])
    mkdirSync(path, { recursive: true });
  const command = join(bin, 'doughwright');
  writeFileSync(command, `#!/bin/sh\nexec '${nodeProgram}' '${commandLineProgram()}' "$@"\n`);
  chmodSync(command, 0o755);
  writeFileSync(join(bakery, 'flours.dough'), 'flour quay white:\n  grain wheat\n');
  const file = join(bakery, 'formulas', 'tin.dough');
  writeFileSync(file, 'formula Tin:\n  quay white  100%\n  water       65\n  salt        2%\n');
  const env = { ...process.env, PATH: [bin, process.env.PATH].join(delimiter), HOME: folder };
  return { file, env: { ...env, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder, XDG_DATA_HOME: folder } };
}

describe('the snippets of the guide, word for word', () => {
  it('for Neovim: findings of the file, names looked up in the whole repository', async () => {
    const version = /NVIM v(\d+)\.(\d+)/.exec(await runProgram(neovim, ['--version'], 10_000, process.env));
    const isNew = Number(version?.[1]) > 0 || Number(version?.[2]) >= 11;
    const [newest, older] = snippets('Neovim', 'lua');
    expect(older).toContain('start_client');
    // What is written for older ones works on the newest too.
    for (const snippet of isNew ? [newest, older] : [older]) {
      const { file, env } = machine();
      const [init, report] = [join(folder, 'init.lua'), join(folder, 'report.json')];
      writeFileSync(init, snippet ?? '');
      const look = `lua vim.wait(15000, function() return #vim.diagnostic.get(0) == 1 end); vim.fn.writefile({ vim.fn.json_encode({ filetype = vim.bo.filetype, messages = vim.tbl_map(function(one) return one.message end, vim.diagnostic.get(0)) }) }, '${report}')`;
      const said = await runProgram(
        neovim,
        ['--headless', '-n', '-u', init, file, '-c', look, '-c', 'qall!'],
        60_000,
        env,
      );
      expect(existsSync(report), said).toBe(true);
      expect(JSON.parse(readFileSync(report, 'utf8'))).toEqual({
        filetype: 'doughwright',
        messages: [expect.stringContaining('65')],
      });
      rmSync(report);
    }
  });
});
