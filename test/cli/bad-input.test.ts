import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { doughwright, type Outcome } from './run.ts';

const tidy =
  'formula Harbour Tin:\n  strong white       100%\n  water              65%\n  salt               2%\n';
const careless = 'formula Harbour Tin :\n strong white 100%\nwater 65 %\n salt 2%';
const plan = `${tidy}\nplan Saturday:\n  ready 2026-12-05 06:30\n  Harbour Tin  10 kg\n`;

/** Every command that is given a path, and what it is given. */
const calls: Readonly<Record<string, (path: string) => string[]>> = {
  check: (path) => ['check', '--level', 'error', path],
  totals: (path) => ['totals', path],
  'compare, old': (path) => ['compare', path, 'good.dough'],
  'compare, new': (path) => ['compare', 'good.dough', path],
  format: (path) => ['format', path],
  'format --check': (path) => ['format', '--check', path],
  plan: (path) => ['plan', path],
  blend: (path) => ['blend', '--in', path, 'strong white'],
  import: (path) => ['import', path],
  export: (path) => ['export', path],
  sheet: (path) => ['sheet', path],
};

/** A clear message: one line that names the place, and nothing of the machine below. */
function expectClear({ code, stderr }: Outcome, place: string): void {
  expect(stderr).toMatch(/^doughwright: .*\n$/);
  expect(stderr).toContain(place);
  expect(stderr).not.toMatch(/invalid|[A-Z]{5,}:|Error|\bat .*:\d+:\d+|undefined/);
  expect(stderr).not.toContain('\u001b');
  expect(code).toBe(2);
}

describe('every command', () => {
  const folderMessage = (name: string): string => {
    if (name.startsWith('compare')) return 'name two of one kind';
    return name === 'import' ? 'name a file' : 'no .dough file';
  };

  it.each(Object.entries(calls))(
    '%s tells in one line what it cannot read, and ends with 2',
    async (name, call) => {
      const folder = folderWith({
        'good.dough': plan,
        'empty folder/readme.md': '',
        'binary.dough': new Uint8Array([0x66, 0, 0x01]),
        'large.dough': '#'.repeat(4 * 1024 * 1024 + 1),
      });
      symlinkSync('ring.dough', join(folder.path, 'ring.dough'));
      spawnSync('mkfifo', [join(folder.path, 'pipe.dough')]);
      const bad = {
        'not/there.dough': 'no such file',
        'empty folder': folderMessage(name),
        'binary.dough': 'not plain text',
        'large.dough': '4 MiB',
        'ring.dough': 'cannot be read',
        'pipe.dough': 'name an ordinary file',
      };
      const told = Object.entries(bad).map(async ([path, message]) => {
        const outcome = await doughwright(folder.path, ...call(path));
        expectClear(outcome, path);
        expect(outcome.stderr).toContain(message);
      });
      await Promise.all(told);
    },
  );

  it.each(Object.entries(calls))(
    '%s works under blanks and any script, a hundred folders deep',
    async (name, call) => {
      const deep = `Åse’s brød/ひ #1%20/${'d/'.repeat(100)}`;
      const { path } = folderWith({
        'good.dough': plan,
        [`${deep}ø.dough`]: plan,
        [`${deep}t.csv`]: 'rye,1 kg\n',
      });
      const file = deep + (name === 'import' ? 't.csv' : 'ø.dough');
      const { code, stderr } = await doughwright(path, ...call(file));
      expect(code === 0 || code === 1, stderr).toBe(true);
      if (name === 'import' || name.startsWith('compare')) return;
      // A walk from above finds it too.
      const walked = await doughwright(path, ...call('Åse’s brød'));
      expect(walked.code, walked.stderr).toBe(code);
    },
  );
});

describe('the rest is done', () => {
  it.each([
    ['totals', ['totals', 'no.dough', 'good.dough'], /Harbour Tin/],
    ['export', ['export', 'no.dough', 'good.dough'], /^file,formula/],
    ['format', ['format', 'no.dough', 'careless.dough'], /^careless\.dough\n$/],
  ])('%s', async (_, args, output) => {
    const { path } = folderWith({ 'good.dough': tidy, 'careless.dough': careless });
    const outcome = await doughwright(path, ...args);
    expectClear(outcome, 'no.dough');
    expect(outcome.stdout).toMatch(output);
  });
});

