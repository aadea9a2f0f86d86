import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { hottestCelsius } from '../../core/rules/mixing/hot-water.ts';
import { failed } from '../rules/failed.ts';
import { applied, findingsOf, firstFix } from '../rules/findings.ts';

/** The formulas that newcomers write, with every fix taken that is offered unasked. */
const folder = join(import.meta.dirname, '..', 'fixtures');
const texts = ['everyday', 'everyday-notes', 'everyday-further'].flatMap((set) =>
  readdirSync(join(folder, set)).map((name) => fixed(name, readFileSync(join(folder, set, name), 'utf8'))),
);

function fixed(name: string, text: string): string {
  let now = text;
  for (let round = 0; round < 60; round++) {
    const next = findingsOf([{ path: name, text: now }]).find(
      (one) => (one.level === 'error' || one.level === 'warning') && firstFix(one)?.preferred === true,
    );
    if (next === undefined) break;
    now = applied(now, next.firstLine, firstFix(next)!);
  }
  return now;
}

/** From a cold morning to a heat wave, and a mixer that hardly works beside those that are written. */
const days = [
  { room: 8, flour: 6, tap: 3 },
  { room: 21, flour: 21, tap: 12 },
  { room: 40, flour: 36, tap: 28 },
];
const mixers = [undefined, 'twin arm'];
/** How often each line of a programme is run for. */
const lengths = [1, 3];

/** Findings that say of the dough what no answer may pass over. */
const against = {
  state: ['let-down', 'broken-down', 'over-mixing', 'mixed-past-need', 'under-developed'],
  'dough temperature': ['too-warm', 'ice-needed'],
} as const;

describe('an answer at a glance says as wanted only where no finding says otherwise', () => {
  it.each(days)(
    'at $room °C, flour at $flour °C and tap at $tap °C',
    ({ room, flour, tap }) => {
      let asWanted = 0;
      for (const mixer of mixers)
        for (const times of lengths) {
          const service = createService({ failed });
          service.setText(
            'file:///quay/bakery.dough',
            `bakery Quay:\n  room ${room} °C\n  flour ${flour} °C\n  tap water ${tap} °C\n`,
          );
          for (const [index, text] of texts.entries()) {
            // Every third on each day, so that it stays quick.
            if (index % days.length !== days.findIndex((day) => day.room === room)) continue;
            const uri = `file:///quay/${index}.dough`;
            const longer = text
              .replace(/^mix in .*:$/gm, (header) => (mixer === undefined ? header : `mix in ${mixer}:`))
              .replace(
                /^(\s*speed \d for )(\d+) min/gm,
                (_, head: string, minutes: string) => `${head}${Number(minutes) * times} min`,
              );
            service.setText(uri, longer);
            const facts = service
              .sheet(uri, 0, {})
              ?.sections.flatMap((section) =>
                section.kind === 'facts' && section.name === 'glance' ? section.facts : [],
              );
            const codes = service.findings(uri).map(({ code }) => code);
            for (const { key, value, verdict } of facts ?? []) {
              expect(value, longer).not.toMatch(/NaN|undefined|Infinity/);
              if (verdict?.level === 'good') asWanted++;
              const other: readonly string[] = Object.hasOwn(against, key)
                ? against[key as keyof typeof against]
                : [];
              if (verdict?.level === 'good')
                expect(
                  codes.filter((code) => other.includes(code)),
                  `${key} of ${longer}`,
                ).toEqual([]);
              const celsius = Number(/^(\d+(?:\.\d)?) °C/.exec(value)?.[1]);
              if (key === 'water' && celsius > hottestCelsius) expect(codes, longer).toContain('hot-water');
            }
          }
        }
      // The test is one only where the answer is given at all.
      expect(asWanted).toBeGreaterThan(10);
    },
    120_000,
  );
});
