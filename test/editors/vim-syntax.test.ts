import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseFile } from '../../core/syntax/file.ts';
import { projectFolder } from './places.ts';
import { runProgram } from './processes.ts';

/** Neovim reads the syntax files of Vim; the environment variable NEOVIM names another program. */
const neovim = process.env.NEOVIM ?? 'nvim';
const folder = mkdtempSync(join(tmpdir(), 'doughwright-vim-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Every formula file of the examples, and every formula in the fixtures, whatever else those hold. */
function texts(): string[] {
  const below = (path: string): string[] =>
    readdirSync(join(projectFolder, path), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(?:dough|txt)$/.test(name))
      .map((name) => readFileSync(join(projectFolder, path, name), 'utf8'));
  return [...below('examples'), ...below('test/fixtures/rules'), ...below('test/fixtures/actions')];
}

/** The group of the first letter of each line, as the editor colours it. */
let coloured: string[][];
const all = texts();

beforeAll(async () => {
  const [list, report] = [join(folder, 'texts.json'), join(folder, 'groups.json')];
  writeFileSync(list, JSON.stringify(all.map((text) => text.split(/\r\n|\n|\r/))));
  const script = join(folder, 'colour.lua');
  writeFileSync(
    script,
    `vim.opt.runtimepath:prepend('${join(projectFolder, 'syntaxes/vim')}')
vim.cmd('syntax on')
local found = {}
for _, lines in ipairs(vim.fn.json_decode(vim.fn.readfile('${list}'))) do
  vim.cmd('enew!')
  vim.api.nvim_buf_set_lines(0, 0, -1, false, lines)
  vim.bo.syntax = 'doughwright'
  local groups = {}
  for number, line in ipairs(lines) do
    local column = #line:match('^%s*') + 1
    local id = vim.fn.synID(number, column, 1)
    groups[number] = vim.fn.synIDattr(id, 'name')
  end
  found[#found + 1] = groups
end
vim.fn.writefile({ vim.fn.json_encode(found) }, '${report}')
`,
  );
  const said = await runProgram(
    neovim,
    ['--headless', '--clean', '-n', '-c', `luafile ${script}`, '-c', 'qall!'],
    110_000,
    { ...process.env, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder, XDG_DATA_HOME: folder },
  );
  if (!existsSync(report)) throw new Error(`The editor wrote no report; it said:\n${said}`);
  coloured = JSON.parse(readFileSync(report, 'utf8')) as string[][];
}, 120_000);

describe('the syntax file of Vim', () => {
  const lines = (wanted: (kind: string, text: string) => boolean): string[][] =>
    all.flatMap((text, at) =>
      parseFile(text).blocks.flatMap(({ block, firstLine }) =>
        block.lines.flatMap((line, index) =>
          wanted(line.statement.kind, line.text)
            ? [[coloured[at]?.[firstLine + index] ?? '', line.text]]
            : [],
        ),
      ),
    );

  it('colours what the parser reads as a header of a section, and nothing else, as one', () => {
    // A section that nobody knows is none, and a header without its word is coloured once it has it.
    const headers = lines((kind, text) => kind === 'header' && /^\s*[a-z]+\b[^#]*:\s*(?:#.*)?$/i.test(text));
    expect(headers.length).toBeGreaterThan(500);
    const plain = headers.filter(([group]) => group !== 'doughwrightSection');
    expect([...new Set(plain.map(([, text]) => text?.trim().split(/[\s:]/)[0]))].slice(0, 30)).toEqual([]);
    const others = lines((kind) => kind === 'ingredient' || kind === 'step' || kind === 'empty');
    expect(others.length).toBeGreaterThan(1000);
    expect(others.filter(([group]) => group === 'doughwrightSection').slice(0, 10)).toEqual([]);
  });

  it('colours comments, properties and steps', () => {
    const comments = lines((_, text) => /^\s*#/.test(text));
    expect(comments.length).toBeGreaterThan(30);
    expect(comments.filter(([group]) => group !== 'doughwrightComment')).toEqual([]);
    // What a trial says of a part begins with the name of the part; a fixture may mark the place of a cursor.
    const properties = lines(
      (kind, text) =>
        kind === 'property' &&
        /^\s+\S/.test(text) &&
        !/°C|‸/.test(text.replace(/^\s+[a-z ]+[\d.,]+ °C$/i, '°C')),
    );
    expect(properties.length).toBeGreaterThan(500);
    const plain = properties.filter(
      ([group]) => group !== 'doughwrightProperty' && group !== 'doughwrightStep',
    );
    expect(plain.slice(0, 20)).toEqual([]);
  });
});