describe('what nobody but its owner may read or write', () => {
  /** Runs as somebody without rights: root may read everything, so it becomes nobody first. */
  function asNobody(folder: string, ...args: readonly string[]): Outcome {
    const isRoot = process.getuid?.() === 0;
    const { status, stdout, stderr } = spawnSync(nodeProgram, [commandLineProgram(), ...args], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1' },
      ...(isRoot ? { uid: 65_534, gid: 65_534 } : {}),
    });
    return { code: status, stdout, stderr };
  }
  function folderForAll(files: Readonly<Record<string, string>>): string {
    const { path } = folderWith(files);
    chmodSync(path, 0o755);
    return path;
  }

  it.each(Object.entries(calls).filter(([name]) => !name.startsWith('compare')))('a file: %s', (_, call) => {
    const path = folderForAll({ 'good.dough': tidy, 'secret.dough': plan });
    chmodSync(join(path, 'secret.dough'), 0);
    const outcome = asNobody(path, ...call('secret.dough'));
    expectClear(outcome, 'secret.dough');
    expect(outcome.stderr).toContain('may not read');
  });

  it('a folder below the one that is checked', () => {
    const path = folderForAll({ 'good.dough': tidy.replace('2%', '2'), 'shut/a.dough': tidy });
    chmodSync(join(path, 'shut'), 0);
    onTestFinished(() => chmodSync(join(path, 'shut'), 0o700));
    const outcome = asNobody(path, 'check', '--level', 'error', '.');
    expectClear(outcome, 'shut');
    expect(outcome.stdout).toMatch(/^good\.dough:4:/);
  });

  it('a folder that cannot be written to: nothing is changed', () => {
    const path = folderForAll({ 'a.dough': careless, 'table.csv': 'strong white,1 kg\n' });
    chmodSync(join(path, 'a.dough'), 0o644);
    for (const args of [
      ['format', 'a.dough'],
      ['export', '--out', 'b.csv', 'a.dough'],
    ]) {
      const outcome = asNobody(path, ...args);
      expectClear(outcome, args.includes('--out') ? 'b.csv' : 'a.dough');
      expect(outcome.stderr).toContain('may not write');
    }
    expect(readFileSync(join(path, 'a.dough'), 'utf8')).toBe(careless);
    expect(readdirSync(path).sort()).toEqual(['a.dough', 'table.csv']);
  });
});

describe('--out', () => {
  const writing = {
    plan: ['plan', 'good.dough'],
    import: ['import', 'table.csv'],
    export: ['export', 'good.dough'],
    sheet: ['sheet', 'good.dough'],
  };
  it.each(
    Object.entries(writing).flatMap(([name, call]) => [
      { name, call, out: 'not/there/out.txt', message: 'no such folder' },
      { name, call, out: 'folder', message: 'this is a folder' },
    ]),
  )('$name into $out is told, and leaves nothing behind', async ({ call, out, message }) => {
    const { path } = folderWith({
      'good.dough': plan,
      'table.csv': 'rye flour,1 kg\n',
      'folder/keep.md': '',
    });
    const { code, stdout, stderr } = await doughwright(path, ...call, '--out', out);
    expect([code, stdout]).toEqual([2, '']);
    expectClear({ code, stdout, stderr: `${stderr.trimEnd().split('\n').at(-1)}\n` }, out);
    expect(stderr).toContain(message);
    expect(readdirSync(path).sort()).toEqual(['folder', 'good.dough', 'table.csv']);
    expect(readdirSync(join(path, 'folder'))).toEqual(['keep.md']);
  });

  it('writes a whole file over the old one, and a baseline too', async () => {
    const { path } = folderWith({ 'good.dough': tidy, 'out.csv': 'old' });
    expect((await doughwright(path, 'export', '--out', 'out.json', 'good.dough')).code).toBe(0);
    expect(JSON.parse(readFileSync(join(path, 'out.json'), 'utf8'))).toContainEqual(
      expect.objectContaining({ role: 'flour' }),
    );
    expect((await doughwright(path, 'export', '--out', 'out.csv', 'good.dough')).code).toBe(0);
    expect(readFileSync(join(path, 'out.csv'), 'utf8')).toMatch(
      /^file,formula,.*\r\n(good\.dough,.*\r\n){3}$/,
    );
    const onto = await doughwright(path, 'check', '--write-baseline', '.');
    expectClear(onto, '.');
    expect(readdirSync(path).sort()).toEqual(['good.dough', 'out.csv', 'out.json']);
  });
});

