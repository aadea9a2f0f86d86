import type { Analysis } from '../analysis/analysis.ts';
import { flourMixOf } from '../analysis/flour-mix.ts';
import type { SolvedFormula } from '../calc/formula-result.ts';
import { figure, mass, percent } from '../text/figures.ts';

/** What a formula makes, in words: `24 pieces of 880 g`, `21.4 kg in the bowl`. */
export function makesWords(solved: SolvedFormula): string[] {
  const said: string[] = [];
  if (solved.pieces !== undefined && solved.pieceGrams !== undefined)
    said.push(`${count(solved.pieces)} of ${mass(solved.pieceGrams)}`);
  if (solved.doughGrams !== undefined) said.push(`${mass(solved.doughGrams)} in the bowl`);
  if (solved.bakedGrams !== undefined) said.push(`${mass(solved.bakedGrams)} baked`);
  if (solved.assumedScale) said.push('per 1 kg of flour, as no yield is written');
  return said;
}

function count(pieces: number): string {
  return pieces === 1 ? '1 piece' : `${figure(pieces, 1)} pieces`;
}

/** The totals of a formula in one short line, for a header's hint and the status bar. */
export function shortTotals(analysis: Analysis): string | undefined {
  const { solved } = analysis;
  if (solved === undefined) return undefined;
  const parts: string[] = [];
  if (solved.hydration !== undefined) parts.push(`${percent(solved.hydration)} hydration`);
  if (solved.doughGrams !== undefined) parts.push(`${mass(solved.doughGrams)} dough`);
  return parts.length === 0 ? undefined : parts.join(' · ');
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
export function totalsMarkdown(analysis: Analysis): string[] {
  const { solved } = analysis;
  if (solved === undefined) return ['No ingredient is written yet.'];
  const lines: string[] = [];
  const makes = makesWords(solved);
  if (makes.length > 0) lines.push(`Makes ${makes.join(', ')}.`);
  const facts: string[] = [];
  if (solved.hydration !== undefined) facts.push(`hydration **${percent(solved.hydration)}**`);
  if (solved.effectiveHydration !== undefined) {
    const unsure =
      solved.waterUnknown.length > 0
        ? `, not counting ${solved.waterUnknown.map(escapeMarkdown).join(', ')}`
        : '';
    facts.push(`effective ${percent(solved.effectiveHydration)}${unsure}`);
  }
  if (solved.saltFraction !== undefined && solved.saltFraction > 0)
    facts.push(`salt ${percent(solved.saltFraction)}`);
  if (solved.prefermentedFlour !== undefined && solved.prefermentedFlour > 0)
    facts.push(`prefermented flour ${percent(solved.prefermentedFlour)}`);
  if (solved.flourGrams !== undefined) facts.push(`flour ${mass(solved.flourGrams)}`);
  if (facts.length > 0) lines.push(facts.join(' · '));
  const mix = flourMixWords(analysis);
  if (mix !== undefined) lines.push(mix);
  const rows = solved.overall.filter((line) => line.fraction !== undefined || line.grams !== undefined);
  if (rows.length > 0) {
    const cells = rows.map(
      (line) =>
        `| ${escapeMarkdown(line.name)} | ${line.fraction === undefined ? '–' : percent(line.fraction)} | ${line.grams === undefined ? '–' : mass(line.grams)} |`,
    );
    lines.push(['| all in all | of flour | weight |', '| :-- | --: | --: |', ...cells].join('\n'));
  }
  return lines;
}

/** What the flours are together, each figure with where it comes from; `undefined` where nothing is known of them. */
function flourMixWords(analysis: Analysis): string | undefined {
  const mix = flourMixOf(analysis);
  if (mix === undefined) return undefined;
  const { proteinAt14, ashOfDry, absorptionAt14 } = mix;
  const said = [
    ...(proteinAt14.known ? [`protein ${percent(proteinAt14.value)} _(${proteinAt14.provenance})_`] : []),
    ...(absorptionAt14.known
      ? [`absorption ${percent(absorptionAt14.value)} _(${absorptionAt14.provenance})_`]
      : []),
  ].join(' and ');
  const ash = ashOfDry.known ? `ash ${percent(ashOfDry.value)} of dry matter _(${ashOfDry.provenance})_` : '';
  const parts = [said === '' ? '' : `${said} at 14 % moisture`, ash].filter((part) => part !== '');
  return parts.length === 0 ? undefined : `flour mix: ${parts.join(', ')}`;
}

/** A name from a file, safe inside Markdown. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~&-]/g, '\\$&').replace(/[\r\n]+/g, ' ');
}
