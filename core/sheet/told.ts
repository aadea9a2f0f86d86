import { inMixer } from '../features/mixing-words.ts';
import { type Display, plainDisplay, wordedText } from '../text/display.ts';
import { duration } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import { type FindingsAt, findingsByPlace, findingWords, type SheetPlace } from './places.ts';
import type {
  SheetBlock,
  SheetFact,
  SheetFigure,
  SheetMoment,
  SheetPhase,
  SheetRow,
  SheetView,
} from './view.ts';

/** What all written forms of a sheet say in the same words. */
export interface Told {
  readonly view: SheetView;
  /** The moments of the clock; none where all there is is that it is mixed. */
  readonly moments: readonly SheetMoment[];
  /** What was found at a place, in sentences. */
  findings(place: SheetPlace): readonly string[];
  /** Below the heading: what holds the sheet up, what could not be done, what was found at nothing on the sheet. */
  readonly lead: readonly string[];
  when(moment: SheetMoment): string;
  lasts(seconds: number | undefined): string;
}

/** `display` is that of the view, whose figures are written out already. */
export function toldOf(view: SheetView, display: Display = plainDisplay): Told {
  const at: FindingsAt = findingsByPlace(view);
  const time = (seconds: number): string => wordedText(duration(seconds), display);
  const { heldBy } = view;
  const { asked, moments } = view.timeline;
  return {
    view,
    moments: asked === undefined && moments.every(({ kind }) => kind === 'mix') ? [] : moments,
    findings: (place) => at(place).map((finding) => findingWords(finding, place === 'heading')),
    lead: [
      ...(view.tried ? ['Tried for today; the file says otherwise.'] : []),
      ...(view.state === 'empty' ? ['Nothing can be weighed yet: the formula has no ingredients.'] : []),
      ...view.notDone,
      // Where it is a finding as well, it stands at its thing.
      ...(heldBy === undefined || view.findings.some(({ message }) => message === heldBy.message)
        ? []
        : [`Line ${heldBy.line + 1} holds this sheet up: ${heldBy.message}`]),
      ...at('heading').map((finding) => findingWords(finding, true)),
    ],
    when: ({ clock, startSeconds }) => {
      if (clock !== undefined) return clock.words;
      if (startSeconds < 0) return `${time(-startSeconds)} before`;
      return startSeconds === 0 ? 'at the start' : `after ${time(startSeconds)}`;
    },
    lasts: (seconds) => (seconds === undefined ? '' : time(seconds)),
  };
}

/** `9050 g`, with a blank that keeps the two on one line. */
export function figureWords(figure: SheetFigure | undefined): string {
  return figure === undefined ? '' : `${figure.figure}\u00A0${figure.unit}`;
}

/** `Into the bowl, 05:05, 3 times`. */
export function blockTitle({ title, clock, when, times }: SheetBlock): string {
  return [title, clock?.words, when, timesWords(times)]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
}

export function timesWords(times: number): string | undefined {
  return times > 1 ? `${times} times` : undefined;
}

/** What is said of a weighed line beside its figures. */
export function rowNotes({ note, missing }: SheetRow): readonly string[] {
  return [note, missing].filter((part) => part !== undefined);
}

/** Whether the sum of a block says more than its rows do: they are several, and all are known. */
export function hasSum({ rows, total }: SheetBlock): boolean {
  return total !== undefined && rows.length > 1 && rows.every(({ weigh }) => weigh !== undefined);
}

export function phaseWords({ label, adds }: SheetPhase): string {
  return adds.length === 0 ? label : `${label}, first in: ${adds.join(', ')}`;
}

/** `80%, effective 81.2%`, and where it was tried or nobody said it, that. */
export function factWords({ value, note, source }: SheetFact): string {
  const from = source === 'today' ? 'tried today' : source === 'assumed' ? 'assumed' : undefined;
  return [value, note, from].filter((part) => part !== undefined).join(', ');
}

/** The conditions that the sheet is worked out for. */
export function conditionWords({ value, source, inFile }: SheetView['conditions'][number]): string {
  if (source === 'today')
    return `${value}, tried today${inFile === undefined ? '' : `; in the file ${inFile}`}`;
  return source === 'assumed' && value !== 'not known' ? `${value}, assumed` : value;
}

export const mixingTitle = ({ total, mixer }: NonNullable<SheetView['mixing']>): string =>
  `Mixing, ${total} ${inMarks(inMixer(mixer))}`;

/** The drafts of the label: one, or both manners where both are wanted. */
export function labelsOf({ label }: SheetView): readonly NonNullable<SheetView['label']>[] {
  if (label === undefined) return [];
  return label.other === undefined ? [label] : [label, label.other];
}

/** The cells of a trial's table, a row for each reading. */
export const trialHeads = ['At', 'Measured', 'Worked out', 'Off by'] as const;

export function trialRows({ readings }: SheetView['trials'][number]): string[][] {
  const said = (...parts: readonly (string | undefined)[]): string =>
    parts.filter((part) => part !== undefined).join(' ');
  return readings.map((one) => [
    one.when,
    said(one.measured, one.stage),
    said(one.workedOut, one.stageWorkedOut),
    one.difference ?? '',
  ]);
}

export function trialTitle({ title }: SheetView['trials'][number]): string {
  return `Trial ${title}`.trim();
}

export function labelTitle({ regime }: NonNullable<SheetView['label']>): string {
  return `Label, a draft (${regime})`;
}