describe('a reader that stops reading', () => {
  it.each([
    ['check', ['check', '--level', 'info', 'many.dough']],
    ['check --format json', ['check', '--level', 'info', '--format', 'json', 'many.dough']],
    ['totals', ['totals', 'many.dough']],
    ['export', ['export', 'many.dough']],
    ['rules', ['rules']],
    ['help', ['--help']],
  ])('%s | head -1', (_, args) => {
    const { path } = folderWith({
      'many.dough': Array.from({ length: 400 }, (_, at) =>
        tidy.replace('Tin', `Tin ${at}`).replace('2%', '2'),
      ).join('\n'),
    });
    const { stdout, stderr } = spawnSync(
      'sh',
      ['-c', '"$@" | head -1', 'sh', nodeProgram, commandLineProgram(), ...args],
      { cwd: path, encoding: 'utf8' },
    );
    expect(stderr).toBe('');
    expect(stdout.split('\n')).toHaveLength(2);
  });
});

describe('Ctrl+C', () => {
  /** Interrupts a command once it is well under way, and answers how a shell would tell its end. */
  async function interrupted(
    folder: string,
    args: readonly string[],
    when: 'output' | 'soon',
  ): Promise<number> {
    const child = spawn(nodeProgram, [commandLineProgram(), ...args], { cwd: folder });
    child.stdin.end();
    if (when === 'output') child.stdout.once('data', () => child.kill('SIGINT'));
    else setTimeout(() => child.kill('SIGINT'), 400);
    let stderr = '';
    child.stderr.on('data', (data) => {
      stderr += data;
    });
    const code = await new Promise<number>((resolve) =>
      child.once('close', (own, signal) => resolve(signal === 'SIGINT' ? 130 : (own ?? -1))),
    );
    expect(stderr).toBe('');
    return code;
  }
  const many = (text: string): Record<string, string> =>
    Object.fromEntries(Array.from({ length: 1500 }, (_, at) => [`in/${at}.dough`, text.repeat(6)]));

  it('ends a long check with 130, in its threads too', async () => {
    const { path } = folderWith(many(`${tidy}\n`));
    expect(await interrupted(path, ['check', '--level', 'error', 'in'], 'soon')).toBe(130);
  });

  it('ends a long format with 130; every file is as it was or done, and nothing else is there', async () => {
    const { path } = folderWith(many(`${careless}\n\n`));
    expect(await interrupted(path, ['format', 'in'], 'output')).toBe(130);
    const before = `${careless}\n\n`.repeat(6);
    const after = `${tidy}\n`.repeat(6).trimEnd().concat('\n');
    const seen = { before: 0, after: 0 };
    for (const name of readdirSync(join(path, 'in'))) {
      expect(name).toMatch(/^\d+\.dough$/);
      const text = readFileSync(join(path, 'in', name), 'utf8');
      expect([before, after]).toContain(text);
      seen[text === before ? 'before' : 'after']++;
    }
    expect(seen.before).toBeGreaterThan(0);
    expect(seen.after).toBeGreaterThan(0);
  });
});

describe('words that are no command', () => {
  it.each([
    [['check', '--format', 'ruled'], 'write one of text, json'],
    [['check', '--levl', 'error'], 'Is it --level?'],
    [['chek'], 'Is it check?'],
    [['bake'], 'doughwright --help'],
    [['totals'], 'something is missing'],
    [['compare', '--since', 'a', '--between', 'b'], 'exclude each other'],
    [['rules', 'all'], '“doughwright rules” lists them'],
    [['rules', 'too-warm', 'let-down'], 'too many words'],
    [['export', '--out'], 'write what it shall be'],
    [['blend', '--protein', '200', 'rye flour'], 'below 100'],
    [['check', ''], 'an empty word'],
    [['format', 'good.dough', ''], 'an empty word'],
    [['check', '--rule', 'no-salt'], 'as no-salt=off'],
    [['check', '--rule', 'no-salt=loud'], 'as no-salt=off'],
    [['check', '--rule', 'no-pepper=off'], '“doughwright rules” lists them'],
  ])('%j', async (args, message) => {
    const { path } = folderWith({ 'good.dough': tidy });
    const outcome = await doughwright(path, ...args);
    expectClear(outcome, message);
    expect(outcome.stdout).toBe('');
  });
});

