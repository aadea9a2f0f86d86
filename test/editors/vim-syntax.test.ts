import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseFile } from '../../core/syntax/file.ts';
import { longestLine } from '../../core/syntax/line.ts';
import type { ParsedLine } from '../../core/syntax/tree.ts';
import { formulaTexts } from '../highlighting/formula-texts.ts';
import { projectFolder } from './places.ts';
import { runProgram } from './processes.ts';

/** The environment variables NEOVIM and VIM_PROGRAM name other programs. */
const programs = [
  { name: 'Neovim', command: process.env.NEOVIM ?? 'nvim', args: ['--headless', '--clean', '-n'] },
  {
    name: 'Vim',
    command: process.env.VIM_PROGRAM ?? 'vim',
    args: ['-Nu', 'NONE', '-n', '-i', 'NONE', '-es'],
  },
];
const folder = mkdtempSync(join(tmpdir(), 'doughwright-vim-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const all = [...new Set(formulaTexts().map((text) => text.replace(/^\uFEFF/, '')))]
  // Neither takes the character of code 0 from JSON.
  .filter((text) => text.length < longestLine && !text.includes('\0'));

describe.each(programs)('the syntax file in $name', ({ name, command, args }) => {
  /** The group of the first letter of each line, as the editor colours it. */
  let coloured: string[][];

  beforeAll(async () => {
    const [list, report] = [join(folder, `${name}-texts.json`), join(folder, `${name}-groups.json`)];
    writeFileSync(list, JSON.stringify(all.map((text) => text.split(/\r\n|\n|\r/))));
    const script = join(folder, `${name}.vim`);
    writeFileSync(
      script,
      `set encoding=utf-8
set runtimepath^=${join(projectFolder, 'syntaxes/vim')}
set redrawtime=100000
syntax on
let found = []
for lines in json_decode(join(readfile('${list}'), ''))
  silent %bwipeout!
  call setline(1, lines)
  set syntax=doughwright
  let groups = []
  for number in range(1, len(lines))
    let column = match(lines[number - 1], '\\S') + 1
    call add(groups, synIDattr(synID(number, column, 1), 'name'))
  endfor
  call add(found, groups)
endfor
call writefile([json_encode(found)], '${report}')
qall!
`,
    );
    const said = await runProgram(command, [...args, '-S', script], 110_000, {
      ...process.env,
      XDG_STATE_HOME: folder,
      XDG_CACHE_HOME: folder,
      XDG_DATA_HOME: folder,
    });
    if (!existsSync(report)) throw new Error(`The editor wrote no report; it said:\n${said}`);
    coloured = JSON.parse(readFileSync(report, 'utf8')) as string[][];
  }, 120_000);

  const lines = (wanted: (line: ParsedLine) => boolean): [group: string, text: string][] =>
    all.flatMap((text, at) =>
      parseFile(text).blocks.flatMap(({ block, firstLine }) =>
        block.lines.flatMap((line, index): [string, string][] =>
          wanted(line) ? [[coloured[at]?.[firstLine + index] ?? '', line.text]] : [],
        ),
      ),
    );
  const others = (found: readonly [string, string][], ...groups: string[]): readonly [string, string][] =>
    found.filter(([group]) => !groups.includes(group));

  it('colours what the parser reads as a header of a section, and nothing else, as one', () => {
    // A section that nobody knows is none, and a header without its word or its colon is coloured once it has it.
    const headers = lines(
      ({ statement, problems }) =>
        statement.kind === 'header' && statement.section !== 'unknown' && problems.length === 0,
    );
    expect(headers.length).toBeGreaterThan(1800);
    expect(others(headers, 'doughwrightSection')).toEqual([]);
    const noHeaders = lines(
      ({ statement: { kind } }) => kind === 'ingredient' || kind === 'step' || kind === 'blank',
    );
    expect(noHeaders.length).toBeGreaterThan(3000);
    expect(noHeaders.filter(([group]) => group === 'doughwrightSection')).toEqual([]);
  });

  it('colours comments, properties and steps', () => {
    const comments = lines(({ text }) => /^\s*#/.test(text));
    expect(comments.length).toBeGreaterThan(60);
    expect(others(comments, 'doughwrightComment')).toEqual([]);
    // What a trial says of a part begins with the name of the part.
    const properties = lines(
      ({ statement, text, problems }) =>
        statement.kind === 'property' &&
        statement.property !== 'part temperature' &&
        /^\s/.test(text) &&
        problems.length === 0,
    );
    expect(properties.length).toBeGreaterThan(2500);
    expect(others(properties, 'doughwrightProperty', 'doughwrightStep')).toEqual([]);
    const steps = lines(
      ({ statement, text, problems }) =>
        statement.kind === 'step' &&
        statement.known !== undefined &&
        /^\s/.test(text) &&
        problems.length === 0,
    );
    expect(steps.length).toBeGreaterThan(500);
    expect(others(steps, 'doughwrightStep', 'doughwrightProperty')).toEqual([]);
  });
});
