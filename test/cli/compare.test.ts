import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { type Folder, folderWith } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

const flours = 'flour strong white:\n  grain wheat\n  protein 12.9%\n  price 0.80 EUR per kg\n';
const tin = `formula Harbour Tin:
  yield 24 pieces of 880 g
  dough temperature 25 °C

  strong white       100%
  water              to 69% hydration
  salt               2%
  fresh yeast        0.9%

mix in spiral:
  load flour, water
  speed 1 for 4 min
  add salt, fresh yeast
  speed 2 for 3 min

process:
  bulk 1 h 30 min at 25 °C
  bake 34 min at 230 °C, steam
`;
const saltier = tin.replace('salt               2%', 'salt               2.2%');

describe('doughwright compare', () => {
  it('tells what differs between two files, and ends with 1', async () => {
    const { path } = folderWith({ 'old.dough': tin, 'new.dough': saltier });
    const { code, stdout, stderr } = await doughwright(path, 'compare', 'old.dough', 'new.dough');
    expect([code, stderr]).toEqual([1, '']);
    expect(stdout).toMatch(/^Harbour Tin {2}new\.dough:1\n/);
    expect(stdout).toMatch(/\n {2}ingredients\n {4}salt +2% \(246 g\) → 2\.2% \(270 g\) {2}\+0\.2 points\n/);
    expect(stdout).not.toContain('\u001b');
  });

  it('ends with 0 where nothing or only the layout differs', async () => {
    const { path } = folderWith({ 'old.dough': tin, 'new.dough': tin.replaceAll(/ {2,}/g, ' ') });
    expect(await doughwright(path, 'compare', 'old.dough', 'old.dough')).toMatchObject({
      code: 0,
      stdout: 'Nothing differs.\n',
    });
    const { code, stdout } = await doughwright(path, 'compare', 'old.dough', 'new.dough');
    expect([code, stdout]).toEqual([0, 'Harbour Tin  new.dough:1  only layout and comments differ\n']);
  });

  it('writes the same as JSON', async () => {
    const { path } = folderWith({ 'old.dough': tin, 'new.dough': saltier });
    const { code, stdout } = await doughwright(path, 'compare', '--json', 'old.dough', 'new.dough');
    expect(code).toBe(1);
    expect(JSON.parse(stdout)).toMatchObject({
      verdict: 'changed',
      formulas: [
        {
          formula: 'Harbour Tin',
          fate: 'kept',
          before: { file: 'new.dough', line: 1 },
          after: { file: 'new.dough', line: 1 },
        },
      ],
      definitions: [],
    });
  });

  it('compares two folders, each among its own names', async () => {
    const { path } = folderWith({
      'old/flours.dough': flours,
      'old/tin.dough': tin,
      'new/flours.dough': flours.replace('0.80', '0.95'),
      'new/deep er/tin ø.dough': tin,
    });
    const { code, stdout } = await doughwright(path, 'compare', 'old', 'new');
    expect(code).toBe(1);
    expect(stdout).toContain('Harbour Tin  deep er/tin ø.dough:1  moved from tin.dough\n');
    expect(stdout).toMatch(/price +0\.80 EUR per kg → 0\.95 EUR per kg/);
  });

  it('tells causes before what follows from them, with a summary, in text and as Markdown', async () => {
    const rye = tin.replace('Harbour Tin', 'Quay|Rye');
    const { path } = folderWith({
      'old/flours.dough': flours,
      'old/tins.dough': `${tin}\n${rye}`,
      'new/flours.dough': flours.replace('0.80', '0.95'),
      'new/tins.dough': `${tin}\n${rye}`,
    });
    const { stdout } = await doughwright(path, 'compare', 'old', 'new');
    expect(stdout.split('\n\n').map((block) => block.split('\n')[0])).toEqual([
      'flour strong white  flours.dough:1',
      '2 formulas that nobody edited follow from the change above',
      'Harbour Tin  tins.dough:1',
      'Quay|Rye  tins.dough:20',
    ]);
    expect(stdout).toMatch(/\n {2}cost +all 2\n/);
    const review = await doughwright(path, 'compare', '--format', 'md', 'old', 'new');
    expect([review.code, review.stderr]).toEqual([1, '']);
    expect(review.stdout).toContain('### flour strong white\n');
    expect(review.stdout).toContain('### Quay\\|Rye\n');
    expect(review.stdout).toMatch(
      /\n\| cost \| a batch, at least \| [\d.]+ EUR \| [\d.]+ EUR \| \+[\d.]+ EUR \|\n/,
    );
    const { stdout: json } = await doughwright(path, 'compare', '--format', 'json', 'old', 'new');
    expect(json).toBe((await doughwright(path, 'compare', '--json', 'old', 'new')).stdout);
  });

  describe('another name', () => {
    const mixer = 'mixer old spiral:\n  kind spiral\n  speed 1 105 rpm\n  speed 2 205 rpm\n';
    const mixed = tin.replace('mix in spiral', 'mix in old spiral').replace('strong white ', 'quay strong  ');
    const others = {
      'mixers.dough': mixer,
      'bakery.dough': 'bakery Quay Lane:\n  label EU\n',
      'wet.dough': 'formula Wet Tin like Harbour Tin:\n  water              to 75% hydration\n',
      'plan.dough': 'plan Saturday:\n  ready 06:30\n  Harbour Tin        24 pieces\n',
    };
    const before = {
      'flours.dough': flours.replace('strong white', 'quay strong'),
      'tin.dough': mixed,
      ...others,
    };
    const renamed = (from: string, to: string, files: Readonly<Record<string, string>>) =>
      Object.fromEntries(
        Object.entries(files).map(([name, text]) => [
          name,
          text.replaceAll(from.padEnd(19), to.padEnd(19)).replaceAll(from, to),
        ]),
      );
    const compared = async (after: Readonly<Record<string, string>>) => {
      const { path } = folderWith(
        Object.fromEntries(
          [before, after].flatMap((side, at) =>
            Object.entries(side).map(([name, text]) => [`${at === 0 ? 'old' : 'new'}/${name}`, text]),
          ),
        ),
      );
      return doughwright(path, 'compare', 'old', 'new');
    };
    const white =
      'flour quay white  flours.dough:1  renamed from quay strong, also in 1 formula, in 2 ingredient lists\n';

    it('of a flour, a mixer and a formula is told once, and in nothing that names them', async () => {
      const flour = renamed('quay strong', 'quay white', before);
      expect(await compared(flour)).toMatchObject({ code: 1, stdout: white, stderr: '' });
      const all = renamed('Harbour Tin', 'Harbour Loaf', renamed('old spiral', 'big spiral', flour));
      expect((await compared(all)).stdout.split('\n\n').map((one) => one.trim())).toEqual([
        white.trim(),
        'mixer big spiral  mixers.dough:1  renamed from old spiral, also in 1 formula',
        'Harbour Loaf  tin.dough:1  renamed from Harbour Tin',
      ]);
    });

    it('beside another price tells that too, and what comes of it', async () => {
      const flour = renamed('quay strong', 'quay white', before);
      const { stdout } = await compared({
        ...flour,
        'flours.dough': flour['flours.dough']!.replace('0.80', '0.95'),
      });
      expect(stdout).toContain(`${white}  price             0.80 EUR per kg → 0.95 EUR per kg\n`);
      expect(stdout).toMatch(
        /^2 formulas that nobody edited follow from the change above\n {2}cost +all 2\n/m,
      );
      expect(stdout).not.toMatch(/[−+] 100%/);
      // Of a flour of which no figure is said, another price may be that of another flour.
      const bare = (text: string) => text.replace('  protein 12.9%\n', '');
      const plain = { ...before, 'flours.dough': bare(before['flours.dough']) };
      const other = renamed('quay strong', 'quay white', plain)['flours.dough']!.replace('0.80', '0.95');
      const { path } = folderWith({ 'old.dough': plain['flours.dough'], 'new.dough': other });
      expect((await doughwright(path, 'compare', 'old.dough', 'new.dough')).stdout).toMatch(/ new\n/);
    });

    it('beside a change of an amount leaves that to be told, by the new name', async () => {
      const flour = renamed('quay strong', 'quay white', before);
      const { stdout } = await compared({
        ...flour,
        'tin.dough': flour['tin.dough']!.replace('100%\n', '90%\n  medium rye         10%\n'),
      });
      expect(stdout).toContain(white);
      expect(stdout).toMatch(/^ {4}quay white +100% \(.*\) → 90%/m);
      expect(stdout).not.toMatch(/[−+] 100%/);
    });

    it('is none where the flour is another, where the old one stays in use, or where the name was another thing’s', async () => {
      const flour = renamed('quay strong', 'quay white', before);
      // Another protein is another flour.
      const other = await compared({
        ...flour,
        'flours.dough': flour['flours.dough']!.replace('12.9', '11'),
      });
      expect(other.stdout).toContain('flour quay white  flours.dough:1  new\n');
      expect(other.stdout).toMatch(/quay white +\+ 100%/);
      expect(other.stdout).toMatch(/quay strong +− 100%/);
      // The formula was left with the old name, which nothing defines any more.
      const left = await compared({ ...flour, 'tin.dough': mixed });
      expect(left.stdout).toMatch(/^flour quay white {2}flours\.dough:1 {2}renamed from quay strong\n/);
      expect(left.stdout).toMatch(/new +warning: “quay strong” is not known/);
      // It took another flour meanwhile: neither name is said of it that it never had.
      const taken = await compared({
        ...flour,
        'tin.dough': mixed.replace('quay strong        100%', 'soft white         100%'),
      });
      expect(taken.stdout).toMatch(/quay strong +− 100%/);
      expect(taken.stdout).not.toMatch(/quay white +− /);
      // A name of the catalogue lends what the catalogue knows of it.
      const lent = await compared(renamed('quay strong', 'strong white', before));
      expect(lent.stdout).toContain('flour strong white  flours.dough:1  renamed from quay strong\n');
      expect(lent.stdout).toMatch(/strong white +\+ 100%/);
    });
  });

  it('says of a file that only moved nothing but that', async () => {
    const { path } = folderWith({
      ...{ 'old/flours.dough': flours, 'old/tin.dough': tin },
      ...{ 'new/in/flours.dough': flours, 'new/in/tin.dough': tin },
    });
    expect(await doughwright(path, 'compare', 'old', 'new')).toEqual({
      code: 0,
      stdout:
        'flour strong white  in/flours.dough:1  moved from flours.dough\n\n' +
        'Harbour Tin  in/tin.dough:1  moved from tin.dough\n',
      stderr: '',
    });
  });

  it.each([
    ['one path', ['old.dough'], /name two files or two folders/],
    ['a missing file', ['old.dough', 'nope.dough'], /nope\.dough: there is no such file/],
    ['a file and a folder', ['old.dough', '.'], /a file and a folder/],
    ['no repository', ['--since', 'HEAD'], /not a git repository/],
    ['one revision', ['--between', 'HEAD'], /two revisions/],
    ['both ways', ['--between', 'HEAD', '--since', 'HEAD'], /exclude each other/],
  ])('%s ends with 2 and one line', async (_, args, message) => {
    const { path } = folderWith({ 'old.dough': tin });
    const { code, stdout, stderr } = await doughwright(path, 'compare', ...args);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(message);
    expect(stderr.split('\n')).toHaveLength(2);
  });
});

