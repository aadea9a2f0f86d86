import type { Analysis } from '../analysis/analysis.ts';
import { flourMixOf } from '../analysis/flour-of-mix.ts';
import type { SolvedFormula } from '../calc/formula/formula-result.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { flourFigure } from './flour-words.ts';

/** Without a yield the weights are those for so much flour, grams. */
export const assumedFlourGrams = 1000;

/** What a formula makes: `24 pieces of 880 g`, `21.4 kg in the bowl`. */
export function makesMessages(solved: SolvedFormula): Message[] {
  const said: Message[] = [];
  const { pieces, pieceGrams, doughGrams, bakedGrams } = solved;
  if (pieces !== undefined && pieceGrams !== undefined)
    said.push(message('makes.pieces', { count: Math.round(pieces * 10) / 10, grams: pieceGrams }));
  if (doughGrams !== undefined) said.push(message('makes.in-bowl', { doughGrams }));
  if (bakedGrams !== undefined) said.push(message('makes.baked', { bakedGrams }));
  if (solved.assumedScale) said.push(message('makes.no-yield', { grams: assumedFlourGrams }));
  return said;
}

/** The same in a sentence; undefined where nothing is known of it. */
export function makesSentence(solved: SolvedFormula): Message | undefined {
  const parts = makesMessages(solved);
  return parts.length === 0 ? undefined : message('makes.all', { parts });
}

/** The totals of a formula in one short line, for the hint of its header and for lists. */
export function shortTotals({ solved }: Analysis): Message | undefined {
  const parts = solved === undefined ? [] : shortFacts(solved);
  return parts.length === 0 ? undefined : message('totals.line', { parts });
}

/** The same in figures alone, for a list that is no wider than a hand: `67% · 25.2 kg`. */
export function briefTotals({ solved }: Analysis): Message | undefined {
  const { hydration, doughGrams } = solved ?? {};
  const parts = [
    ...(hydration === undefined ? [] : [message('overview.hydration', { fraction: hydration })]),
    ...(doughGrams === undefined ? [] : [message('overview.dough', { doughGrams })]),
  ];
  return parts.length === 0 ? undefined : message('totals.line', { parts });
}

/** What that line holds. */
export function shortFacts({ hydration, doughGrams }: SolvedFormula): Message[] {
  return [
    ...(hydration === undefined ? [] : [message('totals.hydration', { fraction: hydration })]),
    ...(doughGrams === undefined ? [] : [message('totals.dough', { doughGrams })]),
  ];
}

/** Whether effective hydration says something the plain one does not: by half a point or more. */
export function effectiveDiffers(solved: SolvedFormula): boolean {
  const { hydration, effectiveHydration } = solved;
  return (
    hydration !== undefined &&
    effectiveHydration !== undefined &&
    Math.abs(hydration - effectiveHydration) >= 0.005
  );
}

/** The totals of a formula as lines of Markdown. */
export function totalsMarkdown(analysis: Analysis, speaker: Speaker): string[] {
  const { solved } = analysis;
  if (solved === undefined) return [speaker.say(message('totals.no-line'))];
  const facts = totalsFacts(solved);
  const said = [
    makesSentence(solved),
    facts.length === 0 ? undefined : message('totals.line', { parts: facts }),
    flourMixMessage(analysis),
  ];
  const lines = said.flatMap((one) => (one === undefined ? [] : [speaker.say(one)]));
  const rows = solved.overall.filter((line) => line.fraction !== undefined || line.grams !== undefined);
  if (rows.length > 0) {
    const cells = rows.map(({ name, fraction, grams }) => {
      const share = fraction === undefined ? '–' : speaker.percent(fraction);
      return `| ${escapeMarkdown(name)} | ${share} | ${grams === undefined ? '–' : speaker.mass(grams)} |`;
    });
    const heads = [message('totals.head'), message('totals.head-share'), message('totals.head-weight')];
    lines.push([`| ${heads.map(speaker.say).join(' | ')} |`, '| :-- | --: | --: |', ...cells].join('\n'));
  }
  return lines;
}

function totalsFacts(solved: SolvedFormula): Message[] {
  const { hydration, effectiveHydration, waterUnknown, saltFraction, prefermentedFlour, flourGrams } = solved;
  const facts: Message[] = [];
  if (hydration !== undefined) facts.push(message('totals.hydration-fact', { fraction: hydration }));
  if (effectiveHydration !== undefined) {
    const fraction = effectiveHydration;
    const names = waterUnknown.map(escapeMarkdown);
    facts.push(
      names.length === 0
        ? message('totals.effective', { fraction })
        : message('totals.effective-without', { fraction, names }),
    );
  }
  if (saltFraction !== undefined && saltFraction > 0)
    facts.push(message('totals.salt', { fraction: saltFraction }));
  if (prefermentedFlour !== undefined && prefermentedFlour > 0)
    facts.push(message('totals.prefermented-fact', { fraction: prefermentedFlour }));
  if (flourGrams !== undefined) facts.push(message('totals.flour-fact', { grams: flourGrams }));
  return facts;
}

/** What the flours are together, each figure with where it comes from; `undefined` where nothing is known of them. */
function flourMixMessage(analysis: Analysis): Message | undefined {
  const mix = flourMixOf(analysis);
  if (mix === undefined) return undefined;
  const parts = [
    flourFigure('protein', mix.proteinAt14),
    flourFigure('absorption', mix.absorptionAt14),
    flourFigure('ash', mix.ashOfDry),
  ].filter((one) => one !== undefined);
  return parts.length === 0 ? undefined : message('totals.flour-mix', { parts });
}

/** A name from a file, safe inside Markdown. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~&-]/g, '\\$&').replace(/[\r\n]+/g, ' ');
}
