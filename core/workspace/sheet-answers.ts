import type { Analysis } from '../analysis/analysis.ts';
import type { FormulaTotals } from '../facts/totals.ts';
import { totalsOf } from '../facts/totals-of.ts';
import { wordedTotals } from '../facts/worded-totals.ts';
import type { ActionContext } from '../features/actions/action.ts';
import { taughtMixer } from '../features/actions/teach-mixer.ts';
import { type OverviewEntry, overviewOf } from '../features/outline/overview.ts';
import { isVariant } from '../model/variant.ts';
import { checkBlock } from '../rules/engine/check.ts';
import { mixerCanBeCalibrated } from '../rules/trials/mixer-can-be-calibrated.ts';
import { type MapOptions, type MapView, mapView } from '../sheet/build/map-view.ts';
import { sheetOf } from '../sheet/build/sheet.ts';
import type { SheetDocument } from '../sheet/build/sheet-document.ts';
import type { SheetOptions } from '../sheet/build/sheet-options.ts';
import { type ExperimentView, experimentView } from '../sheet/experiment/experiment-sheet.ts';
import { type OverlaidFormula, overlaidFormula } from '../sheet/overlay/overlay.ts';
import { planView } from '../sheet/plan/plan-sheet.ts';
import type { PlanView } from '../sheet/plan/plan-view.ts';
import { blockAt } from '../syntax/line-place.ts';
import type { FileEdit } from '../text/edits.ts';
import { foldName } from '../text/names.ts';
import { finish, type Steps } from '../text/steps.ts';
import { type Refused, saidAnswer } from '../words/refusal.ts';
import { findingsInFile, placedInFile } from './file-findings.ts';
import { notThere, type PanelChange, panelEdits } from './panel-edits.ts';
import { actionsAround, findingsOfFile, formulaWanted, type Present, readFile } from './present.ts';
import { type ReadingOfExperiment, testedEdits } from './tested-edits.ts';
import { isWhatIf, triedFormula } from './what-if.ts';
import { whatIfFields } from './what-if-fields.ts';

/** Sheets, plans and figures of whole formulas. */
export interface SheetAnswers {
  /** The batch sheet of the formula at a line, or of that name; what is asked for is tried and changes nothing. */
  sheet(uri: string, line: number, options: SheetOptions, formula?: string): SheetDocument | undefined;
  /** The map of the gap of the formula at a line, or of that name; what is asked for is tried and changes nothing. */
  map(uri: string, line: number, options: MapOptions, formula?: string): MapView | undefined;
  /** The edits that a batch sheet asks for, or a sentence that says why there are none. */
  panelEdits(uri: string, line: number, change: PanelChange, formula?: string): readonly FileEdit[] | Refused;
  totals(uri: string): readonly FormulaTotals[];
  /** The plans of a file, worked out. */
  plans(uri: string): readonly PlanView[];
  /** The experiments of a file, worked out. */
  experiments(uri: string): readonly ExperimentView[];
  /** A formula of a file by its name, ready to be laid over others; of another text of the file where one is given. */
  overlaid(uri: string, formula: string, other?: OtherText): OverlaidFormula | undefined;
  /** The experiment that a line stands in. */
  experimentNameAt(uri: string, line: number): string | undefined;
  /** The edits that log a reading of a dough of an experiment, or a sentence that says why there are none. */
  logTested(uri: string, reading: ReadingOfExperiment): readonly FileEdit[] | Refused;
  /** Bakeries, formulas, flours, mixers and plans of all files. */
  overview(): readonly OverviewEntry[];
  /** The same, a file at a time. */
  overviewInSteps(): Steps<readonly OverviewEntry[]>;
}

export function createSheetAnswers(present: Present): SheetAnswers {
  return {
    sheet: (...asked) => sheet(present, ...asked),
    map: (uri, line, options, formula) => {
      const found = readFile(present, uri);
      const at = found === undefined ? undefined : formulaWanted(found.source, line, formula);
      const analysis = at === undefined ? undefined : found?.view.analysisOf(uri, at.block);
      if (found === undefined || at === undefined || analysis === undefined) return undefined;
      const formulaThere = { uri, firstLine: at.firstLine, analysis, scope: found.view.scopeOf(uri) };
      return mapView(formulaThere, options, present.speaker());
    },
    panelEdits: (uri, line, change, formula) => {
      const found = readFile(present, uri);
      const at = found === undefined ? undefined : formulaWanted(found.source, line, formula);
      const speaker = present.speaker();
      if (found === undefined || at === undefined) return saidAnswer<readonly FileEdit[]>(notThere, speaker);
      const edits = panelEdits(
        {
          ...{ uri, block: at.block, firstLine: at.firstLine },
          analysis: found.view.analysisOf(uri, at.block),
          scope: found.view.scopeOf(uri),
          sourceOf: (other) => found.view.read(other)?.source,
          context: (line = at.firstLine) => contextAt(present, uri, line),
        },
        change,
      );
      return saidAnswer(edits, speaker);
    },
    totals: (uri) => totals(present, uri),
    plans: (uri) => {
      const found = readFile(present, uri);
      if (found === undefined) return [];
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        const plan = found.view.planOf(uri, block);
        return plan === undefined ? [] : [planView(uri, firstLine, plan, present.speaker())];
      });
    },
    experiments: (uri) => {
      const found = readFile(present, uri);
      if (found === undefined) return [];
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        const made = found.view.experimentOf(uri, block);
        const scope = found.view.scopeOf(uri);
        return made === undefined ? [] : [experimentView(uri, firstLine, made, scope, present.speaker())];
      });
    },
    overlaid: (uri, formula, other) => overlaid(present, uri, formula, other),
    experimentNameAt: (uri, line) => {
      const source = readFile(present, uri)?.source;
      const top = source === undefined ? undefined : blockAt(source, line)?.block.top;
      return top?.kind === 'experiment' ? top.header.name?.text : undefined;
    },
    logTested: (uri, reading) => saidAnswer(testedEdits(present, uri, reading), present.speaker()),
    overview: () => finish(overview(present)),
    overviewInSteps: () => overview(present),
  };
}

