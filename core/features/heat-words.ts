import { degrees, degreesApart, degreesToRead, minutes, trimmed } from '../text/figures.ts';
import { escapeMarkdown } from './formula-words.ts';
import type { ComparisonRow, HeatFacts, WaterComparison } from './heat-of.ts';

/** The bill of heat as lines of text, `flour  −1.2 °C`: what each source does to the temperature of the dough. */
export function billLines({ bill }: HeatFacts): { readonly label: string; readonly celsius: string }[] {
  return bill
    .filter((line) => Math.abs(line.celsius) >= 0.05)
    .map((line) => ({ label: line.label, celsius: signed(line.celsius) }));
}

/** The bill of heat as a Markdown table; undefined where nothing is known. */
export function billMarkdown(facts: HeatFacts): string | undefined {
  const lines = billLines(facts);
  if (lines.length === 0) return undefined;
  const rows = lines.map(({ label, celsius }) => `| ${escapeMarkdown(label)} | ${celsius} |`);
  const table = ['| heat | does to the dough |', '| :-- | --: |', ...rows].join('\n');
  return facts.billProvenance === undefined
    ? table
    : `${table}\n\n_(${facts.billProvenance}: heat contents are published, the warming by mixing is our own fit)_`;
}

/** The water by rule of thumb and by balance of heat, term by term, as Markdown, with the difference in a sentence. */
export function comparisonMarkdown(comparison: WaterComparison): string[] {
  const rows = comparison.rows.map((row) => {
    const cell = (value: number | undefined): string =>
      value === undefined ? '' : row.source === 'dough' ? degrees(value) : signed(value);
    return `| ${rowWords(row, comparison)} | ${cell(row.ruleCelsius)} | ${cell(row.balanceCelsius)} |`;
  });
  const { ruleCelsius, balanceCelsius } = comparison;
  return [
    [
      '| | rule of thumb | balance of heat |',
      '| :-- | --: | --: |',
      ...rows,
      `| **water** | **${degreesToRead(ruleCelsius)}** | **${degreesToRead(balanceCelsius)}** |`,
    ].join('\n'),
    differenceWords(comparison),
  ];
}

/** Why the two differ, the largest reason first. */
export function differenceWords({ rows, ruleCelsius, balanceCelsius }: WaterComparison): string {
  const off = ruleCelsius - balanceCelsius;
  if (Math.abs(off) < 0.5) return `Rule of thumb and balance agree to ${degreesApart(Math.abs(off))}.`;
  const reasons: [celsius: number, words: string][] = [
    [gap(rows, 'flour'), 'it counts the flour as heavy as the water'],
    [gap(rows, 'preferment'), 'it counts the preferment as heavy as the water'],
    [gap(rows, 'others'), 'it leaves out everything but flour and water'],
    [
      gap(rows, 'room') + gap(rows, 'friction') + gap(rows, 'working') + gap(rows, 'hydration'),
      'room and friction factor stand for mixing, hydration and what the room takes, on another day',
    ],
  ];
  const [celsius, words] = reasons.reduce(
    (one, other) =>
      Math.sign(other[0]) === Math.sign(off) && Math.abs(other[0]) > Math.abs(one[0]) ? other : one,
    [0, ''] as [number, string],
  );
  const side = `The rule of thumb comes out ${degreesApart(Math.abs(off))} ${off > 0 ? 'warmer' : 'colder'}`;
  return words === '' ? `${side}.` : `${side}; ${degreesApart(Math.abs(celsius))} because ${words}.`;
}

/** Less of a programme than this is not worth a word, minutes. */
const leastMinutes = 0.5;

/** What else the heat tells: the dough with water from the tap, and the minutes until it is too warm. */
export function heatSentences({ fromTap, tooWarm }: HeatFacts): string[] {
  const said: string[] = [];
  if (fromTap !== undefined)
    said.push(
      `With all its water from the tap, at ${degrees(fromTap.tapCelsius)}, the dough would end at ${degrees(fromTap.doughCelsius)}.`,
    );
  if (tooWarm !== undefined) {
    const { celsius, atMinutes, leftMinutes } = tooWarm;
    if (leftMinutes >= leastMinutes)
      said.push(
        `${minutes(leftMinutes)} more at the last speed and it is too warm, above ${degrees(celsius)}.`,
      );
    else if (leftMinutes < 0)
      said.push(
        atMinutes < leastMinutes
          ? `It is too warm, above ${degrees(celsius)}, from the start.`
          : `It is too warm, above ${degrees(celsius)}, after ${minutes(atMinutes)}.`,
      );
  }
  return said;
}

function rowWords({ source, celsius }: ComparisonRow, comparison: WaterComparison): string {
  const at = celsius === undefined ? '' : ` at ${degrees(celsius)}`;
  switch (source) {
    case 'dough':
      return 'dough wanted';
    case 'others':
      return 'all else in the bowl';
    case 'friction':
      return comparison.frictionGiven ? 'friction factor, given' : 'friction factor of a mild day';
    case 'working':
      return 'mixing';
    case 'hydration':
      return 'heat of hydration';
    default:
      return `${source}${at}`;
  }
}

function gap(rows: readonly ComparisonRow[], source: ComparisonRow['source']): number {
  const row = rows.find((one) => one.source === source);
  return (row?.ruleCelsius ?? 0) - (row?.balanceCelsius ?? 0);
}

function signed(celsius: number): string {
  if (trimmed(Math.abs(celsius), 1) === '0') return degreesApart(0);
  return `${celsius < 0 ? '−' : '+'}${degreesApart(Math.abs(celsius))}`;
}
