import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, mergeTexts } from '../../core/index.ts';
import { filesIn, project } from '../tidy/imports.ts';

const tin = `# weekday bread
formula Harbour Tin:
  yield 24 pieces of 880 g
  dough temperature 25 °C

  strong white       100%
  water              to 69% hydration
  salt               2%
  fresh yeast        0.9%
  butter             4%
  egg                5%

mix in spiral:
  load flour, water
  speed 1 for 4 min
  add salt, fresh yeast
  speed 2 for 3 min

process:
  bulk 1 h 30 min at 25 °C
  divide
  bake 34 min at 230 °C, steam

trial 2026-03-14:
  end 25.4 °C
`;

type Edit = (text: string) => string;
const replace =
  (from: string, to: string): Edit =>
  (text) => {
    if (!text.includes(from)) throw new Error(`${from} is not there`);
    return text.replace(from, () => to);
  };
const merged = (one: Edit, other: Edit, base = tin) => mergeTexts(base, one(base), other(base));

describe('changes of two bakers come together', () => {
  it.each<[string, Edit, Edit]>([
    [
      'water beside salt',
      replace('to 69%', 'to 71%'),
      replace('salt               2%', 'salt               1.9%'),
    ],
    [
      'egg beside butter',
      replace('egg                5%', 'egg                6%'),
      replace('  butter             4%\n', ''),
    ],
    [
      'a line more beside a line changed',
      replace('  butter ', '  sugar              3%\n  butter '),
      replace('butter             4%', 'butter             5%'),
    ],
    [
      'a step of the programme beside another',
      replace('speed 1 for 4', 'speed 1 for 5'),
      replace('add salt, fresh yeast\n', 'add salt, fresh yeast\n  rest 5 min\n'),
    ],
    [
      'another name of the formula, and a line of it',
      replace('Harbour Tin', 'Weekday Tin'),
      replace('0.9%', '1.1%'),
    ],
    [
      'another name of a machine, and its minutes',
      replace('mix in spiral', 'mix in planetary'),
      replace('speed 2 for 3', 'speed 2 for 4'),
    ],
    [
      'a comment, and the line below it',
      replace('# weekday bread', '# weekday bread, tins of one kilogram'),
      replace('24 pieces', '30 pieces'),
    ],
    [
      'an accept, and another line',
      replace('salt               2%', 'salt               2%   # accept salt-range: as ever'),
      replace('to 69%', 'to 70%'),
    ],
    [
      'lines sorted anew, and one of them changed',
      replace(
        '  butter             4%\n  egg                5%\n',
        '  egg                5%\n  butter             4%\n',
      ),
      replace('butter             4%', 'butter             5%'),
    ],
    [
      'a section taken out, and another changed',
      replace('\ntrial 2026-03-14:\n  end 25.4 °C\n', ''),
      replace('  divide\n', '  divide\n  rest 10 min\n'),
    ],
  ])('%s', (_, one, other) => {
    expect(merged(one, other)).toEqual({ text: other(one(tin)), conflicts: 0 });
    expect(merged(other, one)).toEqual({ text: other(one(tin)), conflicts: 0 });
  });

  it('two trials at the end both stay, ours first', () => {
    const trial = (day: number): string => `\ntrial 2026-04-0${day}:\n  end 25.${day} °C\n`;
    expect(
      merged(
        (text) => text + trial(1),
        (text) => text + trial(2),
      ),
    ).toEqual({
      text: tin + trial(1) + trial(2),
      conflicts: 0,
    });
  });

  describe('two trials of one day', () => {
    const [spiral, planetary] = [
      '  room 21 °C\n  mixed in spiral\n  speed 1 for 8 min\n',
      '  water 14 °C\n  mixed in planetary\n  speed 2 for 5 min\n',
    ];
    const trial = (lines: string): string => `\ntrial 2026-04-01:\n${lines}`;
    const both = (ours: string, theirs: string) =>
      merged(
        (text) => text + trial(ours),
        (text) => text + trial(theirs),
      );

    it('of two batches both stay, and the readings of one never come to the mix of the other', () => {
      const [ours, theirs] = [`${spiral}  at 3 min   20 °C\n`, `${planetary}  at 4 min   22 °C\n`];
      expect(both(ours, theirs)).toEqual({ text: tin + trial(ours) + trial(theirs), conflicts: 0 });
      expect(both('  end 25 °C\n', ours)).toEqual({
        text: tin + trial('  end 25 °C\n') + trial(ours),
        conflicts: 0,
      });
    });

    it('of one batch, read by two, are one', () => {
      const [ours, theirs] = [`${spiral}  at 3 min   20 °C\n`, `${spiral}  at 6 min   22 °C\n`];
      const { text, conflicts } = both(ours, theirs);
      expect(conflicts).toBe(0);
      expect(text.match(/^trial 2026-04-01:/gm)).toHaveLength(1);
      expect(text).toContain('  at 3 min   20 °C\n  at 6 min   22 °C\n');
    });

    it('of which one goes on are one, and what they say otherwise of it is a conflict', () => {
      const begun = `${spiral}  at 3 min   20 °C\n`;
      expect(both(begun, `${begun}  end 24 °C\n`)).toEqual({
        text: tin + trial(`${begun}  end 24 °C\n`),
        conflicts: 0,
      });
      expect(both(begun, begun.replace('room 21', 'room 23')).conflicts).toBe(1);
    });

    const [first, second] = [trial(`${spiral}  end 24 °C\n`), trial('  room 23 °C\n  end 26 °C\n')];

    it('are each what it was, whatever stands above it: a reading never comes to the other batch', () => {
      const more = '  baked 8 kg\n';
      const read = (text: string): string => text.replace(second, second + more);
      const both = tin + first + second + more;
      const onto = (base: string, ours: string, theirs: string) => mergeTexts(base, ours, theirs);
      // The first came meanwhile, above the one that was read.
      expect(onto(tin + second, tin + first + second, tin + second + more).text).toBe(both);
      expect(onto(tin + second, tin + second + more, tin + first + second).text).toBe(both);
      // They changed places meanwhile.
      expect(onto(tin + first + second, tin + second + first, read(tin + first + second)).text).toBe(
        tin + second + more + first,
      );
      // The one is taken out, not the other.
      expect(onto(tin + second, tin + first + second, tin)).toEqual({ text: tin + first, conflicts: 0 });
    });

    it('come once where one side has one of them already, and a third stands last', () => {
      const third = trial('  room 25 °C\n  end 28 °C\n');
      const both = tin + first + second;
      expect(mergeTexts(tin, both, tin + second)).toEqual({ text: both, conflicts: 0 });
      expect(mergeTexts(tin, tin + second, both)).toEqual({ text: both, conflicts: 0 });
      expect(mergeTexts(tin, both, tin + second + first)).toEqual({ text: both, conflicts: 0 });
      expect(mergeTexts(tin, both, tin + third)).toEqual({ text: both + third, conflicts: 0 });
    });

    it('of which it cannot be told which one was read are a conflict', () => {
      const same = '  room 21 °C\n';
      const [was, more] = [trial(`${same}  end 24 °C\n`), '  baked 8 kg\n'];
      const split = trial(`${same}  end 25 °C\n`) + trial(`${same}  end 26 °C\n`);
      const { text, conflicts } = mergeTexts(tin + was, tin + split, tin + was + more);
      expect(conflicts).toBe(1);
      expect(text).toContain(`=======\n${was}${more}>>>>>>> theirs\n`);
    });

    it('with no line yet, or with the same note, are one; with a note each they are two', () => {
      expect(both('', '  end 25 °C\n')).toEqual({ text: tin + trial('  end 25 °C\n'), conflicts: 0 });
      expect(both('  note tight\n', '  note tight\n').text).toBe(tin + trial('  note tight\n'));
      expect(both('  note tight\n', '  note open\n').text).toBe(
        tin + trial('  note tight\n') + trial('  note open\n'),
      );
    });
  });

  it.each<[string, string]>([
    ['  water 20 °C\n', '  water 18 °C\n'],
    ['  water 1.4 kg\n', '  water 1.5 kg\n'],
    ['  rise 80% at 1 h\n', '  rise 90% at 60 min\n'],
  ])('one trial has one water and one rise at a time: %j and %j are a conflict', (ours, theirs) => {
    const at = (more: string) => (text: string) => text.replace('  end 25.4 °C\n', `  end 25.4 °C\n${more}`);
    expect(merged(at(ours), at(theirs)).conflicts).toBe(1);
    expect(
      merged(at('  water 20 °C\n  rise 80% at 1 h\n'), at('  water 1.4 kg\n  rise 90% at 2 h\n')).conflicts,
    ).toBe(0);
  });

  it('a section that both add unites: what both say once, what either says as well', () => {
    const poolish = (more: string): string =>
      `\npreferment night poolish:\n  draws 20% of flour\n  water   100%\n${more}`;
    expect(
      merged(
        (text) => text + poolish('  instant yeast  0.1%\n'),
        (text) => text + poolish('  ferment 12 h at 18 °C\n'),
      ),
    ).toEqual({ text: `${tin}${poolish('  instant yeast  0.1%\n')}  ferment 12 h at 18 °C\n`, conflicts: 0 });
  });

  it('several lines of one property, such as allergens, are each of their own', () => {
    const paste = 'ingredient paste:\n  fat 50%\n';
    const { text, conflicts } = merged(
      (one) => `${one}  contains sesame\n`,
      (one) => `${one}  contains peanut\n`,
      paste,
    );
    expect([text, conflicts]).toEqual([`${paste}  contains sesame\n  contains peanut\n`, 0]);
  });

  it('a line and the one below it, taken out by one each, leave the comment above them', () => {
    const base = tin.replace('  butter ', '  # the fat of the week\n  butter ');
    const both = base.replace(/ {2}butter .*\n {2}egg .*\n/, '');
    const [butter, egg] = [
      replace('  butter             4%\n', ''),
      replace('  egg                5%\n', ''),
    ];
    expect(merged(butter, egg, base)).toEqual({ text: both, conflicts: 0 });
    expect(merged(egg, butter, base)).toEqual({ text: both, conflicts: 0 });
  });

  it('sections that belong to no formula keep apart, and a stray sign is a line', () => {
    expect(mergeTexts('process:', '', 'mix in spiral:\nprocess:').text).toBe('mix in spiral:\n');
    expect(mergeTexts('', '# rye', 'mix in spiral:\n"').text).toBe('mix in spiral:\n"\n# rye');
  });

  it('a change of layout alone gives way to a change of what is said', () => {
    const laidOut = tin.replaceAll(/ {2,}(?=\S+%)/g, ' ');
    const { text, conflicts } = mergeTexts(
      tin,
      laidOut,
      tin.replace('salt               2%', 'salt               2.1%'),
    );
    expect([text, conflicts]).toEqual([laidOut.replace('salt 2%', 'salt               2.1%'), 0]);
  });

  it('keeps the line ends of our side', () => {
    const windows = tin.replaceAll('\n', '\r\n');
    const { text } = mergeTexts(windows, windows.replace('4 min', '5 min'), windows.replace('25.4', '25.6'));
    expect(text).toBe(windows.replace('4 min', '5 min').replace('25.4', '25.6'));
  });
});