describe('doughwright compare with revisions of git', () => {
  it('sets the files on disk against a revision, with the definitions of that revision', async () => {
    const folder = repositoryWith({ 'in/tin.dough': tin, 'flours.dough': flours });
    folder.write('flours.dough', flours.replace('0.80', '0.95'));
    folder.write('in/tin.dough', saltier);
    const all = await doughwright(folder.path, 'compare', '--since', 'HEAD');
    expect(all.code).toBe(1);
    expect(all.stdout).toMatch(/salt +2% \(/);
    expect(all.stdout).toMatch(/cost\n {4}a batch, at least +9\.\d\d EUR → 1\d\.\d\d EUR/);
    expect(all.stdout).toContain('flour strong white  flours.dough:1\n');
    const some = await doughwright(join(folder.path, 'in'), 'compare', '--since', 'HEAD', 'tin.dough');
    expect(some.stdout).toMatch(/^Harbour Tin {2}tin\.dough:1\n/);
    expect(some.stdout).not.toContain('flour strong white');
  });

  it('compares two revisions, a file renamed between them', async () => {
    const folder = repositoryWith({ 'tin.dough': tin });
    folder.git('mv', 'tin.dough', 'weekday.dough');
    folder.write('weekday.dough', saltier);
    folder.git('commit', '--quiet', '--all', '--message=Salt');
    folder.remove('weekday.dough');
    const { code, stdout } = await doughwright(folder.path, 'compare', '--between', 'HEAD~1', 'HEAD');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Harbour Tin {2}weekday\.dough:1 {2}moved from tin\.dough\n/);
    expect((await doughwright(folder.path, 'compare', '--between', 'HEAD', 'HEAD')).code).toBe(0);
  });

  it('tells another name in a file where its definition is not among what was asked for', async () => {
    const own = (text: string) =>
      text.replace('strong white ', 'quay strong  ').replace('strong white', 'quay strong');
    const folder = repositoryWith({ 'tin.dough': own(tin), 'flours.dough': own(flours) });
    folder.write('tin.dough', own(tin).replace('quay strong', 'quay white '));
    folder.write('flours.dough', own(flours).replace('quay strong', 'quay white'));
    const whole = await doughwright(folder.path, 'compare', '--since', 'HEAD');
    expect([whole.code, whole.stdout]).toEqual([
      1,
      'flour quay white  flours.dough:1  renamed from quay strong, also in 1 formula, in 1 ingredient list\n',
    ]);
    // Git shows file by file: the old state has its flour all the same, and no figure of it is other.
    expect((await doughwright(folder.path, 'git-setup', '--yes')).code).toBe(0);
    for (const path of [folder.path, join(folder.path, 'in')]) {
      mkdirSync(path, { recursive: true });
      const shown = folder.git('-C', path, 'diff', '--', join(folder.path, 'tin.dough'));
      expect(shown).toMatch(/quay white +\+ 100%.*\n +quay strong +− 100%/);
      expect(shown).not.toMatch(/not known|allergen|hydration/);
    }
    const alone = await doughwright(folder.path, 'compare', '--since', 'HEAD', 'tin.dough');
    expect(alone.code).toBe(1);
    expect(alone.stdout).toMatch(/quay strong +− 100%/);
  });

  it('a revision that is none ends with 2, whatever it looks like', async () => {
    const folder = repositoryWith({ 'tin.dough': tin });
    const told = await Promise.all(
      ['no-such-branch', '--output=x', ''].map((revision) =>
        doughwright(folder.path, 'compare', `--since=${revision}`),
      ),
    );
    for (const { code, stderr } of told) {
      expect(code).toBe(2);
      expect(stderr).toMatch(/^doughwright: there is no such revision: /);
    }
  });
});

