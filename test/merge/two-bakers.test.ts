import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeTexts } from '../../core/index.ts';

// Two bakers edit copies of one file. What they did to different lines is all in the merged file; what they did otherwise to the same
// line is a conflict that shows both. `SEED=7` takes other cases.

interface Line {
  readonly id: string;
  readonly text: string;
  readonly above?: string;
}
interface Part {
  readonly id: string;
  readonly header: string;
  /** The order of its lines says something. */
  readonly isOrdered: boolean;
  readonly lines: readonly Line[];
}
/** A file as its blocks, each a list of sections. */
type Book = readonly (readonly Part[])[];

const lines = (of: string, texts: readonly string[]): Line[] =>
  texts.map((text, at) => ({ id: `${of} ${at}`, text }));
const part = (header: string, isOrdered: boolean, texts: readonly string[]): Part => ({
  id: header,
  header,
  isOrdered,
  lines: lines(header, texts),
});

const book: Book = [
  [part('flour quay white:', false, ['protein 12.2%', 'moisture 14%', 'price 0.95 EUR per kg'])],
  [
    part('formula Harbour Tin:', false, [
      'yield 24 pieces of 880 g',
      'dough temperature 25 °C',
      'quay white 90%',
      'wholemeal wheat balance',
      'water to 69% hydration',
      'salt 2%',
      'fresh yeast 0.9%',
      'butter 3%',
      'butter 1%, at 8 °C',
    ]),
    part('soaker seed soaker:', false, ['draws all linseed', 'water 150%', 'soak 10 h at 20 °C']),
    part('mix in spiral:', true, [
      'load flour, water',
      'speed 1 for 4 min',
      'rest 20 min',
      'add salt',
      'speed 1 for 2 min',
      'rest 10 min',
      'add butter',
      'speed 2 for 3 min',
    ]),
    part('process:', true, [
      'bulk 90 min at 25 °C',
      'divide',
      'rest 15 min',
      'shape',
      'proof 55 min at 28 °C',
      'bake 34 min at 230 °C, steam',
    ]),
    part('trial 2026-03-14:', false, ['room 21 °C', 'at 3 min 22.4 °C', 'rise 80% at 70 min', 'end 25.4 °C']),
  ],
  [part('formula Oat Tin like Harbour Tin:', false, ['rolled oats 8%', 'without butter'])],
  [
    part('experiment Wet and dry:', false, [
      'dough Harbour Tin, by hand, knead 12 min',
      'dough Oat Tin, by hand, knead 14 min',
      'batch 900 g',
      'on hand quay white 3 kg',
    ]),
  ],
];

const textOf = (some: Book): string =>
  some
    .map((parts) =>
      parts
        .map(
          ({ header, lines: own }) =>
            `${header}\n${own.map(({ text, above }) => `${above === undefined ? '' : `  # ${above}\n`}  ${text}\n`).join('')}`,
        )
        .join('\n'),
    )
    .join('\n');

/** Numbers of a line made other ones, so that it says something else. */
const other = (text: string, by: number): string =>
  /\d/.test(text)
    ? text.replace(/\d+(\.\d+)?/, (figure) => String(Math.round((Number(figure) + by) * 100) / 100))
    : `${text} # ${by}`;

type Edit = (some: Book) => Book;
const inPart =
  (id: string, edit: (one: Part) => Part): Edit =>
  (some) =>
    some.map((parts) => parts.map((one) => (one.id === id ? edit(one) : one)));
const onLine = (id: string, line: string, edit: (one: Line) => readonly Line[]): Edit =>
  inPart(id, (one) => ({
    ...one,
    lines: one.lines.flatMap((own) => (own.id === line ? edit(own) : [own])),
  }));

const edits = {
  change: (id: string, line: string, by: number) =>
    onLine(id, line, (one) => [{ ...one, text: other(one.text, by) }]),
  remove: (id: string, line: string) => onLine(id, line, () => []),
  explain: (id: string, line: string, word: string) =>
    onLine(id, line, (one) => [{ ...one, above: `see ${word}` }]),
  put: (id: string, line: string, word: string) =>
    onLine(id, line, (one) => [one, { id: word, text: putText(id, word) }]),
  first: (id: string, line: string): Edit =>
    inPart(id, (one) => ({
      ...one,
      lines: [...one.lines.filter((own) => own.id === line), ...one.lines.filter((own) => own.id !== line)],
    })),
  last: (id: string, line: string): Edit =>
    inPart(id, (one) => ({
      ...one,
      lines: [...one.lines.filter((own) => own.id !== line), ...one.lines.filter((own) => own.id === line)],
    })),
  rename: (id: string, word: string): Edit =>
    inPart(id, (one) => ({ ...one, header: one.header.replace(/ ?:$/, ` ${word}:`) })),
  drop:
    (id: string): Edit =>
    (some) =>
      some.map((parts) => parts.filter((one) => one.id !== id)).filter((parts) => parts.length > 0),
  trial:
    (word: string): Edit =>
    (some) =>
      some.map((parts) =>
        parts[0]?.id === 'formula Harbour Tin:'
          ? [...parts, part(`trial 2026-05-01, ${word}:`, false, ['end 26 °C'])]
          : parts,
      ),
  bread:
    (word: string): Edit =>
    (some) => [...some, [part(`formula New ${word}:`, false, ['quay white 100%', 'water 65%'])]],
};

