import type { Analysis } from '../analysis/analysis.ts';
import type { MixAnalysis } from '../analysis/mixing.ts';
import type { Finding } from '../features/answers.ts';
import { effectiveDiffers, makesWords } from '../features/formula-words.ts';
import { mixingOutlook, waterWords } from '../features/mixing-words.ts';
import { degrees, duration, mass, percent, trimmed } from '../text/figures.ts';
import { blocksOf } from './blocks.ts';
import { cautionsOf } from './cautions.ts';
import { sized } from './sized.ts';
import type {
  SheetFact,
  SheetMixing,
  SheetPhase,
  SheetSize,
  SheetStep,
  SheetView,
  SizeRequest,
} from './view.ts';

/** Lines of `findings` and of the view are counted in the file; those of the analysis in its block. */
export interface SheetInput {
  readonly uri: string;
  readonly firstLine: number;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  readonly size: SizeRequest;
}

/** The batch sheet of a formula at a size, with every figure in the words it is shown in. */
export function sheetOf(input: SheetInput): SheetView {
  const analysis = sized(input.analysis, input.size);
  const { solved, resolved } = analysis;
  const base = {
    formula: resolved.model.name.text,
    uri: input.uri,
    line: input.firstLine,
    findings: input.findings.map(({ place, level, code, message }) => ({
      line: place.line,
      level,
      code,
      message,
    })),
  };
  const size = sizeOf(analysis, input.size);
  if (solved === undefined) {
    return { ...base, state: 'empty', makes: [], facts: [], size, blocks: [], steps: [], cautions: [] };
  }
  const mix = analysis.doughMix.known ? analysis.doughMix.value : undefined;
  const water = mix === undefined ? undefined : waterWords(mix);
  const waterLine = waterLineOf(analysis, input.firstLine);
  const held = heldBy(input, analysis);
  return {
    ...base,
    state: held === undefined ? 'ready' : 'held',
    ...(held === undefined ? {} : { heldBy: held }),
    makes: makesWords(solved),
    facts: factsOf(analysis, input.firstLine),
    size,
    blocks: blocksOf(analysis, mix, water?.text, input.firstLine),
    ...(mix?.water.known && water !== undefined
      ? {
          water: {
            celsius: mix.water.value.waterCelsius,
            text: water.text,
            detail: water.detail,
            ...(waterLine === undefined ? {} : { line: waterLine }),
          },
        }
      : {}),
    ...(mix === undefined ? {} : { mixing: mixingOf(mix, analysis, input.firstLine) }),
    steps: stepsOf(analysis, input.firstLine),
    cautions: cautionsOf(analysis),
  };
}

/** The line that holds the sheet up: the first error, or the first line whose weight is not known. */
function heldBy(input: SheetInput, analysis: Analysis): { line: number; message: string } | undefined {
  const error = input.findings.find((finding) => finding.level === 'error');
  if (error !== undefined) return { line: error.place.line, message: error.message };
  const missing = analysis.solved?.finalMix.lines.find(
    (line) => line.grams === undefined && line.unsolved !== undefined,
  );
  if (missing === undefined) return undefined;
  const line =
    missing.lineId === undefined
      ? input.firstLine
      : input.firstLine + Number(/(\d+)$/.exec(missing.lineId)?.[1] ?? 0);
  return { line, message: `The weight of “${missing.name}” is not known yet.` };
}

function sizeOf(analysis: Analysis, asked: SizeRequest): SheetSize {
  const { solved } = analysis;
  return {
    asked,
    ...(solved?.pieces === undefined ? {} : { pieces: solved.pieces }),
    ...(solved?.yieldDoughGrams === undefined ? {} : { doughGrams: solved.yieldDoughGrams }),
    ...(solved?.flourGrams === undefined ? {} : { flourGrams: solved.flourGrams }),
    ...(solved?.bakedGrams === undefined ? {} : { bakedGrams: solved.bakedGrams }),
  };
}