describe('what two bakers say differently stays a conflict', () => {
  it('of one line, marked with both, the rest merged', () => {
    const { text, conflicts } = merged(replace('salt               2%', 'salt               1.8%'), (text) =>
      replace('salt               2%', 'salt               2.2%')(replace('25.4', '25.9')(text)),
    );
    expect(conflicts).toBe(1);
    expect(text).toBe(
      tin
        .replace('25.4', '25.9')
        .replace(
          '  salt               2%\n',
          '<<<<<<< ours\n  salt               1.8%\n=======\n  salt               2.2%\n>>>>>>> theirs\n',
        ),
    );
  });

  it.each<[string, Edit, Edit, string, string]>([
    [
      'a line changed and taken out',
      replace('butter             4%', 'butter             6%'),
      replace('  butter             4%\n', ''),
      '  butter             6%\n',
      '',
    ],
    [
      'an ingredient that both add, with different weights',
      replace('  egg ', '  sugar              3%\n  egg '),
      replace('  egg ', '  sugar              5%\n  egg '),
      '  sugar              3%\n',
      '  sugar              5%\n',
    ],
    [
      'two steps at one place of the programme',
      replace('speed 1 for 4 min\n', 'speed 1 for 4 min\n  rest 20 min\n'),
      replace('speed 1 for 4 min\n', 'speed 1 for 4 min\n  add egg\n'),
      '  rest 20 min\n',
      '  add egg\n',
    ],
    [
      'a section changed and taken out',
      replace('25.4 °C', '25.9 °C'),
      replace('\ntrial 2026-03-14:\n  end 25.4 °C\n', ''),
      '\ntrial 2026-03-14:\n  end 25.9 °C\n',
      '',
    ],
  ])('%s', (_, one, other, mine, theirs) => {
    const { text, conflicts } = merged(one, other);
    expect(conflicts).toBe(1);
    expect(text).toContain(`<<<<<<< ours\n${mine}=======\n${theirs}>>>>>>> theirs\n`);
    expect(merged(other, one).conflicts).toBe(1);
  });

  it('of a flour that one side renamed or exchanged and the other weighed anew, or exchanged for another', () => {
    const by = (line: string) => (text: string) => text.replace(/^ {2}strong white .*\n/m, `  ${line}\n`);
    const [mine, yours] = [by('quay white         100%'), by('strong white       90%')];
    expect(merged(mine, yours)).toEqual({
      text: tin.replace(
        /^ {2}strong white .*\n/m,
        '<<<<<<< ours\n  quay white         100%\n=======\n  strong white       90%\n>>>>>>> theirs\n',
      ),
      conflicts: 1,
    });
    expect(merged(mine, by('soft white         100%')).conflicts).toBe(1);
    expect(merged(mine, mine)).toEqual({ text: mine(tin), conflicts: 0 });
    expect(merged(mine, (text) => text)).toEqual({ text: mine(tin), conflicts: 0 });
    // What the other side added of it already is decided by somebody too.
    const added = by('strong white       100%\n  quay white         20%');
    expect(merged(mine, added).conflicts).toBe(1);
  });

  it('with marks of the length and the names asked for, which the checker tells as an error', () => {
    const marks = { ours: 'HEAD', theirs: 'her-branch', size: 9 };
    const salt = (to: string): string => tin.replace('salt               2%', `salt ${to}`);
    const { text } = mergeTexts(tin, salt('1%'), salt('3%'), marks);
    expect(text).toContain('<<<<<<<<< HEAD\n  salt 1%\n=========\n  salt 3%\n>>>>>>>>> her-branch\n');
    const service = createService();
    service.setText('file:///tin.dough', mergeTexts(tin, salt('1%'), salt('3%')).text);
    expect(service.findings('file:///tin.dough').some(({ level }) => level === 'error')).toBe(true);
  });
});

