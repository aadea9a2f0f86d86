import {
  billLines,
  columnsOf,
  differenceOf,
  type FormulaTotals,
  heatOutlook,
  type Level,
  type Message,
  message,
  padEndTo,
  type Speaker,
  type TotalsLine,
} from '../../core/index.ts';
import { levelStyles, styled } from './style.ts';
import { costLines, labelSections } from './totals-label-text.ts';

/** The totals of a formula for a baker to read in a terminal, the draft of its label if asked. What is not known is left out. */
export function totalsText(
  totals: FormulaTotals,
  speaker: Speaker,
  show: { readonly label?: boolean } = {},
): string {
  const { say } = speaker;
  const rows = facts(totals, speaker);
  const wide = Math.max(leastWidth, ...rows.map(([label]) => columnsOf(label) + 2));
  return [
    `${styled('bold', totals.formula)}  ${styled('gray', totals.file)}`,
    ...rows.map(([label, value]) => `  ${padEndTo(label, wide)}${value}`),
    ...table(message('command-totals.overall'), totals.overall, speaker, totals.flourGrams),
    ...totals.parts.flatMap((part) => {
      const { hydration: fraction } = part;
      const title = titleOf(part);
      const about =
        fraction === undefined ? title : message('command-totals.with-hydration', { title, fraction });
      return table(about, part.lines, speaker, part.flourGrams, part.totalGrams);
    }),
    ...section(say(message('command-totals.mixing')), totals.mixing?.outlook ?? []),
    ...section(say(message('command-totals.heat')), totals.heat ? heatLines(totals.heat, speaker) : []),
    ...section(say(message('command-totals.cost')), totals.cost ? costLines(totals.cost, speaker) : []),
    ...(show.label && totals.label
      ? labelSections(totals.label, speaker).flatMap(({ title, lines }) => section(title, lines))
      : []),
    ...section(
      say(message('command-totals.findings')),
      totals.findings.map((finding) => findingLine(finding, speaker)),
    ),
    '',
  ].join('\n');
}

function titleOf({ name: part, kind, enclosed }: FormulaTotals['parts'][number]): Message {
  if (kind === 'dough') return message('command-totals.into-bowl');
  return message(enclosed ? 'command-totals.part-folded' : 'command-totals.part', { part, section: kind });
}

const levels = {
  error: message('command-check.error'),
  warning: message('command-check.warning'),
  info: message('command-check.information'),
  hint: message('command-check.hint'),
} as const satisfies Record<Level, Message>;

function findingLine(finding: FormulaTotals['findings'][number], { say }: Speaker): string {
  const level = finding.level as Level;
  const where = say(message('command-totals.line', { number: finding.line }));
  return `${where}: ${styled(levelStyles[level], say(levels[level]))}: ${finding.message} ${styled('gray', `[${finding.code}]`)}`;
}

function heatLines(heat: NonNullable<FormulaTotals['heat']>, speaker: Speaker): string[] {
  const bill = billLines(heat.bill, speaker);
  const wide = Math.max(0, ...bill.map(({ label }) => columnsOf(label)));
  return [
    ...bill.map(({ label, celsius }) => `${padEndTo(label, wide)}${celsius.padStart(11)}`),
    ...(heat.comparison ? [speaker.say(differenceOf(heat.comparison))] : []),
    ...heatOutlook(heat).map(speaker.say),
  ];
}

/** The column of what a figure is, where no word in it is longer. */
const leastWidth = 20;

function facts(totals: FormulaTotals, speaker: Speaker): [label: string, value: string][] {
  const { flourGrams, hydration, effectiveHydration, water } = totals;
  const { say, mass, percent } = speaker;
  const rows: [Message, string | undefined][] = [
    [message('command-totals.makes'), makes(totals).map(say).join(', ') || undefined],
    [message('command-totals.flour'), flourGrams === undefined ? undefined : mass(flourGrams)],
    [
      message('command-totals.hydration'),
      hydration === undefined
        ? undefined
        : effectiveHydration === undefined
          ? percent(hydration)
          : say(
              message('command-totals.effective', {
                fraction: hydration,
                laterFraction: effectiveHydration,
              }),
            ),
    ],
    [message('command-totals.salt'), totals.saltFraction ? percent(totals.saltFraction) : undefined],
    [
      message('command-totals.prefermented-flour'),
      totals.prefermentedFlour ? percent(totals.prefermentedFlour) : undefined,
    ],
    [message('command-totals.flour-mix'), totals.flourMix && mixOf(totals.flourMix).map(say).join('; ')],
    [message('command-totals.water'), water && say(waterOf(water))],
  ];
  return rows.flatMap(([label, value]): [string, string][] =>
    value === undefined ? [] : [[say(label), value]],
  );
}