function factsOf(analysis: Analysis, firstLine: number): SheetFact[] {
  const solved = analysis.solved!;
  const facts: SheetFact[] = [];
  const waterLine = waterLineOf(analysis, firstLine);
  if (solved.hydration !== undefined) {
    const effective = effectiveDiffers(solved)
      ? { note: `effective ${percent(solved.effectiveHydration!)}` }
      : {};
    facts.push({
      key: 'hydration',
      label: 'Hydration',
      value: percent(solved.hydration),
      ...effective,
      ...(waterLine === undefined ? {} : { line: waterLine }),
    });
  }
  const roleLine = (role: string): number | undefined => {
    const line = analysis.solved!.sections[0]?.lines.find((one) => one.role === role);
    return line === undefined ? undefined : firstLine + Number(line.id.slice(1));
  };
  if (solved.saltFraction !== undefined && solved.saltFraction > 0) {
    const line = roleLine('salt');
    facts.push({
      key: 'salt',
      label: 'Salt',
      value: percent(solved.saltFraction),
      ...(line === undefined ? {} : { line }),
    });
  }
  if (solved.prefermentedFlour !== undefined && solved.prefermentedFlour > 0) {
    facts.push({
      key: 'prefermented',
      label: 'Prefermented flour',
      value: percent(solved.prefermentedFlour),
    });
  }
  if (solved.flourGrams !== undefined)
    facts.push({ key: 'flour', label: 'Flour in all', value: mass(solved.flourGrams) });
  const celsius = analysis.resolved.doughCelsius;
  if (celsius !== undefined) {
    const line = analysis.resolved.model.said.get('dough temperature')?.[0]?.line;
    facts.push({
      key: 'dough temperature',
      label: 'Dough temperature',
      value: degrees(celsius),
      ...(line === undefined ? {} : { line: firstLine + line }),
    });
  }
  return facts;
}

function waterLineOf(analysis: Analysis, firstLine: number): number | undefined {
  const line = analysis.solved?.sections[0]?.lines.find((one) => one.role === 'water');
  return line === undefined ? undefined : firstLine + Number(line.id.slice(1));
}

function mixingOf(mix: MixAnalysis, analysis: Analysis, firstLine: number): SheetMixing {
  const model = analysis.resolved.model.mixes[mix.index]!;
  let before = 0;
  const phases: SheetPhase[] = [];
  for (const end of mix.outcome.phaseEnds) {
    const line = mix.phaseLines[end.phase];
    const phase = mix.input.phases[end.phase];
    if (line === undefined || phase === undefined || 'portions' in phase) continue;
    const label = phase.kind === 'speed' ? `speed ${phase.number}` : phase.kind;
    phases.push({
      line: firstLine + line,
      label,
      minutes: end.minutes - before,
      endMinute: Number(trimmed(end.minutes, 1)),
      ...(end.celsius === undefined ? {} : { celsius: degrees(end.celsius) }),
      ...(end.stage === undefined ? {} : { stage: end.stage }),
    });
    before = end.minutes;
  }
  return {
    line: firstLine + model.headerLine,
    mixer: mix.mixer.name,
    total: duration(mix.outcome.programmeMinutes * 60),
    outlook: mixingOutlook(mix),
    phases,
  };
}

function stepsOf(analysis: Analysis, firstLine: number): SheetStep[] {
  return analysis.resolved.model.processes.flatMap((process) =>
    process.steps.map(({ line, step }): SheetStep => {
      const parts = [step.words.text];
      if (step.seconds !== undefined) parts.push(duration(step.seconds));
      if (step.celsius !== undefined) parts.push(`at ${degrees(step.celsius)}`);
      const text = [parts.join(' '), ...step.remarks].join(', ');
      return {
        line: firstLine + line,
        text: process.header.part === undefined ? text : `${process.header.part.text}: ${text}`,
      };
    }),
  );
}