/** A file as a revision has it. */
export interface OtherText {
  readonly text?: string;
  /** What it is called: `the last commit`. */
  readonly revision: string;
}

function overlaid(
  present: Present,
  uri: string,
  formula: string,
  other?: OtherText,
): OverlaidFormula | undefined {
  const now = present.view();
  const view = other?.text === undefined ? now : now.with(uri, other.text);
  const wanted = foldName(formula);
  const placed = view
    .read(uri)
    ?.source.blocks.find(
      ({ block: { top } }) => top?.kind === 'formula' && top.header.name?.folded === wanted,
    );
  const analysis = placed === undefined ? undefined : view.analysisOf(uri, placed.block);
  if (placed === undefined || analysis === undefined) return undefined;
  const revision = other === undefined ? {} : { revision: other.revision };
  const place = { uri, line: placed.firstLine, ...revision };
  return overlaidFormula(place, analysis, view.scopeOf(uri), present.speaker());
}

function sheet(
  present: Present,
  uri: string,
  line: number,
  asked: SheetOptions,
  formula?: string,
): SheetDocument | undefined {
  const found = readFile(present, uri);
  if (found === undefined) return undefined;
  const { source, view } = found;
  const at = formulaWanted(source, line, formula);
  const inFile = at === undefined ? undefined : view.analysisOf(uri, at.block);
  if (at === undefined || inFile === undefined) return undefined;
  const { block, firstLine } = at;
  const scope = view.scopeOf(uri);
  const speaker = present.speaker();
  const context = contextAt(present, uri, firstLine);
  const tried =
    context === undefined || !isWhatIf(asked) ? undefined : triedFormula(context, asked.whatIf ?? {});
  const fields = context === undefined ? undefined : whatIfFields(context, speaker, tried?.analysis);
  const isInside = (other: number): boolean => other >= firstLine && other < firstLine + block.lines.length;
  const findingsOf = (analysis: Analysis) => {
    if (analysis === inFile) return findingsOfFile(present, uri).filter(({ place }) => isInside(place.line));
    const checked = checkBlock({ uri, block: tried?.block ?? block, scope, analysis });
    const blocks = [{ ...at, block: tried?.block ?? block }];
    return findingsInFile(uri, { ...source, blocks }, () => checked, view, speaker);
  };
  return sheetOf({
    ...{ uri, firstLine, inFile, scope, asked, findingsOf, speaker },
    taughtAt: (line) => taughtAt(present, uri, line),
    scaleReading: present.settings().scaleReading,
    analysis: tried?.analysis ?? inFile,
    ...(tried === undefined ? {} : { notWritten: tried.notDone }),
    ...(fields === undefined ? {} : { whatIf: fields }),
  });
}

/** The mixer that the trial at a line can teach, by what was found at the mixer already. */
function taughtAt(present: Present, uri: string, line: number): string | undefined {
  const context = contextAt(present, uri, line);
  const mixer = context === undefined || isVariant(context.block) ? undefined : taughtMixer(context);
  if (mixer === undefined) return undefined;
  const { findings } = present.view().findingsOf(mixer.uri, mixer.block);
  return findings.some(({ code }) => code === mixerCanBeCalibrated.code) ? mixer.name.text : undefined;
}

/** What an action at a line, such as the header of a formula, may look at. */
function contextAt(present: Present, uri: string, line: number): ActionContext | undefined {
  return actionsAround(present, uri, { line, start: 0, endLine: line, end: 0 });
}

function totals(present: Present, uri: string): readonly FormulaTotals[] {
  const found = readFile(present, uri);
  if (found === undefined) return [];
  const { source, view } = found;
  // Once for the file, and in the order of its lines: asked for anew at each formula it would cost their square.
  const all = placedInFile(uri, source, (block) => view.findingsOf(uri, block), view);
  const isAbove = (index: number, line: number): boolean =>
    (all[index]?.place.line ?? Number.POSITIVE_INFINITY) < line;
  let next = 0;
  return source.blocks.flatMap(({ block, firstLine }) => {
    while (isAbove(next, firstLine)) next++;
    const from = next;
    while (isAbove(next, firstLine + block.lines.length)) next++;
    const analysis = view.analysisOf(uri, block);
    return analysis === undefined
      ? []
      : [wordedTotals(totalsOf(uri, analysis, all.slice(from, next), firstLine), present.speaker())];
  });
}

function* overview(present: Present): Steps<readonly OverviewEntry[]> {
  const asked = present.view();
  const speaker = present.speaker();
  const entries: OverviewEntry[] = [];
  for (const uri of asked.uris()) {
    const source = asked.read(uri)?.source;
    if (source !== undefined)
      entries.push(...overviewOf(uri, source, (block) => asked.totalsOf(uri, block), speaker));
    yield;
  }
  return entries;
}