describe('a table', () => {
  it('comes from standard input, in any of the encodings that spreadsheets save', async () => {
    const { path } = folderWith();
    const table = 'Zutat;g\nstrong white;1000\nsalt;20\nbrød;5\n';
    const encoded = {
      utf8: Buffer.from(table),
      utf16: Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(table, 'utf16le')]),
      latin: Buffer.from(table, 'latin1'),
    };
    for (const [name, bytes] of Object.entries(encoded)) {
      const { status, stdout, stderr } = spawnSync(
        nodeProgram,
        [commandLineProgram(), 'import', '--name', 'Quay Tin'],
        { cwd: path, input: bytes, encoding: 'utf8' },
      );
      expect([name, stdout]).toEqual([
        name,
        'formula Quay Tin:\n  strong white       1000 g\n  salt               20 g\n  brød               5 g\n',
      ]);
      // A name that nobody knows wants a look.
      expect(status).toBe(1);
      expect(stderr).toMatch(/^(doughwright: standard input: .*\n)+$/);
      expect(stderr).toContain('look: Not known');
    }
  });

  it('that is none is told, and ends with 2; names are looked up beside the file that is written', async () => {
    const folder = folderWith({
      'notes.txt': 'nothing here',
      'in/mill.dough': 'flour quay mill:\n  grain wheat\n',
    });
    expectClear(await doughwright(folder.path, 'import', 'notes.txt'), 'No column of names');
    writeFileSync(join(folder.path, 't.csv'), 'quay mill,1 kg\nsalt,20 g\n');
    mkdirSync(join(folder.path, 'in', '.git'));
    const known = await doughwright(folder.path, 'import', 't.csv', '--name', 'A', '--out', 'in/a.dough');
    expect([known.code, known.stdout]).toEqual([0, '']);
    expect(readFileSync(join(folder.path, 'in/a.dough'), 'utf8')).toMatch(
      /^formula A:\n {2}quay mill {10}1 kg\n/,
    );
    expect((await doughwright(folder.path, 'check', '--level', 'warning', 'in/a.dough')).code).toBe(0);
  });
});

it('the rules are told as JSON as they are told in lines', async () => {
  const [lines, json] = await Promise.all([doughwright('.', 'rules'), doughwright('.', 'rules', '--json')]);
  const told = JSON.parse(json.stdout) as Record<'code' | 'level' | 'title', string>[];
  expect(told.map(({ code, level, title }) => `${code} ${level} ${title}`)).toEqual(
    lines.stdout
      .trimEnd()
      .split('\n')
      .map((line) => line.replace(/ {2,}/g, ' ')),
  );
});

describe('help', () => {
  it('of every command has an example that names the command', async () => {
    const { stdout } = await doughwright('.', '--help');
    const commands = [...stdout.matchAll(/^ {2}([a-z-]+) (?:\[|<| )/gm)].map((match) => match[1]!);
    expect(commands.length).toBeGreaterThan(9);
    for (const command of commands.filter((name) => name !== 'help')) {
      const help = await doughwright('.', command, '--help');
      expect([command, help.code]).toEqual([command, 0]);
      expect(help.stdout).toMatch(new RegExp(`\nExample:\n {2}doughwright ${command}\\b.*\n$`));
    }
  });
});

describe('a name or a code that is nearly one', () => {
  it.each([
    ['a rule', ['rules', 'salt-rang'], 'there is no rule “salt-rang”. Is it salt-range?'],
    ['a rule with its level', ['check', '--rule', 'salt-rnge=off', '.'], '“salt-rnge”. Is it salt-range?'],
    ['a formula to rename', ['rename', 'Harbor Tin', 'Tin'], '“Harbor Tin”. Is it “Harbour Tin”?'],
    ['a shell', ['completion', 'tcsh'], 'tcsh is no shell: write one of bash, zsh, fish.'],
    ['nothing near', ['rules', 'nowhere-near'], '“nowhere-near”; “doughwright rules” lists them.'],
  ])('%s is told with what may be meant', async (_, args, said) => {
    const { stderr } = await doughwright(folderWith({ 'tin.dough': tidy }).path, ...args);
    expect(stderr).toMatch(/^doughwright: .*\n$/);
    expect(stderr).toContain(said);
  });
});
