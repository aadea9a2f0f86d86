import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { withWater } from '../../calc/calibration/calibration-temperatures.ts';
import { type CurvePoint, doughCurve } from '../../facts/dough-curve.ts';
import { programmeCurve } from '../../facts/programme-curve.ts';
import { readingCelsius } from '../../facts/reading-celsius.ts';
import type { Scope } from '../../model/scope.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { figuresBeside } from '../build/before-after.ts';
import { doughsDrawing } from '../charts/doughs-drawing.ts';
import type { Page } from '../write/tables.ts';

/** A formula as it is laid over others: its programme as a curve, and its figures in words. */
export interface OverlaidFormula {
  /** Its name, and of which revision it is where it is of one. */
  readonly name: string;
  readonly uri: string;
  /** Of its header, counted from zero. */
  readonly line: number;
  readonly revision?: string;
  /** What is expected all along its programme; empty where nothing is. */
  readonly curve: readonly CurvePoint[];
  /** Why nothing is. */
  readonly reason?: string;
  /** What trials of it measured, off the curve by as much as they were off what is computed for their own day. */
  readonly measured: readonly { readonly minutes: number; readonly measuredCelsius: number }[];
  readonly figures: readonly { readonly key: string; readonly name: string; readonly text: string }[];
}

/** So many curves can be told apart in one chart. */
export const mostOverlaid = 6;

/** A formula ready to be laid over others; `revision` says of which it is. */
export function overlaidFormula(
  place: { readonly uri: string; readonly line: number; readonly revision?: string },
  analysis: Analysis,
  scope: Scope,
  speaker: Speaker,
): OverlaidFormula {
  const { resolved, doughMix } = analysis;
  const { text } = resolved.model.name;
  const { revision } = place;
  const curve = doughMix.known ? curveOf(doughMix.value) : [];
  return {
    ...place,
    name:
      revision === undefined ? text : speaker.say(message('overlay.at', { name: text, written: revision })),
    curve,
    measured: (programmeCurve(analysis, scope)?.readings ?? []).map((reading) => ({
      minutes: reading.minutes,
      measuredCelsius: readingCelsius(reading, curve),
    })),
    ...(doughMix.known ? {} : { reason: speaker.say(doughMix.reason) }),
    figures: figuresBeside([analysis], speaker).flatMap(({ key, name, texts: [figure] }) =>
      figure === undefined ? [] : [{ key, name, text: figure }],
    ),
  };
}

/** The course with the water that its table and its sheet tell to draw. */
function curveOf({ input, water, outcome }: MixAnalysis): readonly CurvePoint[] {
  const drawn = water.known ? withWater(input, water.value.effectiveCelsius) : input;
  return doughCurve(drawn, outcome.programmeMinutes);
}

/** Formulas laid over each other: one chart of their mixing, and one table of what it comes to. */
export function overlayPage(formulas: readonly OverlaidFormula[], speaker: Speaker): Page {
  const { say, language } = speaker;
  const drawing = doughsDrawing(
    formulas.map(({ name, curve, measured }) => ({ name, curve, readings: bandsOf(curve), measured })),
    {
      title: message('overlay.drawing'),
      description: (names) => message('overlay.drawing-told', { names }),
    },
    speaker,
  );
  const keys = new Map(
    formulas.flatMap(({ figures }) => figures.map(({ key, name }) => [key, name] as const)),
  );
  return {
    language,
    title: say(message('overlay.title', { names: formulas.map(({ name }) => name) })),
    facts: [],
    ...(drawing === undefined ? {} : { drawing }),
    tables: [
      {
        title: say(message('overlay.figures')),
        columns: [{ name: say(message('overlay.figure')) }, ...formulas.map(({ name }) => ({ name }))],
        rows: [...keys].map(([key, name]) => [
          name,
          ...formulas.map(({ figures }) => figures.find((one) => one.key === key)?.text ?? '–'),
        ]),
        notes: formulas.some(({ measured }) => measured.length > 0)
          ? [say(message('chart.readings-marked'))]
          : [],
      },
    ],
    tableHead: say(message('csv.table')),
    notes: formulas.flatMap(({ name, reason }) =>
      reason === undefined ? [] : [say(message('overlay.not-known', { name, sentence: reason }))],
    ),
  };
}

/** How uncertain a curve is at its end, where it matters. */
function bandsOf(curve: readonly CurvePoint[]): readonly CurvePoint[] {
  return curve.slice(-1);
}
