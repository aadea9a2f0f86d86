import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mixingStages } from '../../core/calc/mixing/development.ts';
import { stageWords } from '../../core/syntax/vocabulary.ts';
import { filesIn, type Import, importsOf, project } from './imports.ts';

const imports = (folder: string): Import[] => filesIn(folder, '.ts').flatMap(importsOf);
const told = ({ from, line, to }: Import): string => `${from}:${line} imports ${to}`;

describe('the core is pure', () => {
  /** DEVELOPERS.md names them too. */
  const allowed = new Set(['chevrotain', 'd3-dsv', 'diff', 'ml-levenberg-marquardt', 'yalps']);

  it('it imports itself and few pure libraries: no editor, no protocol, no file system', () => {
    const outside = imports('core').filter((one) =>
      one.isPackage ? !allowed.has(one.to) : !one.to.startsWith('core/'),
    );
    expect(outside.map(told)).toEqual([]);
  });

  it('it has no clock, no chance, no locale, no console, no global of a host', () => {
    const forbidden =
      /\bDate\s*\(|\bDate\.|\bMath\.random\b|\btoLocale\w+|\blocaleCompare\b|\bIntl\.|\bconsole\.|\bprocess\.(?:env|argv|cwd|platform|exit|std\w+|nextTick|hrtime|on)\b|\bglobalThis\b|\bsetTimeout\b|\bperformance\./;
    const found = filesIn('core', '.ts').flatMap((file) =>
      codeLines(file).flatMap((line, index) =>
        forbidden.test(line) ? [`${file}:${index + 1} ${line.trim()}`] : [],
      ),
    );
    expect(found).toEqual([]);
  });

  it('its compiler knows no types of a host', () => {
    const config = JSON.parse(readFileSync(join(project, 'core/tsconfig.json'), 'utf8')) as {
      compilerOptions: { types: unknown[] };
    };
    expect(config.compilerOptions.types).toEqual([]);
  });
});

describe('data goes from left to right', () => {
  /** From left to right. Two rooms in one place do not know each other unless `exceptions` says so. */
  const order = [
    ['text'],
    ['words'],
    ['calc'],
    ['syntax'],
    ['catalogue'],
    ['model'],
    ['analysis'],
    ['rules'],
    ['facts'],
    ['compare'],
    ['merge'],
    ['sheet'],
    ['features'],
    ['import'],
    ['history'],
    ['workspace'],
  ];
  const roomOf = (path: string): string => path.split('/')[1]!;
  const place = (room: string): number => order.findIndex((rooms) => rooms.includes(room));
  const crossings = imports('core').filter(
    (one) => !one.isPackage && one.from !== 'core/index.ts' && roomOf(one.from) !== roomOf(one.to),
  );

  it('every folder of the core is a room of the picture', () => {
    const rooms = new Set(
      filesIn('core', '.ts')
        .filter((file) => file !== 'core/index.ts')
        .map(roomOf),
    );
    expect([...rooms].filter((room) => place(room) < 0)).toEqual([]);
  });

  it('no room imports one to its right', () => {
    const back = crossings.filter((one) => place(roomOf(one.to)) > place(roomOf(one.from)));
    expect(back.map(told)).toEqual([]);
  });

  it('the arithmetic knows plain data only: itself, messages, and access to lists', () => {
    const plain = new Set(['core/words/message.ts', 'core/text/element.ts']);
    const out = crossings.filter((one) => one.from.startsWith('core/calc/') && !plain.has(one.to));
    expect(out.map(told)).toEqual([]);
  });

  it('the stages that a reading may say are those that are worked out, though the two rooms do not know each other', () => {
    expect(stageWords).toEqual(mixingStages);
  });

  it('syntax knows text and messages alone', () => {
    const out = crossings.filter(
      (one) =>
        one.from.startsWith('core/syntax/') &&
        roomOf(one.to) !== 'text' &&
        one.to !== 'core/words/message.ts',
    );
    expect(out.map(told)).toEqual([]);
  });

  it('catalogue and model compute nothing: of the arithmetic they take types, and the plain values named here', () => {
    const plain = new Set(['core/calc/known.ts']);
    const out = crossings.filter(
      (one) =>
        ['catalogue', 'model'].includes(roomOf(one.from)) &&
        roomOf(one.to) === 'calc' &&
        !one.typeOnly &&
        !plain.has(one.to),
    );
    expect(out.map(told)).toEqual([]);
  });

  it('no files import each other in a ring, not even types', () => {
    const files = ['core', 'server', 'client'].flatMap((folder) => filesIn(folder, '.ts'));
    const known = new Set(files);
    const of = new Map(
      files.map((file) => [file, importsOf(file).flatMap(({ to }) => (known.has(to) ? [to] : []))]),
    );
    expect(ringsOf(of)).toEqual([]);
  });

  it('no name of a file stands twice, but for the subjects of the languages', () => {
    const byName = new Map<string, string[]>();
    for (const file of filesIn('core', '.ts')) {
      if (/^core\/words\/\w+\//.test(file)) continue;
      const name = file.slice(file.lastIndexOf('/') + 1);
      byName.set(name, [...(byName.get(name) ?? []), file]);
    }
    expect([...byName.values()].filter((files) => files.length > 1)).toEqual([]);
  });

  it('nothing in the core imports its door', () => {
    expect(
      imports('core')
        .filter((one) => one.to === 'core/index.ts')
        .map(told),
    ).toEqual([]);
  });

  it('no rule knows another', () => {
    const rules = filesIn('core/rules', '.ts').filter((file) =>
      /export const \w+: Rule = /.test(readFileSync(join(project, file), 'utf8')),
    );
    expect(rules.length).toBeGreaterThan(30);
    const known = rules.flatMap(importsOf).filter((one) => rules.includes(one.to));
    expect(known.map(told)).toEqual([]);
  });
});

describe('the rooms around the core', () => {
  it('the server enters the core by its door; the protocol takes types only', () => {
    const inside = imports('server').filter((one) => one.to.startsWith('core/'));
    const wrong = inside.filter((one) =>
      one.from === 'server/protocol.ts' ? !one.typeOnly : one.to !== 'core/index.ts',
    );
    expect(inside.length).toBeGreaterThan(3);
    expect(wrong.map(told)).toEqual([]);
  });

  it('the client takes types from the protocol and nothing else of server and core', () => {
    const wrong = imports('client').filter(
      (one) => /^(server|core)\//.test(one.to) && !(one.to === 'server/protocol.ts' && one.typeOnly),
    );
    expect(wrong.map(told)).toEqual([]);
  });

  it('nobody imports the client', () => {
    const wrong = [...imports('core'), ...imports('server')].filter((one) => one.to.startsWith('client/'));
    expect(wrong.map(told)).toEqual([]);
  });

  it('only the client knows the editor, and only server and client the protocol', () => {
    const wrong = imports('server').filter((one) => one.to === 'vscode');
    expect(wrong.map(told)).toEqual([]);
  });

  it('nothing shipped imports a test', () => {
    const wrong = [...imports('core'), ...imports('server'), ...imports('client')].filter((one) =>
      one.to.startsWith('test/'),
    );
    expect(wrong.map(told)).toEqual([]);
  });
});

describe('files', () => {
  const sources = [
    ...filesIn('core', '.ts'),
    ...filesIn('server', '.ts'),
    ...filesIn('client', '.ts', '.css'),
  ];
  /** Longer than a file should be, each for a reason. */
  const long: Readonly<Record<string, string>> = {
    'core/syntax/grammar.ts':
      'one parser class: the library records its rules inside it, one short rule a form',
    'client/preview/page.css': 'one style sheet of one page',
  };

  it('say one thing: none is over 350 lines without a reason', () => {
    const over = [...filesIn('core', '.ts'), ...filesIn('server', '.ts'), ...filesIn('client', '.ts', '.css')]
      .map((file) => [file, lines(file).length - 1] as const)
      .filter(([file, count]) => count > 350 && long[file] === undefined);
    expect(over.map(([file, count]) => `${file}: ${count} lines`)).toEqual([]);
    for (const file of Object.keys(long))
      expect(lines(file).length - 1, `${file} needs no reason any more`).toBeGreaterThan(350);
  });

  it('assert seldom that something is there: no more `!` behind an expression than there were, and ever fewer', () => {
    /** Lower it with every `!` that goes. Counted where code, no comment and no text in single quotes, says `x!`, `x()!` or `x[0]!`. */
    const most = 410;
    const counts = [...filesIn('core', '.ts'), ...filesIn('server', '.ts'), ...filesIn('client', '.ts')].map(
      (file) =>
        codeLines(file).reduce((sum, line) => sum + (line.match(/[\w\])]!(?![=\w])/g) ?? []).length, 0),
    );
    expect(counts.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(most);
  });

  it('stand alone for a reason: a short one that one file of its folder uses is a part of that file', () => {
    /** Together they would be longer than this and say two things. */
    const mostTogether = 260;
    const isAlone = /^core\/(?:words|rules|features\/actions)\//;
    const users = new Map<string, Set<string>>();
    for (const { from, to } of [...imports('core'), ...imports('server')])
      users.set(to, (users.get(to) ?? new Set()).add(from));
    const length = (file: string): number => lines(file).length - 1;
    const folder = (file: string): string => file.slice(0, file.lastIndexOf('/'));
    const joined = filesIn('core', '.ts').flatMap((file) => {
      const [user, ...others] = users.get(file) ?? [];
      if (user === undefined || others.length > 0 || isAlone.test(file) || folder(user) !== folder(file))
        return [];
      const isShort = length(file) < 40 && length(file) + length(user) <= mostTogether;
      return isShort ? [`${file} is a part of ${user}`] : [];
    });
    expect(joined).toEqual([]);
  });

  it('say of nearly every function of the core what it promises to whoever calls it from another file', () => {
    /** Lower it with every one that is told. */
    const most = 30;
    const untold = filesIn('core', '.ts').flatMap((file) => {
      if (/^core\/words\/\w\w\//.test(file)) return [];
      const all = lines(file);
      return all.flatMap((line, index) =>
        /^export function/.test(line) && !all[index - 1]?.endsWith('*/') ? [`${file}:${index + 1}`] : [],
      );
    });
    expect(untold.length, untold.join('\n')).toBeLessThanOrEqual(most);
  });

  it('promise nothing for later, and name no place of one machine', () => {
    const forbidden = new RegExp(
      [
        `TO${'DO'}`,
        `FIX${'ME'}`,
        `\\bX${'XX'}\\b`,
        `/ro${'ot'}/`,
        `/wo${'rk'}/`,
        `\\.only\\(`,
        `\\.sk${'ip'}\\(`,
        `as an${'y'}\\b`,
      ].join('|'),
    );
    const found = [...sources, ...filesIn('test', '.ts')].flatMap((file) =>
      lines(file).flatMap((line, index) =>
        forbidden.test(line) ? [`${file}:${index + 1} ${line.trim()}`] : [],
      ),
    );
    expect(found).toEqual([]);
  });
});

/** Files from which imports lead back to themselves, each ring as it was met. */
function ringsOf(imports: ReadonlyMap<string, readonly string[]>): string[][] {
  const rings: string[][] = [];
  const done = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const at = path.indexOf(file);
    if (at >= 0) rings.push(path.slice(at));
    if (at >= 0 || done.has(file)) return;
    for (const next of imports.get(file) ?? []) walk(next, [...path, file]);
    done.add(file);
  };
  for (const file of imports.keys()) walk(file, []);
  return rings;
}

function lines(file: string): string[] {
  return readFileSync(join(project, file), 'utf8').split('\n');
}

/** The lines of a file with comments and texts taken out. */
function codeLines(file: string): string[] {
  const source = readFileSync(join(project, file), 'utf8');
  const blank = (text: string): string => text.replace(/[^\n]/g, ' ');
  return source
    .replace(/\/\*[\s\S]*?\*\//g, blank)
    .replace(/(^|\s)\/\/.*$/gm, blank)
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''")
    .split('\n');
}