function makes({ pieces, pieceGrams, doughGrams, enclosedGrams, bakedGrams }: FormulaTotals): Message[] {
  const said: Message[] = [];
  if (pieces !== undefined && pieceGrams !== undefined)
    said.push(message('command-totals.pieces-of', { count: pieces, grams: pieceGrams }));
  if (doughGrams !== undefined)
    said.push(
      enclosedGrams === undefined
        ? message('command-totals.of-dough', { doughGrams })
        : message('command-totals.of-dough-folded', { doughGrams, grams: enclosedGrams }),
    );
  if (bakedGrams !== undefined) said.push(message('command-totals.baked', { bakedGrams }));
  return said;
}

function mixOf(mix: NonNullable<FormulaTotals['flourMix']>): Message[] {
  const { proteinAt14PercentMoisture: protein, absorptionAt14PercentMoisture: absorption } = mix;
  const parts = [
    ...(protein === undefined ? [] : [message('command-totals.protein', { fraction: protein })]),
    ...(absorption === undefined ? [] : [message('command-totals.absorption', { fraction: absorption })]),
  ];
  const ash = mix.ashOfDryMatter;
  return [
    ...(parts.length === 0 ? [] : [message('command-totals.at-moisture', { parts })]),
    ...(ash === undefined ? [] : [message('command-totals.ash', { fraction: ash })]),
  ];
}

function waterOf(water: NonNullable<FormulaTotals['water']>): Message {
  const { ruleOfThumbCelsius: celsius, frictionCelsius: apartCelsius } = water;
  const drawn = drawnWater(water);
  if (celsius === undefined) return drawn;
  return apartCelsius === undefined
    ? message('command-totals.water-rule', { water: drawn, celsius })
    : message('command-totals.water-rule-friction', { water: drawn, celsius, apartCelsius });
}

function drawnWater(water: NonNullable<FormulaTotals['water']>): Message {
  const { celsius, iceGrams, tapGrams, tapCelsius, tapAssumed, reach } = water;
  if (celsius !== undefined && reach !== 'tap too warm')
    return message('command-totals.water-at', { waterCelsius: celsius });
  const fromTap = message(
    tapAssumed ? 'command-totals.water-from-tap-assumed' : 'command-totals.water-from-tap',
    { tapCelsius },
  );
  return iceGrams && tapGrams !== undefined
    ? message('command-totals.water-with-ice', { iceGrams, tapGrams, water: fromTap })
    : fromTap;
}

function table(
  title: Message,
  lines: readonly TotalsLine[],
  speaker: Speaker,
  flourGrams?: number,
  totalGrams?: number,
): string[] {
  const { say, percent } = speaker;
  const weight = (grams: number | undefined): string => (grams === undefined ? '' : weighed(grams, speaker));
  const rows = lines.map(({ name, fraction, grams }): [string, string, string] => [
    name,
    fraction === undefined ? '' : percent(fraction),
    weight(grams),
  ]);
  if (totalGrams !== undefined) rows.push([say(message('command-totals.together')), '', weight(totalGrams)]);
  const nameWidth = Math.max(26, ...rows.map(([name]) => columnsOf(name)));
  const body = rows.map(([name, share, grams]) =>
    `${padEndTo(name, nameWidth)}${share.padStart(10)}${grams.padStart(12)}`.trimEnd(),
  );
  const heading = flourGrams ? message('command-totals.with-flour', { title, grams: flourGrams }) : title;
  return section(say(heading), body);
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length > 0
    ? ['', `  ${styled('underline', title)}`, ...lines.map((line) => `    ${line}`)]
    : [];
}

/** As it is weighed, without knowing the scale: small weights with the places that a fine one shows. */
function weighed(grams: number, speaker: Speaker): string {
  const { figure, unit } = speaker.weighed(grams, grams < 1 ? 0.01 : grams < 10 ? 0.1 : 1);
  return `${figure} ${unit}`;
}