function putText(id: string, word: string): string {
  const digits = 5 + (word.codePointAt(word.length - 1) ?? 0);
  if (id.startsWith('mix')) return `speed 3 for ${digits} min`;
  if (id.startsWith('process')) return `fold at ${digits} min`;
  if (id.startsWith('trial')) return `at ${digits} min 23 °C`;
  if (id.startsWith('experiment')) return `on hand ${word} ${digits} kg`;
  if (id.startsWith('flour')) return `note ${word}`;
  return `${word} ${digits}%`;
}

/** What every section says, where the order says nothing in the order of the alphabet. */
function saidIn(text: string): unknown {
  const parts: { header: string; lines: string[]; above: string[] }[] = [];
  for (const line of text.split('\n')) {
    if (line.trim() === '') continue;
    if (!line.startsWith(' ')) parts.push({ header: line, lines: [], above: [] });
    else if (line.trim().startsWith('#')) parts.at(-1)?.above.push(line.trim());
    else parts.at(-1)?.lines.push(line.trim());
  }
  return parts
    .map(({ header, lines: own, above }) => ({
      header,
      lines: /^(mix|process)/.test(header) ? own : own.toSorted(),
      above: above.toSorted(),
    }))
    .toSorted((one, two) => (one.header < two.header ? -1 : 1));
}

const sections = book.flat();
const anyPart = fc.constantFrom(...sections);

/** An edit with the lines it touches: no two of different bakers touch one. */
interface Touch {
  readonly of: string;
  readonly touches: readonly string[];
  readonly edit: (word: string) => Edit;
}

const whole = (one: Part): string[] => [one.id, ...one.lines.map(({ id }) => id), `order of ${one.id}`];

const anyTouch: fc.Arbitrary<Touch> = anyPart.chain((one) =>
  fc
    .tuple(
      fc.constantFrom(...one.lines),
      fc.constantFrom(
        'change',
        'remove',
        'explain',
        'put',
        'first',
        'last',
        'rename',
        'drop',
        'trial',
        'bread',
      ),
    )
    .map(([line, what]): Touch => {
      const of = one.id;
      const at = one.lines.indexOf(line);
      // What stands below a line that goes or comes takes its comments along: the two are told apart only by who wrote them.
      const beside = [line.id, ...(one.lines[at + 1] === undefined ? [] : [one.lines[at + 1]!.id])];
      const order = one.isOrdered ? [`order of ${of}`] : [];
      switch (what) {
        case 'change':
          return { of, touches: [line.id], edit: () => edits.change(of, line.id, 3) };
        case 'remove':
          return { of, touches: [...beside, of], edit: () => edits.remove(of, line.id) };
        case 'explain':
          return { of, touches: [line.id], edit: (word) => edits.explain(of, line.id, word) };
        case 'put':
          return { of, touches: [...beside, ...order], edit: (word) => edits.put(of, line.id, word) };
        case 'first':
        case 'last':
          return one.isOrdered
            ? { of, touches: whole(one), edit: () => edits[what](of, line.id) }
            : { of, touches: [line.id], edit: () => edits[what](of, line.id) };
        case 'rename':
          return /^(formula Harbour|mix)/.test(of)
            ? { of, touches: [of], edit: (word) => edits.rename(of, word) }
            : { of, touches: [line.id], edit: () => edits.change(of, line.id, 4) };
        case 'drop':
          return of.startsWith('formula Harbour')
            ? { of, touches: [line.id], edit: () => edits.change(of, line.id, 5) }
            : { of, touches: whole(one), edit: () => edits.drop(of) };
        case 'trial':
          return { of, touches: [], edit: (word) => edits.trial(word) };
        default:
          return { of, touches: [], edit: (word) => edits.bread(word) };
      }
    }),
);

const apply = (some: Book, all: readonly Edit[]): Book => all.reduce((made, edit) => edit(made), some);

