import { type Analysis, solutionOf } from '../analysis/analysis.ts';
import { flourMixOf } from '../analysis/flour-of-mix.ts';
import type { MixAnalysis } from '../analysis/mix-analysis.ts';
import type { SolvedSection } from '../calc/formula/formula-result.ts';
import type { Known } from '../calc/known.ts';
import type { MinutesBand } from '../calc/mixing/mixing.ts';
import type { TemperedWater } from '../calc/mixing/mixing-water.ts';
import type { Level } from '../rules/engine/finding.ts';
import type { Place } from '../text/span.ts';
import type { Message } from '../words/message.ts';
import { costTotals } from './cost-of.ts';
import { heatOf } from './heat-of.ts';
import { heatLabel } from './heat-words.ts';
import { holdsUp } from './holds-up.ts';
import { labelTotals } from './label-of.ts';
import { mixingOutlook } from './mixing-words.ts';
import type {
  FormulaTotals,
  TotalsFlourMix,
  TotalsHeat,
  TotalsLine,
  TotalsMixing,
  TotalsPart,
  TotalsWater,
} from './totals.ts';

/** A finding as totals take it: in its file, and not in words yet. */
export interface FoundInFile {
  readonly code: string;
  readonly level: Level;
  readonly message: Message;
  readonly place: Place;
}

/** The totals of a formula whose block begins at `firstLine`, as plain data; lines of findings count from one, as people do. */
export function totalsOf(
  file: string,
  analysis: Analysis,
  findings: readonly FoundInFile[],
  firstLine: number,
): FormulaTotals<Message> {
  const { solved, resolved } = analysis;
  const told = findings.map(({ code, level, place, message }) => ({
    code,
    level,
    line: place.line + 1,
    message,
  }));
  const blocked = findings.some((finding) => holdsUp(resolved.model.block, firstLine, finding));
  const totals: FormulaTotals<Message> = {
    file,
    formula: resolved.model.name.text,
    overall: [],
    parts: [],
    findings: told,
    resolved: solved !== undefined && solved.unsolved === undefined && !blocked,
  };
  if (solved === undefined) return totals;
  set(totals, 'flourGrams', solved.flourGrams);
  set(totals, 'doughGrams', solved.doughGrams);
  set(totals, 'enclosedGrams', solved.enclosedGrams);
  set(totals, 'bakedGrams', solved.bakedGrams);
  set(totals, 'pieces', solved.pieces);
  set(totals, 'pieceGrams', solved.pieceGrams);
  set(totals, 'hydration', solved.hydration);
  set(totals, 'effectiveHydration', solved.effectiveHydration);
  set(totals, 'prefermentedFlour', solved.prefermentedFlour);
  set(totals, 'saltFraction', solved.saltFraction);
  set(totals, 'flourMix', mixTotals(analysis));
  totals.overall = solved.overall.map((line) => lineOf(line.name, line.fraction, line.grams, line.role));
  totals.parts = partsOf(analysis);
  if (analysis.doughMix.known) {
    const mix = analysis.doughMix.value;
    if (mix.water.known) {
      totals.water = waterTotals(mix.water.value);
    }
    totals.heat = heatTotals(mix);
    totals.mixing = mixingOf(mix);
  }
  set(totals, 'label', labelTotals(analysis));
  set(totals, 'cost', costTotals(analysis));
  return totals;
}

function waterTotals({
  reach,
  waterCelsius,
  waterGrams,
  tapAssumed,
  tapCelsius,
  ice,
  iceCure,
  rule,
}: TemperedWater): TotalsWater {
  const told: TotalsWater = { reach, tapCelsius };
  if (waterCelsius !== undefined) told.celsius = waterCelsius;
  if (tapAssumed) told.tapAssumed = true;
  told.iceGrams = ice?.iceGrams ?? 0;
  told.tapGrams = ice?.tapGrams ?? waterGrams;
  if (iceCure !== undefined) told.withIce = iceCure;
  if (rule.known) {
    told.ruleOfThumbCelsius = rule.value.waterCelsius;
    told.frictionCelsius = rule.value.frictionCelsius;
  }
  return told;
}

function mixTotals(analysis: Analysis): TotalsFlourMix | undefined {
  const mix = flourMixOf(analysis);
  if (mix === undefined) return undefined;
  const { proteinAt14, ashOfDry, absorptionAt14 } = mix;
  const told: TotalsFlourMix = {};
  if (proteinAt14.known) told.proteinAt14PercentMoisture = proteinAt14.value;
  if (ashOfDry.known) told.ashOfDryMatter = ashOfDry.value;
  if (absorptionAt14.known) told.absorptionAt14PercentMoisture = absorptionAt14.value;
  return Object.keys(told).length === 0 ? undefined : told;
}

