import { describe, expect, it } from 'vitest';
import { handTrials } from '../../core/analysis/mixer-trials.ts';
import { createService, type Service } from '../../core/index.ts';
import {
  emptySnapshot,
  type Snapshot,
  withRoots,
  withSettings,
  withText,
} from '../../core/workspace/snapshot.ts';
import { Cache } from '../../core/workspace/snapshot-view.ts';

const root = 'file:///quay-lane/';
const mixer = 'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n';

function formula(number: number, date: string, end: number): string {
  return [
    `formula Quay Tin ${number}:`,
    '  yield 20 kg',
    '  bread flour  100%',
    '  water  65%',
    '  salt  2%',
    'mix in hook:',
    '  load flour, water, salt',
    '  speed 1 for 4 min',
    `  speed 2 for ${2 + (number % 3)} min`,
    `trial ${date}:`,
    '  room 21 °C',
    '  flour 20 °C',
    '  water 14 °C',
    `  end ${end} °C`,
    '',
  ].join('\n');
}

function workspace(count: number, dateOf: (number: number) => string): Service {
  const service = createService();
  service.setRoots([root]);
  service.setText(`${root}mixers.dough`, mixer);
  for (let number = 0; number < count; number++)
    service.setText(
      `${root}${number}.dough`,
      formula(number, dateOf(number), dateOf(number) < '2025' ? 40 : 24 + (number % 3)),
    );
  return service;
}

const told = (service: Service): string =>
  service.findings(`${root}mixers.dough`).find(({ code }) => code === 'mixer-can-be-calibrated')?.message ??
  '';

describe('a mixer with very many trials', () => {
  const date = (number: number): string =>
    number < 60
      ? `2024-03-${String(1 + (number % 28)).padStart(2, '0')}`
      : `2026-03-${String(1 + (number % 28)).padStart(2, '0')}`;

  it('is calibrated from its newest forty: what it did years ago no longer counts', () => {
    const newest = told(workspace(100, date));
    expect(newest).toContain('from 40 readings of 40 formulas, of its newest 40 trials');
    // Of the older trials, which ended 15 °C warmer, not one counts: the fit misses the readings by little.
    const [, left] = /calibrated by (\d+(?:\.\d)?) °C/.exec(newest)!;
    expect(Number(left)).toBeLessThan(1);
  });

  it('counts all trials where there are no more', () => {
    expect(told(workspace(12, () => '2026-03-01'))).toContain('from 12 readings of 12 formulas.');
  });
});

describe('two mixers of one name, each in a folder of its own', () => {
  const answers = (first: string, second: string): readonly string[] => {
    const service = createService();
    service.setRoots([root]);
    for (const folder of ['east', 'west']) service.setText(`${root}${folder}/mixers.dough`, mixer);
    const [whole, oneTrial] = [
      formula(0, '2026-03-01', 24),
      /trial [\s\S]*/.exec(formula(0, '2026-03-02', 26))![0],
    ];
    service.setText(`${root}east/0.dough`, `${whole}${oneTrial}${oneTrial.replace('-02:', '-03:')}`);
    return [first, second].map(
      (folder) =>
        service
          .findings(`${root}${folder}/mixers.dough`)
          .find(({ code }) => code === 'mixer-can-be-calibrated')?.message ?? 'nothing',
    );
  };

  it.each([
    ['east', 'west'],
    ['west', 'east'],
  ])('learn only what was run on them, whoever asks first: %s, then %s', (first, second) => {
    const told = answers(first, second);
    expect(told[first === 'east' ? 0 : 1]).toContain('from 3 readings of');
    expect(told[first === 'east' ? 1 : 0]).toBe('nothing');
  });
});

describe('what trials tell of a mixer, for all who ask', () => {
  const byHand = (number: number, end: number): string =>
    formula(number, '2026-03-01', end)
      .replace('mix in hook:', 'mix by hand:')
      .replace(/ {2}speed.*\n/g, '  knead 8 min\n');
  const three = [24, 25, 26].reduce(
    (snapshot, end, number) => withText(snapshot, `${root}${number}.dough`, byHand(number, end)),
    withText(
      withRoots(emptySnapshot, [root]),
      `${root}flour.dough`,
      'flour bread flour:\n  grain wheat\n  protein 12%\n',
    ),
  );
  const asked = (cache: Cache, snapshot: Snapshot, number: number) =>
    handTrials(cache.at(snapshot).scopeOf(`${root}${number}.dough`));
  const changes: readonly [what: string, change: (snapshot: Snapshot) => Snapshot][] = [
    ['a trial', (one) => withText(one, `${root}0.dough`, byHand(0, 30))],
    ['another one more', (one) => withText(one, `${root}3.dough`, byHand(3, 25))],
    ['one less', (one) => withText(one, `${root}1.dough`, undefined)],
    ['a formula that moves', (one) => withText(one, `${root}0.dough`, `\n\n${byHand(0, 24)}`)],
    [
      'the flour of the doughs',
      (one) => withText(one, `${root}flour.dough`, 'flour bread flour:\n  grain wheat\n  protein 9%\n'),
    ],
    ['a bakery', (one) => withText(one, `${root}house.dough`, 'bakery:\n  altitude 1900 m\n')],
    ['usual conditions', (one) => withSettings(one, { usual: { roomCelsius: 9 } })],
    ['hands with a section', (one) => withText(one, `${root}hands.dough`, 'mixer by hand:\n  kind hand\n')],
  ];

  it.each([true, false])('is worked out once for a snapshot, lean %s', (lean) => {
    const cache = new Cache({ lean });
    const first = asked(cache, three, 0);
    expect(first).toMatchObject({ trials: 3, hasOlder: false });
    for (const number of [1, 2]) expect(asked(cache, three, number)).toBe(first);
  });

  it.each(changes)('is that of a workspace opened afresh after %s', (_, change) => {
    const cache = new Cache();
    const plain = (one: ReturnType<typeof handTrials>) =>
      JSON.stringify([
        one,
        one?.development(),
        one?.newest.firstLine,
        one?.formulas.map(({ firstLine }) => firstLine),
      ]);
    const before = plain(asked(cache, three, 2));
    const changed = change(three);
    expect(plain(asked(cache, changed, 2))).toBe(plain(asked(new Cache(), changed, 2)));
    expect(plain(asked(cache, three, 2))).toBe(before);
  });
});
