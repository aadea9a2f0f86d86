import type { HeatLine } from '../calc/mixing/mixing-bill.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { escapeMarkdown } from './formula-words.ts';
import type { ComparisonRow, HeatFacts, WaterComparison } from './heat-of.ts';
import { provenanceMessage } from './provenance.ts';

/** What a source of heat is called: a portion by its own name, as its file has it. */
export function heatLabel({ source, name }: Pick<HeatLine, 'source' | 'name'>): Message | string {
  switch (source) {
    case 'hydration':
    case 'working':
    case 'room':
    case 'ice':
      return message(`heat-bill.${source}`);
    default:
      return name ?? source;
  }
}

/** The bill of heat as lines of text, `flour  −1.2 °C`: what each source does to the temperature of the dough. */
export function billLines(
  bill: readonly { readonly label: string; readonly celsius: number }[],
  speaker: Speaker,
): { readonly label: string; readonly celsius: string }[] {
  return bill
    .filter((line) => Math.abs(line.celsius) >= leastShown)
    .map(({ label, celsius }) => ({ label, celsius: changeText(celsius, speaker) }));
}

/** Less than this reads as a tenth of a degree too much, °C. */
const leastShown = 0.05;

function changeText(celsius: number, speaker: Speaker): string {
  const apartCelsius = Math.abs(celsius) < leastShown ? 0 : celsius;
  return speaker.say(message('heat-bill.change', { apartCelsius }));
}

/** The bill of heat as a Markdown table; undefined where nothing is known. */
export function billMarkdown({ bill, billProvenance }: HeatFacts, speaker: Speaker): string | undefined {
  const labelled = bill.map((line) => {
    const label = heatLabel(line);
    return { label: typeof label === 'string' ? label : speaker.say(label), celsius: line.celsius };
  });
  const lines = billLines(labelled, speaker);
  if (lines.length === 0) return undefined;
  const rows = lines.map(({ label, celsius }) => `| ${escapeMarkdown(label)} | ${celsius} |`);
  const heads = [message('heat-bill.head'), message('heat-bill.head-change')].map(speaker.say);
  const table = [`| ${heads.join(' | ')} |`, '| :-- | --: |', ...rows].join('\n');
  if (billProvenance === undefined) return table;
  const source = provenanceMessage(billProvenance);
  return `${table}\n\n${speaker.say(message('heat-bill.provenance', { source }))}`;
}

/** The water by rule of thumb and by balance of heat, term by term, as Markdown, with the difference in a sentence. */
export function comparisonMarkdown(comparison: WaterComparison, speaker: Speaker): string[] {
  const rows = comparison.rows.map((row) => {
    const cell = (value: number | undefined): string => {
      if (value === undefined) return '';
      return row.source === 'dough' ? speaker.celsius(value) : changeText(value, speaker);
    };
    return `| ${speaker.say(rowLabel(row, comparison))} | ${cell(row.ruleCelsius)} | ${cell(row.balanceCelsius)} |`;
  });
  const { ruleCelsius, balanceCelsius } = comparison;
  const heads = [message('comparison.rule'), message('comparison.balance')].map(speaker.say);
  const last = [
    speaker.say(message('comparison.water')),
    ...[ruleCelsius, balanceCelsius].map(speaker.celsius),
  ];
  return [
    [
      `| | ${heads.join(' | ')} |`,
      '| :-- | --: | --: |',
      ...rows,
      `| ${last.map((one) => `**${one}**`).join(' | ')} |`,
    ].join('\n'),
    speaker.say(differenceOf(comparison)),
  ];
}

/** Why the two differ, the largest reason first. */
export function differenceOf({ rows, ruleCelsius, balanceCelsius }: WaterComparison): Message {
  const off = ruleCelsius - balanceCelsius;
  const apartCelsius = Math.abs(off);
  if (apartCelsius < 0.5) return message('comparison.agree', { apartCelsius });
  const reasons: [celsius: number, reason: Message][] = [
    [gap(rows, 'flour'), message('comparison.because-flour')],
    [gap(rows, 'preferment'), message('comparison.because-preferment')],
    [gap(rows, 'others'), message('comparison.because-others')],
    [
      gap(rows, 'room') + gap(rows, 'friction') + gap(rows, 'working') + gap(rows, 'hydration'),
      message('comparison.because-day'),
    ],
  ];
  const [celsius, reason] = reasons.reduce(
    (one, other) =>
      Math.sign(other[0]) === Math.sign(off) && Math.abs(other[0]) > Math.abs(one[0]) ? other : one,
    [0, undefined] as [number, Message | undefined],
  );
  if (reason === undefined)
    return message(off > 0 ? 'comparison.warmer' : 'comparison.colder', { apartCelsius });
  const facts = { apartCelsius, partCelsius: Math.abs(celsius), reason };
  return message(off > 0 ? 'comparison.warmer-because' : 'comparison.colder-because', facts);
}

/** Less of a programme than this is not worth a word, minutes. */
const leastMinutes = 0.5;

/** What else the heat tells: the dough with water from the tap, and the minutes until it is too warm. */
export function heatOutlook({ fromTap, tooWarm }: Pick<HeatFacts, 'fromTap' | 'tooWarm'>): Message[] {
  const said: Message[] = [];
  if (fromTap !== undefined) said.push(message('heat.from-tap', fromTap));
  if (tooWarm !== undefined) {
    const { celsius: limitCelsius, atMinutes, leftMinutes } = tooWarm;
    if (leftMinutes >= leastMinutes)
      said.push(message('heat.minutes-left', { minutes: leftMinutes, limitCelsius }));
    else if (leftMinutes < 0) {
      const facts = { minutes: atMinutes, limitCelsius };
      said.push(
        message(atMinutes < leastMinutes ? 'heat.too-warm-from-start' : 'heat.too-warm-after', facts),
      );
    }
  }
  return said;
}

function rowLabel({ source, celsius = 0 }: ComparisonRow, { frictionGiven }: WaterComparison): Message {
  switch (source) {
    case 'friction':
      return message(frictionGiven ? 'comparison.friction-given' : 'comparison.friction-mild');
    case 'flour':
    case 'preferment':
    case 'room':
      return message(`comparison.${source}`, { celsius });
    case 'dough':
    case 'others':
    case 'working':
    case 'hydration':
      return message(`comparison.${source}`);
  }
}

function gap(rows: readonly ComparisonRow[], source: ComparisonRow['source']): number {
  const row = rows.find((one) => one.source === source);
  return (row?.ruleCelsius ?? 0) - (row?.balanceCelsius ?? 0);
}