describe('what one side has and the other cannot show', () => {
  it('a path that is on neither side is told, and ends with 2', async () => {
    const folder = repositoryWith({ 'in/tin.dough': tin });
    const since = (path: string) => doughwright(folder.path, 'compare', '--since', 'HEAD', path);
    const strange = ['nope.dough', 'no/such/folder', 'i'];
    expect(await Promise.all(strange.map(since))).toEqual(
      strange.map((path) => ({
        ...{ code: 2, stdout: '' },
        stderr: `doughwright: ${path}: there is no formula file of this name, or below it, on either side.\n`,
      })),
    );
    for (const { code } of await Promise.all(['in', 'in/tin.dough', '.'].map(since))) expect(code).toBe(0);
    folder.remove('in/tin.dough');
    expect((await doughwright(folder.path, 'compare', '--since', 'HEAD', 'in')).code).toBe(1);
  });

  it('a file that can be read on one side only is neither new nor gone', async () => {
    const folder = repositoryWith({ 'tin.dough': tin, 'other.dough': tin.replace('Harbour', 'Quay') });
    folder.write('tin.dough', '\0');
    const { code, stdout, stderr } = await doughwright(folder.path, 'compare', '--since', 'HEAD');
    expect([code, stdout]).toEqual([2, 'Nothing differs.\n']);
    expect(stderr).toMatch(/^doughwright: tin\.dough: line 1: this is not plain text/);
    folder.write('all/tin.dough', tin);
    folder.write('none/note.txt', '');
    expect(await doughwright(folder.path, 'compare', 'all', 'none')).toMatchObject({ code: 2, stdout: '' });
    folder.write('some/tin.dough', '\0');
    expect((await doughwright(folder.path, 'compare', 'some', 'all')).stdout).toBe('Nothing differs.\n');
  });
});