function set<K extends keyof FormulaTotals>(
  totals: FormulaTotals<Message>,
  key: K,
  value: FormulaTotals<Message>[K] | undefined,
): void {
  if (value !== undefined) totals[key] = value;
}

function lineOf(
  name: string,
  fraction: number | undefined,
  grams: number | undefined,
  role?: TotalsLine['role'],
): TotalsLine {
  return {
    name,
    ...(role === undefined ? {} : { role }),
    ...(fraction === undefined ? {} : { fraction }),
    ...(grams === undefined ? {} : { grams }),
  };
}

function partsOf(analysis: Analysis): TotalsPart[] {
  const solved = solutionOf(analysis);
  return solved.sections.map((section, index): TotalsPart => {
    const part: TotalsPart = { name: section.name, kind: writtenKind(analysis, section), lines: [] };
    if (section.enclosed) part.enclosed = true;
    if (index === 0) {
      const { finalMix } = solved;
      if (finalMix.flourGrams !== undefined) part.flourGrams = finalMix.flourGrams;
      if (finalMix.totalGrams !== undefined) part.totalGrams = finalMix.totalGrams;
      if (finalMix.flourGrams !== undefined && finalMix.flourGrams > 0 && finalMix.waterGrams !== undefined) {
        part.hydration = finalMix.waterGrams / finalMix.flourGrams;
      }
      // What the parts draw whole is not weighed again.
      part.lines = finalMix.lines
        .filter((line) => line.fractionOfFinalFlour !== 0 || line.grams === undefined)
        .map((line) =>
          lineOf(line.name, line.fractionOfFinalFlour, line.grams, line.kind === 'part' ? 'part' : line.role),
        );
      return part;
    }
    if (section.flourGrams !== undefined) part.flourGrams = section.flourGrams;
    if (section.totalGrams !== undefined) part.totalGrams = section.totalGrams;
    if (section.hydration !== undefined) part.hydration = section.hydration;
    part.lines = section.lines.map((line) =>
      lineOf(line.name, line.fraction, line.grams, line.part ? 'part' : line.role),
    );
    const { cultureGrams } = section;
    if (cultureGrams !== undefined && cultureGrams > 0)
      part.lines.push(lineOf('ripe culture', fractionOfFed(section, cultureGrams), cultureGrams, 'part'));
    return part;
  });
}

/** The word that the section is written with; of a formula that another takes, what it is there. */
function writtenKind(analysis: Analysis, section: SolvedSection): string {
  const model = analysis.resolved.model.sections.find((one) => one.id === section.id);
  return model === undefined || section.kind === 'dough' ? section.kind : model.kind;
}

/** Culture is written in percent of the flour that is fed. */
function fractionOfFed({ lines }: SolvedSection, cultureGrams: number): number | undefined {
  const fed = lines.find((line) => (line.fraction ?? 0) > 0 && (line.grams ?? 0) > 0);
  return fed === undefined ? undefined : (cultureGrams / fed.grams!) * fed.fraction!;
}

/** The heat with each line of its bill by its name. */
function heatTotals(mix: MixAnalysis): TotalsHeat<Message> {
  const { bill, ...heat } = heatOf(mix);
  const lines = bill.map(({ source, name, kilojoules, celsius }) => {
    const label = heatLabel(name === undefined ? { source } : { source, name });
    return { source, label, kilojoules, celsius };
  });
  return { ...heat, bill: lines };
}

function mixingOf(mix: MixAnalysis): TotalsMixing<Message> {
  const { outcome } = mix;
  const mixing: TotalsMixing<Message> = {
    outlook: [...mixingOutlook(mix)],
    curve: outcome.phaseEnds.map((end) => ({
      minutes: end.minutes,
      ...(end.celsius === undefined ? {} : { celsius: end.celsius }),
      ...(end.development === undefined ? {} : { development: end.development }),
      ...(end.stage === undefined ? {} : { stage: end.stage }),
    })),
  };
  const band = (
    key: 'developedAfterMinutes' | 'letDownAfterMinutes' | 'breakdownAfterMinutes',
    value: Known<MinutesBand, Message>,
  ): void => {
    if (value.known) mixing[key] = [value.value.low, value.value.high];
  };
  if (outcome.slowMinutes.known) mixing.slowMinutes = outcome.slowMinutes.value;
  band('developedAfterMinutes', outcome.developedAfter);
  band('letDownAfterMinutes', outcome.letDownAfter);
  band('breakdownAfterMinutes', outcome.breakdownAfter);
  if (outcome.development.known) mixing.development = outcome.development.value;
  if (outcome.stage.known) mixing.stage = outcome.stage.value;
  if (outcome.endCelsius.known) mixing.endCelsius = outcome.endCelsius.value;
  return mixing;
}
