import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram, projectFolder } from './places.ts';
import { runProgram } from './processes.ts';

const neovim = process.env.NEOVIM ?? 'nvim';
const emacs = process.env.EMACS_PROGRAM ?? 'emacs';
const vim = process.env.VIM_PROGRAM ?? 'vim';
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

/** Those for Neovim that the one here takes: what is written for older ones works on the newest too. */
function neovimSnippets(): string[] {
  const said = execFileSync(neovim, ['--version'], { encoding: 'utf8' });
  const version = /NVIM v(\d+)\.(\d+)/.exec(said);
  const isNew = Number(version?.[1]) > 0 || Number(version?.[2]) >= 11;
  const [newest = '', older = ''] = snippets('Neovim', 'lua');
  expect(older).toContain('start_client');
  return isNew ? [newest, older] : [older];
}

const bakery = join(folder, 'bakery, by the quay');

/** A machine on which `doughwright` is on the path, and a file with two faults below a repository. */
function machine(): { readonly file: string; readonly env: Record<string, string | undefined> } {
  const bin = join(folder, 'bin');
  for (const path of [bin, join(bakery, 'formulas')]) mkdirSync(path, { recursive: true });
  // What stands there in a worktree and in a submodule.
  writeFileSync(join(bakery, '.git'), 'gitdir: ../elsewhere\n');
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
    for (const snippet of neovimSnippets()) {
      const { file, env } = machine();
      const [init, report] = [join(folder, 'init.lua'), join(folder, 'report.json')];
      writeFileSync(init, snippet);
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

  it('for Neovim: one server for all files of a folder, which is gone with the editor', async () => {
    for (const snippet of neovimSnippets()) {
      const { file, env } = machine();
      const [init, report] = [join(folder, 'init.lua'), join(folder, 'servers.json')];
      writeFileSync(init, snippet);
      const wait = (files: number): string =>
        `lua vim.wait(15000, function() local clients = (vim.lsp.get_clients or vim.lsp.get_active_clients)(); return clients[1] ~= nil and clients[1].initialized == true and #vim.tbl_filter(function(one) return vim.lsp.buf_is_attached(one, clients[1].id) end, vim.api.nvim_list_bufs()) == ${files} end)`;
      const look = `lua local roots = vim.tbl_map(function(one) return one.config.root_dir end, (vim.lsp.get_clients or vim.lsp.get_active_clients)()); vim.fn.writefile({ vim.fn.json_encode({ roots = roots, omni = vim.bo.omnifunc }) }, '${report}')`;
      const other = `edit ${join(bakery, 'flours.dough').replaceAll(' ', '\\ ')}`;
      const said = await runProgram(
        neovim,
        ['--headless', '-n', '-u', init, file].concat(
          [wait(1), 'set hidden', other, wait(2), look, 'qall!'].flatMap((one) => ['-c', one]),
        ),
        60_000,
        env,
      );
      expect(existsSync(report), said).toBe(true);
      const found: unknown = JSON.parse(readFileSync(report, 'utf8'));
      expect(found).toEqual({ roots: [bakery], omni: 'v:lua.vim.lsp.omnifunc' });
      rmSync(report);
    }
  });

  it('for Emacs: findings by eglot, and a completion that asks the server and not the spell checker', async () => {
    const [snippet] = snippets('Emacs', 'elisp');
    const { file, env } = machine();
    const [init, report] = [join(folder, 'init.el'), join(folder, 'emacs.json')];
    writeFileSync(
      init,
      `;; What a start with a person does by itself.
(require 'json)
(package-activate-all)
${snippet}
(defun wait-until (is-so) (let ((turns 0)) (while (and (< turns 300) (not (funcall is-so))) (accept-process-output nil 0.1) (setq turns (1+ turns)))))
(find-file "${file}")
;; Without a person there are no commands, behind which a mode starts its client.
(run-hooks 'post-command-hook)
(wait-until (lambda () (and (fboundp 'eglot-managed-p) (eglot-managed-p))))
(wait-until (lambda () (or (flymake-diagnostics) (progn (flymake-start) nil))))
(defvar told (vconcat (mapcar #'flymake-diagnostic-text (flymake-diagnostics))))
(goto-char (point-max))
(insert "  fresh y")
(let* ((found (run-hook-with-args-until-success 'completion-at-point-functions))
       (offered (all-completions "fresh y" (nth 2 found)))
       (said (list :mode (symbol-name major-mode)
                   :messages told
                   :offered (vconcat (mapcar #'substring-no-properties offered)))))
  (with-temp-file "${report}" (insert (json-encode said))))
(eglot-shutdown-all)
`,
    );
    const said = await runProgram(emacs, ['--batch', '--no-init-file', '--load', init], 90_000, env);
    expect(existsSync(report), said).toBe(true);
    const { mode, messages, offered } = JSON.parse(readFileSync(report, 'utf8')) as Record<string, unknown>;
    expect(mode).toBe('doughwright-mode');
    expect(messages).toEqual([expect.stringContaining('65')]);
    expect(offered).toEqual(expect.arrayContaining([expect.stringContaining('fresh yeast')]));
  });

  it('for Vim: colours by the syntax file, and findings by ALE', async () => {
    const [colours, client] = snippets('Vim', 'vim');
    const { file, env } = machine();
    const [init, look, report] = ['.vimrc', 'look.vim', 'vim.json'].map((name) => join(folder, name));
    const here = colours?.replace('~/src/doughwright', projectFolder);
    expect(here).not.toBe(colours);
    writeFileSync(init!, `set nocompatible\nsyntax on\n${here}${client}`);
    writeFileSync(
      look!,
      `let turns = 0
while turns < 300 && len(ale#engine#GetLoclist(bufnr(''))) != 1
  sleep 100m
  let turns += 1
endwhile
let messages = map(copy(ale#engine#GetLoclist(bufnr(''))), {_, one -> one.text})
let group = synIDattr(synID(1, 1, 1), 'name')
let omni = &omnifunc
call writefile([json_encode({'filetype': &filetype, 'messages': messages, 'group': group, 'omni': omni})], '${report}')
qall!
`,
    );
    const said = await runProgram(
      vim,
      ['-n', '-i', 'NONE', '-es', '-u', init!, file, '-S', look!],
      90_000,
      env,
    );
    expect(existsSync(report!), said).toBe(true);
    expect(JSON.parse(readFileSync(report!, 'utf8'))).toEqual({
      filetype: 'doughwright',
      messages: [expect.stringContaining('65')],
      group: 'doughwrightSection',
      omni: 'ale#completion#OmniFunc',
    });
  });
});