describe('doughwright git-setup', () => {
  const program = `'${nodeProgram}' '${commandLineProgram()}'`;

  it('prints what it would do, and does nothing unasked', async () => {
    const folder = repositoryWith({ 'tin.dough': tin });
    const before = readFileSync(join(folder.path, '.git/config'), 'utf8');
    const { code, stdout } = await doughwright(folder.path, 'git-setup');
    expect(code).toBe(1);
    expect(stdout).toContain('*.dough diff=doughwright merge=doughwright');
    expect(stdout).toContain('diff.doughwright.command');
    expect(stdout).toContain('--yes');
    expect(readFileSync(join(folder.path, '.git/config'), 'utf8')).toBe(before);
    expect(folder.git('status', '--short')).toBe('');
  });

  it.skipIf(process.platform !== 'linux')(
    'asks on a terminal, where Ctrl+C, the end of the input and anything but yes change nothing',
    async () => {
      // util-linux’ script gives the program a terminal of its own, typed into by its standard input.
      const answered = (folder: Folder, keys: string): Promise<[number | null, string]> =>
        new Promise((resolve) => {
          const call = `${program} git-setup --program doughwright`;
          const child = spawn('script', ['-qec', call, '/dev/null'], { cwd: folder.path });
          let out = '';
          child.stdout.on('data', (data: Buffer) => {
            const asked = out.includes('Shall I?');
            out += data.toString();
            if (!asked && out.includes('Shall I?')) child.stdin.write(keys);
          });
          child.once('close', (code) => resolve([code, out]));
        });
      for (const [keys, code] of [
        ['\u0003', 130],
        ['\u0004', 1],
        ['no\r', 1],
      ] as const) {
        const folder = repositoryWith({ 'tin.dough': tin });
        const [ended, said] = await answered(folder, keys);
        expect([keys, ended, said]).toEqual([
          keys,
          code,
          expect.stringMatching(/Nothing was changed\.\r\n$/),
        ]);
        expect(folder.git('status', '--short')).toBe('');
      }
      const folder = repositoryWith({ 'tin.dough': tin });
      expect(await answered(folder, 'yes\r')).toEqual([0, expect.stringContaining('Done.')]);
      expect(folder.git('status', '--short')).toBe('?? .gitattributes\n');
    },
  );

  it('makes `git diff` speak as a baker, and takes it back', async () => {
    const folder = repositoryWith({
      'tin.dough': tin,
      'flours.dough': flours,
      '.gitattributes': '* text=auto\n',
    });
    const before = readFileSync(join(folder.path, '.git/config'), 'utf8');
    expect((await doughwright(folder.path, 'git-setup', '--yes', '--program', program)).code).toBe(0);
    expect(await doughwright(folder.path, 'git-setup', '--yes', '--program', program)).toMatchObject({
      code: 0,
      stdout: 'All is set up already.\n',
    });
    folder.write('tin.dough', saltier);
    expect(folder.git('diff', '--', 'tin.dough')).toMatch(
      /^tin\.dough\nHarbour Tin {2}tin\.dough:1\n[\s\S]*salt +2% \(/,
    );
    // Line by line: the line, the total it moves, and the section in the head of the piece.
    const lines = folder.git('diff', '--no-ext-diff', '--unified=0');
    expect(lines).toMatch(
      /^-formula Harbour Tin: {2}#= .*salt 2%.*\n\+formula Harbour Tin: {2}#= .*salt 2\.2%/m,
    );
    expect(lines).toMatch(/^\+ {2}salt +2\.2%$/m);
    expect(lines).toMatch(/^@@ .* @@ formula Harbour Tin:$/m);
    folder.git('commit', '--quiet', '--all', '--message=Salt');
    folder.git('rm', '--quiet', 'flours.dough');
    expect(folder.git('diff', 'HEAD')).toMatch(/flour strong white {2}flours\.dough:1 {2}removed/);
    expect((await doughwright(folder.path, 'git-setup', '--undo', '--yes')).code).toBe(0);
    expect(readFileSync(join(folder.path, '.gitattributes'), 'utf8')).toBe('* text=auto\n');
    expect(readFileSync(join(folder.path, '.git/config'), 'utf8').trim()).toBe(before.trim());
    expect(await doughwright(folder.path, 'git-setup', '--undo')).toMatchObject({
      code: 0,
      stdout: 'There is nothing to take back.\n',
    });
  });

  it('lets git go on where a file is no text, is in conflict or has another name', async () => {
    const folder = repositoryWith({
      'tin.dough': tin,
      'odd.dough': '\0old',
      'last.dough': tin.replace('Harbour', 'Quay'),
    });
    await doughwright(folder.path, 'git-setup', '--yes', '--program', program);
    folder.write('odd.dough', '\0new');
    folder.write('tin.dough', saltier);
    expect(folder.git('diff')).toMatch(/^odd\.dough: line 1: this is not plain text.*\n\ntin\.dough\n/m);
    folder.git('commit', '--quiet', '--all', '--message=More salt');
    expect(folder.git('log', '-p', '-1')).toMatch(
      /^\+not plain text: 4 bytes, SHA-256 \w{64}\n[\s\S]*^\+formula .*salt 2\.2%/m,
    );

    folder.git('checkout', '--quiet', '-b', 'less', 'HEAD~1');
    folder.write('tin.dough', tin.replace('salt               2%', 'salt               1.8%'));
    folder.git('commit', '--quiet', '--all', '--message=Less salt');
    expect(() => folder.git('merge', '--quiet', 'main')).toThrow();
    expect(folder.git('diff', '--cached')).toContain('tin.dough: in conflict; decide on its marked lines');
    folder.git('reset', '--quiet', '--hard', 'main');

    folder.git('mv', 'tin.dough', 'weekday.dough');
    folder.write('weekday.dough', tin);
    expect(folder.git('diff', '-M', 'HEAD')).toMatch(
      /^weekday\.dough\nHarbour Tin {2}weekday\.dough:1 {2}moved from tin\.dough\n[\s\S]*salt +2\.2% .* → 2%/m,
    );
  });

  it('takes a file for a file, however it is called', async () => {
    const names = [
      '--help.dough',
      '-rf.dough',
      '--language=de.dough',
      ':(top)x.dough',
      'a *.dough',
      "it's.dough",
    ];
    const named = (name: string): string => tin.replace('Harbour Tin', `"${name}"`);
    const folder = repositoryWith(Object.fromEntries(names.map((name) => [name, named(name)])));
    await doughwright(folder.path, 'git-setup', '--yes', '--program', program);
    for (const name of names)
      folder.write(name, named(name).replace('salt               2%', 'salt               2.2%'));
    const told = folder.git('diff');
    for (const name of names) expect(told).toContain(`${name}:1\n`);
    expect(told.match(/salt +2% .* → 2\.2%/g)).toHaveLength(names.length);
    expect(folder.git('diff', '--no-ext-diff').match(/^\+formula .* #= .*salt 2\.2%/gm)).toHaveLength(
      names.length,
    );
    folder.git('commit', '--quiet', '--all', '--message=More salt');
    expect(folder.git('log', '-p', '-1', '--format=').match(/^\+formula .*salt 2\.2%/gm)).toHaveLength(
      names.length,
    );
    for (const name of names) expect(folder.git('blame', '--', name)).toContain('#=');
  });

  it('shows totals in the history that count the flours of other files, and says where they do not', async () => {
    const flour = 'flour quay white:\n  grain wheat\n';
    const bread =
      'formula Quay:\n\n  bread flour        50%\n  quay white         50%\n\nmix by hand:\n\tknead 3 min\n';
    const folder = repositoryWith({ 'flours.dough': flour, 'in/quay.dough': bread });
    await doughwright(folder.path, 'git-setup', '--yes', '--program', program);
    folder.write(
      'in/quay.dough',
      bread.replace('knead 3 min', 'knead 4 min').replace('50%\n\n', '50%\n  salt 2%\n'),
    );
    folder.git('commit', '--quiet', '--all', '--message=Salt');
    const told = folder.git('log', '-p', '-1', '--format=');
    expect(told).toMatch(/^\+formula Quay: {2}#= hydration 0%, salt 2%, flour 1 kg, dough 1\.02 kg$/m);
    expect(told).not.toContain('prefermented');
    expect(told).not.toContain('not known');
    folder.write('in/quay.dough', bread.replace('quay white ', 'dock white '));
    expect(folder.git('diff', '--no-ext-diff')).toMatch(
      /^\+formula .*, not known, counted as neither flour nor water: dock white$/m,
    );
  });

  it('names a section that stands behind a tab above a piece of a diff', async () => {
    const bread = `formula Quay:\n${'  bread flour 1 kg\n'.repeat(5)}\tmix by hand:\n${'  stir 1 min\n'.repeat(5)}`;
    const folder = repositoryWith({ 'quay.dough': bread });
    await doughwright(folder.path, 'git-setup', '--yes', '--program', program);
    folder.write('quay.dough', `${bread}  knead 4 min\n`);
    expect(folder.git('diff', '--no-ext-diff')).toMatch(/^@@ .* @@ mix by hand:$/m);
  });

  it('outside of a repository says so', async () => {
    const { path } = folderWith({});
    const { code, stderr } = await doughwright(path, 'git-setup', '--yes');
    expect([code, stderr]).toEqual([2, expect.stringMatching(/^doughwright: git: not a git repository/)]);
  });
});

describe('the notation in git', () => {
  it('merges two branches that touched different lines of one formula', async () => {
    const folder = repositoryWith({ 'tin.dough': tin });
    folder.git('checkout', '--quiet', '-b', 'salt');
    folder.write('tin.dough', saltier);
    folder.git('commit', '--quiet', '--all', '--message=More salt');
    folder.git('checkout', '--quiet', 'main');
    folder.write(
      'tin.dough',
      tin.replace('speed 2 for 3 min', 'speed 2 for 4 min').replace('34 min', '36 min'),
    );
    folder.git('commit', '--quiet', '--all', '--message=Longer');
    folder.git('merge', '--quiet', '--no-edit', 'salt');
    const merged = saltier.replace('speed 2 for 3 min', 'speed 2 for 4 min').replace('34 min', '36 min');
    expect(readFileSync(join(folder.path, 'tin.dough'), 'utf8')).toBe(merged);
    const { stdout } = await doughwright(folder.path, 'compare', '--since', 'HEAD~1');
    expect(stdout).toMatch(/salt +2% .* → 2\.2%/);
    expect(stdout).not.toContain('speed 2');
  });

  it('a link in place of a file is left alone', async () => {
    const folder = repositoryWith({ 'tin.dough': tin });
    symlinkSync('tin.dough', join(folder.path, 'again.dough'));
    folder.git('add', '.');
    folder.git('commit', '--quiet', '--message=Link');
    expect((await doughwright(folder.path, 'compare', '--between', 'HEAD~1', 'HEAD')).code).toBe(0);
  });
});