describe('two bakers', () => {
  it('who edit different lines have both their edits, and no conflict', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyTouch, fc.boolean()), { maxLength: 9 }), (drawn) => {
        const touched = [new Set<string>(), new Set<string>()] as const;
        const mine: Edit[] = [];
        const yours: Edit[] = [];
        for (const [{ touches, edit }, isMine] of drawn) {
          const [own, others] = isMine ? touched : [touched[1], touched[0]];
          // One edit a line, so that what all come to does not hang on which is first.
          if (touches.some((id) => own.has(id) || others.has(id))) continue;
          for (const id of touches) own.add(id);
          const word = `${isMine ? 'ann' : 'bea'}${'abcdefghi'[mine.length + yours.length]}`;
          (isMine ? mine : yours).push(edit(word));
        }
        const [base, ours, theirs] = [[], mine, yours].map((all) => textOf(apply(book, all))) as [
          string,
          string,
          string,
        ];
        const wanted = saidIn(textOf(apply(book, [...mine, ...yours])));
        for (const [one, two] of [
          [ours, theirs],
          [theirs, ours],
        ] as const) {
          const { text, conflicts } = mergeTexts(base, one, two);
          expect([conflicts, saidIn(text)]).toEqual([0, wanted]);
        }
      }),
      { numRuns: 500 },
    );
  });

  const clashes: readonly (readonly [
    string,
    (one: Part, line: Line) => readonly [Edit, Edit] | undefined,
  ])[] = [
    [
      'change a line otherwise',
      ({ id }, line) => [edits.change(id, line.id, 3), edits.change(id, line.id, 7)],
    ],
    [
      'change a line and take it out',
      ({ id }, line) => [edits.change(id, line.id, 3), edits.remove(id, line.id)],
    ],
    [
      'put steps at one place',
      ({ id, isOrdered }, line) =>
        isOrdered ? [edits.put(id, line.id, 'one a'), edits.put(id, line.id, 'two b')] : undefined,
    ],
    [
      'move a step and take it out',
      ({ id, isOrdered, lines: own }, line) =>
        // Of two neighbours that change places either may be the one that moved.
        isOrdered && own.indexOf(line) > 1
          ? [edits.first(id, line.id), edits.remove(id, line.id)]
          : undefined,
    ],
    [
      'move a step to different places',
      ({ id, isOrdered, lines: own }, line) =>
        isOrdered && own.indexOf(line) > 1 && own.indexOf(line) < own.length - 2
          ? [edits.first(id, line.id), edits.last(id, line.id)]
          : undefined,
    ],
    [
      'put the same ingredient with different weights',
      ({ id }, line) => {
        if (!/^(formula Harbour|soaker)/.test(id)) return undefined;
        const put = (text: string): Edit => onLine(id, line.id, (one) => [one, { id: 'new', text }]);
        return [put('sugar 3%'), put('sugar 5%')];
      },
    ],
    [
      'change a line and take its section out',
      ({ id }, line) =>
        id.startsWith('formula Harbour') ? undefined : [edits.change(id, line.id, 3), edits.drop(id)],
    ],
  ];

  it.each(clashes)('who %s have a conflict that shows both', (_, clash) => {
    fc.assert(
      fc.property(
        anyPart.chain((one) => fc.tuple(fc.constant(one), fc.constantFrom(...one.lines))),
        ([one, line]) => {
          const both = clash(one, line);
          fc.pre(both !== undefined);
          const [ours, theirs] = both!.map((edit) => textOf(edit(book))) as [string, string];
          const base = textOf(book);
          for (const [some, more] of [
            [ours, theirs],
            [theirs, ours],
          ] as const) {
            const { text, conflicts } = mergeTexts(base, some, more);
            expect(conflicts).toBeGreaterThan(0);
            const found = new Set(text.split('\n').map((each) => each.trim()));
            for (const each of [...some.split('\n'), ...more.split('\n')])
              if (each.trim() !== '' && !base.includes(each)) expect(found).toContain(each.trim());
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('who take an ingredient out of the dough into different soakers have it in neither unasked', () => {
    const base =
      'formula Tin:\n  quay white 100%\n  linseed 5%\n\nsoaker one:\n  water 10%\n\nsoaker two:\n  water 20%\n';
    const into = (water: string): string =>
      base.replace('  linseed 5%\n', '').replace(water, `${water}\n  linseed 5%`);
    const out = base.replace('  linseed 5%\n', '');
    expect(mergeTexts(base, into('water 10%'), into('water 20%')).conflicts).toBe(2);
    expect(mergeTexts(base, into('water 10%'), out).conflicts).toBe(1);
    expect(mergeTexts(base, into('water 10%'), into('water 10%')).conflicts).toBe(0);
    expect(mergeTexts(base, into('water 10%'), base.replace('20%', '25%'))).toEqual({
      text: into('water 10%').replace('20%', '25%'),
      conflicts: 0,
    });
  });
});
