import {
  billLines,
  degrees,
  differenceWords,
  type FormulaTotals,
  heatSentences,
  type Level,
  mass,
  percent,
  plainSpeaker,
  type Speaker,
  type TotalsLine,
  trimmed,
  weighedFigure,
} from '../../core/index.ts';
import { levelStyles, styled } from './style.ts';
import { costLines, labelSections } from './totals-label-text.ts';

/** The totals of a formula for a baker to read in a terminal, the draft of its label if asked. What is not known is left out. */
export function totalsText(
  totals: FormulaTotals,
  show: { readonly label?: boolean } = {},
  speaker: Speaker = plainSpeaker,
): string {
  return [
    `${styled('bold', totals.formula)}  ${styled('gray', totals.file)}`,
    ...facts(totals).map(([label, value]) => `  ${label.padEnd(labelWidth)}${value}`),
    ...table('overall', totals.overall, totals.flourGrams),
    ...totals.parts.flatMap((part) => {
      const kind = part.enclosed ? `${part.kind}, folded in` : part.kind;
      const title = part.kind === 'dough' ? 'into the bowl' : `${part.name} (${kind})`;
      const about = part.hydration === undefined ? '' : `, hydration ${percent(part.hydration)}`;
      return table(`${title}${about}`, part.lines, part.flourGrams, part.totalGrams);
    }),
    ...section('mixing', totals.mixing?.outlook ?? []),
    ...section('heat', totals.heat ? heatLines(totals.heat) : []),
    ...section('cost', totals.cost ? costLines(totals.cost, speaker) : []),
    ...(show.label && totals.label
      ? labelSections(totals.label, speaker).flatMap(({ title, lines }) => section(title, lines))
      : []),
    ...section(
      'findings',
      totals.findings.map(({ code, level, line, message }) => {
        const style = levelStyles[level as Level] ?? 'gray';
        return `line ${line}: ${styled(style, level)}: ${message} ${styled('gray', `[${code}]`)}`;
      }),
    ),
    '',
  ].join('\n');
}

function heatLines(heat: NonNullable<FormulaTotals['heat']>): string[] {
  const bill = billLines(heat.bill);
  const wide = Math.max(0, ...bill.map(({ label }) => width(label)));
  return [
    ...bill.map(({ label, celsius }) => `${label}${' '.repeat(wide - width(label))}${celsius.padStart(11)}`),
    ...(heat.comparison ? [differenceWords(heat.comparison)] : []),
    ...heatSentences(heat),
  ];
}

const labelWidth = 20;

function facts(totals: FormulaTotals): [label: string, value: string][] {
  const { doughGrams, bakedGrams, flourGrams, pieces, pieceGrams, hydration, effectiveHydration, water } =
    totals;
  const makes = [
    pieces !== undefined && pieceGrams !== undefined
      ? `${trimmed(pieces, 1)} pieces of ${mass(pieceGrams)}`
      : '',
    doughGrams !== undefined ? `${mass(doughGrams)} of dough${foldedIn(totals)}` : '',
    bakedGrams !== undefined ? `${mass(bakedGrams)} baked` : '',
  ].filter(Boolean);
  const effective = effectiveHydration === undefined ? '' : `, effective ${percent(effectiveHydration)}`;
  const rows: [string, string | undefined][] = [
    ['makes', makes.join(', ') || undefined],
    ['flour', flourGrams === undefined ? undefined : mass(flourGrams)],
    ['hydration', hydration === undefined ? undefined : `${percent(hydration)}${effective}`],
    ['salt', totals.saltFraction ? percent(totals.saltFraction) : undefined],
    ['prefermented flour', totals.prefermentedFlour ? percent(totals.prefermentedFlour) : undefined],
    ['flour mix', totals.flourMix && mixWords(totals.flourMix)],
    ['water', water && waterWords(water)],
  ];
  return rows.filter((row): row is [string, string] => row[1] !== undefined);
}

function foldedIn({ enclosedGrams }: FormulaTotals): string {
  return enclosedGrams === undefined ? '' : ` with ${mass(enclosedGrams)} folded in`;
}

function mixWords(mix: NonNullable<FormulaTotals['flourMix']>): string {
  const { proteinAt14PercentMoisture: protein, absorptionAt14PercentMoisture: absorption } = mix;
  const at14 = [
    protein === undefined ? '' : `protein ${percent(protein)}`,
    absorption === undefined ? '' : `absorption ${percent(absorption)}`,
  ].filter(Boolean);
  const ash = mix.ashOfDryMatter === undefined ? '' : `ash ${percent(mix.ashOfDryMatter)} of dry matter`;
  return [at14.length === 0 ? '' : `${at14.join(', ')} at 14% moisture`, ash].filter(Boolean).join('; ');
}

function waterWords(water: NonNullable<FormulaTotals['water']>): string {
  const { celsius, iceGrams, tapGrams, tapCelsius, tapAssumed, reach, ruleOfThumbCelsius, frictionCelsius } =
    water;
  const tap = `${tapAssumed ? 'taken to be ' : ''}at ${degrees(tapCelsius)}`;
  const ice = iceGrams && tapGrams !== undefined ? `${mass(iceGrams)} of ice and ${mass(tapGrams)} ` : '';
  const drawn =
    celsius === undefined || reach === 'tap too warm'
      ? `${ice}from the tap, ${tap}`
      : `at ${degrees(celsius)}`;
  const friction = frictionCelsius === undefined ? '' : `, friction factor ${degrees(frictionCelsius)}`;
  const rule =
    ruleOfThumbCelsius === undefined ? '' : ` (rule of thumb ${degrees(ruleOfThumbCelsius)}${friction})`;
  return `${drawn}${rule}`;
}

function table(
  title: string,
  lines: readonly TotalsLine[],
  flourGrams?: number,
  totalGrams?: number,
): string[] {
  const rows = lines.map(
    ({ name, fraction, grams }) =>
      [name, fraction === undefined ? '' : percent(fraction), grams === undefined ? '' : weight(grams)] as [
        string,
        string,
        string,
      ],
  );
  if (totalGrams !== undefined) rows.push(['together', '', weight(totalGrams)]);
  const nameWidth = Math.max(26, ...rows.map(([name]) => width(name)));
  const body = rows.map(([name, share, grams]) =>
    `${name}${' '.repeat(nameWidth - width(name))}${share.padStart(10)}${grams.padStart(12)}`.trimEnd(),
  );
  const heading = flourGrams ? `${title}, ${mass(flourGrams)} of flour` : title;
  return section(heading, body);
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length > 0
    ? ['', `  ${styled('underline', title)}`, ...lines.map((line) => `    ${line}`)]
    : [];
}

function width(text: string): number {
  return [...text].length;
}

/** As it is weighed, without knowing the scale: small weights with the places that a fine one shows. */
function weight(grams: number): string {
  const { figure, unit } = weighedFigure(grams, grams < 1 ? 0.01 : grams < 10 ? 0.1 : 1);
  return `${figure} ${unit}`;
}