/** An edit of one line of a text, known by its number, which two edits do not share. */
interface LineEdit {
  readonly at: number;
  readonly kind: 'change' | 'remove' | 'put';
}

describe('any two edits of different lines', () => {
  const examples = filesIn('examples/formulas', '.dough').map((file) =>
    readFileSync(join(project, file), 'utf8'),
  );

  /** Lines of a text that may be edited: ingredient lines and properties, in which order says nothing. */
  const editable = (text: string): number[] => {
    const inProgramme = /^\s*(mix|process|trial)\b/;
    const header = /^\s*\S.*:\s*(#.*)?$/;
    let programme = false;
    return text.split('\n').flatMap((line, at) => {
      if (header.test(line)) {
        programme = inProgramme.test(line);
        return [];
      }
      return programme || !/^ {2}[a-z][a-z ]+? {2,}[\d.]+%\s*$/.test(line) ? [] : [at];
    });
  };
  const apply = (text: string, edits: readonly (LineEdit & { readonly tag: string })[]): string => {
    const lines = text.split('\n').map((line) => [line]);
    for (const { at, kind, tag } of edits) {
      const [line] = lines[at]!;
      if (kind === 'change') lines[at]![0] = line!.replace(/[\d.]+%/, '17.25%');
      else if (kind === 'remove') lines[at]!.shift();
      else lines[at]!.push(`  new ${tag} ${at}  3%`);
    }
    return lines.flat().join('\n');
  };

  it('are both applied, and none is a conflict', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.array(fc.tuple(fc.nat(), fc.constantFrom('change', 'remove', 'put'), fc.boolean()), {
          maxLength: 6,
        }),
        (base, drawn) => {
          const places = editable(base);
          const taken = new Set<number>();
          const sides: [(LineEdit & { tag: string })[], (LineEdit & { tag: string })[]] = [[], []];
          for (const [nth, kind, isOurs] of drawn) {
            const at = places[nth % places.length]!;
            if (taken.has(at)) continue;
            taken.add(at);
            sides[isOurs ? 0 : 1].push({ at, kind: kind as LineEdit['kind'], tag: isOurs ? 'one' : 'other' });
          }
          const both = apply(base, sides.flat());
          const [ours, theirs] = sides.map((edits) => apply(base, edits)) as [string, string];
          expect(mergeTexts(base, ours, theirs)).toEqual({ text: both, conflicts: 0 });
          expect(mergeTexts(base, theirs, ours)).toEqual({ text: both, conflicts: 0 });
        },
      ),
      { numRuns: 300 },
    );
  });

  it('of programmes and processes are both applied too', () => {
    const steps = [
      'rest 20 min',
      'speed 1 for 4 min',
      'speed 2 for 3 min',
      'rest 10 min',
      'speed 1 for 2 min',
      'speed 3 for 1 min',
    ];
    const programme = (lines: readonly string[]): string =>
      `formula Tin:\n  strong white  100%\n  water  65%\n\nmix in spiral:\n${lines.map((line) => `  ${line}\n`).join('')}`;
    fc.assert(
      fc.property(fc.nat({ max: 5 }), fc.nat({ max: 5 }), fc.boolean(), (mine, yours, removes) => {
        fc.pre(mine !== yours);
        const change = (lines: readonly string[], at: number): string[] =>
          lines.map((line, nth) => (nth === at ? line.replace(/\d+ min/, '33 min') : line));
        const other = (lines: readonly (string | undefined)[]): string[] =>
          lines.flatMap((line, nth) =>
            nth === yours && removes ? [] : [nth === yours ? `${line} # mine` : line!],
          );
        const [ours, theirs, both] = [change(steps, mine), other(steps), other(change(steps, mine))].map(
          programme,
        );
        expect(mergeTexts(programme(steps), ours!, theirs!)).toEqual({ text: both, conflicts: 0 });
        expect(mergeTexts(programme(steps), theirs!, ours!)).toEqual({ text: both, conflicts: 0 });
      }),
      { numRuns: 100 },
    );
  });

  it('three texts of any lines never throw, and lose no line that one side alone has', () => {
    const line = fc.constantFrom(
      ...examples.flatMap((text) => text.split('\n')),
      'salt',
      '  2%',
      'mix',
      'formula :',
      '"',
    );
    const text = fc.array(line, { maxLength: 12 }).map((lines) => lines.join('\n'));
    fc.assert(
      fc.property(text, text, text, (base, ours, theirs) => {
        const { text: made } = mergeTexts(base, ours, theirs);
        const says = (all: string): Set<string> =>
          new Set(all.split('\n').map((one) => one.replace(/\s+/g, ' ').trim()));
        const [root, result] = [says(base), says(made)];
        for (const side of [ours, theirs])
          for (const one of says(side))
            if (!root.has(one) && one !== '' && !one.startsWith('#'))
              expect([one, result.has(one)]).toEqual([one, true]);
      }),
      { numRuns: 300 },
    );
  });
});
