import { inMixer } from '../../facts/mixing-words.ts';
import { type ArgsOf, type Code, type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { type FindingsAt, findingMessage, findingsByPlace, type SheetPlace } from './sheet-places.ts';
import type {
  SheetBlock,
  SheetFact,
  SheetFigure,
  SheetFinding,
  SheetMoment,
  SheetPhase,
  SheetRow,
  SheetView,
} from './view.ts';

/** What all written forms of a sheet say in the same words. */
export interface Told {
  readonly view: SheetView;
  readonly speaker: Speaker;
  /** A heading, a column or another word without figures. */
  word(code: WordCode): string;
  /** The moments of the clock; none where all there is is that it is mixed. */
  readonly moments: readonly SheetMoment[];
  /** What was found at a place, in sentences. */
  findings(place: SheetPlace): readonly string[];
  /** Below the heading: what holds the sheet up, what could not be done, what was found at nothing on the sheet. */
  readonly lead: readonly string[];
  when(moment: SheetMoment): string;
  lasts(seconds: number | undefined): string;
}

/** Codes of messages that take nothing. */
export type WordCode = { [C in Code]: Record<never, never> extends ArgsOf<C> ? C : never }[Code];

/** `speaker` is whoever worded the view. */
export function toldOf(view: SheetView, speaker: Speaker): Told {
  const at: FindingsAt = findingsByPlace(view);
  const found = (finding: SheetFinding, named: boolean): string =>
    speaker.say(findingMessage(finding, named));
  const { heldBy } = view;
  const { asked, moments } = view.timeline;
  return {
    view,
    speaker,
    word: (code) => speaker.say(message(code)),
    moments: asked === undefined && moments.every(({ kind }) => kind === 'mix') ? [] : moments,
    findings: (place) => at(place).map((finding) => found(finding, place === 'heading')),
    lead: [
      ...(view.tried ? [speaker.say(message('sheet.tried'))] : []),
      ...(view.state === 'empty' ? [speaker.say(message('sheet.empty'))] : []),
      ...view.notDone,
      // Where it is a finding as well, it stands at its thing.
      ...(heldBy === undefined || isFinding(heldBy, view)
        ? []
        : [speaker.say(message('sheet.held-by', { number: heldBy.line + 1, sentence: heldBy.message }))]),
      ...at('heading').map((finding) => found(finding, true)),
    ],
    when: ({ clock, startSeconds }) => {
      if (clock !== undefined) return clock.words;
      return speaker.say(fromStart(startSeconds));
    },
    lasts: (seconds) => (seconds === undefined ? '' : speaker.duration(seconds)),
  };
}

function fromStart(seconds: number): Message {
  if (seconds < 0) return message('sheet.before', { seconds: -seconds });
  return seconds === 0 ? message('sheet.at-start') : message('sheet.after', { seconds });
}

/** Whether what holds a sheet up is a finding that stands at its thing as well: an error of that line. */
function isFinding({ line }: NonNullable<SheetView['heldBy']>, { findings }: SheetView): boolean {
  return findings.some((one) => one.line === line && one.level === 'error');
}

/** `9050 g`, with a blank that keeps the two on one line. */
export function figureWords(figure: SheetFigure | undefined): string {
  return figure === undefined ? '' : `${figure.figure}\u00A0${figure.unit}`;
}

/** `Into the bowl, 05:05, 3 times`. */
export function blockTitle({ title, clock, when, times }: SheetBlock, speaker: Speaker): string {
  return [title, clock?.words, when, timesWords(times, speaker)]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
}

export function timesWords(times: number, speaker: Speaker): string | undefined {
  return times > 1 ? speaker.say(message('sheet.times', { count: times })) : undefined;
}

/** What is said of a weighed line beside its figures. */
export function rowNotes({ note, missing }: SheetRow): readonly string[] {
  return [note, missing].filter((part) => part !== undefined);
}

/** Whether the sum of a block says more than its rows do: they are several, and all are known. */
export function hasSum({ rows, total }: SheetBlock): boolean {
  return total !== undefined && rows.length > 1 && rows.every(({ weigh }) => weigh !== undefined);
}

export function phaseWords({ label, adds }: SheetPhase, speaker: Speaker): string {
  return adds.length === 0 ? label : speaker.say(message('phase.first-in', { written: label, names: adds }));
}

/** `80%, effective 81.2%`, and where it was tried or nobody said it, that. */
export function factWords({ value, note, source }: SheetFact, { word }: Told): string {
  const from =
    source === 'today' ? word('sheet.tried-today') : source === 'assumed' ? word('sheet.assumed') : undefined;
  return [value, note, from].filter((part) => part !== undefined).join(', ');
}

/** The conditions that the sheet is worked out for. */
export function conditionWords(
  { value, figure, source, inFile }: SheetView['conditions'][number],
  { word, speaker }: Told,
): string {
  if (source === 'today')
    return inFile === undefined
      ? [value, word('sheet.tried-today')].join(', ')
      : speaker.say(message('sheet.instead-of', { written: value, otherWritten: inFile }));
  return source === 'assumed' && figure !== undefined ? [value, word('sheet.assumed')].join(', ') : value;
}

/** `9 min in big spiral`. */
export function mixingWords({ total, mixer }: NonNullable<SheetView['mixing']>, speaker: Speaker): string {
  return speaker.say(message('sheet.mixing-in', { written: total, place: inMixer(mixer) }));
}

/** The drafts of the label: one, or both manners where both are wanted. */
export function labelsOf({ label }: SheetView): readonly NonNullable<SheetView['label']>[] {
  if (label === undefined) return [];
  return label.other === undefined ? [label] : [label, label.other];
}

/** The cells of a trial's table, a row for each reading. */
export const trialHeads = ['sheet.at', 'sheet.measured', 'sheet.computed', 'sheet.off-by'] as const;

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

export function trialTitle({ title }: SheetView['trials'][number], speaker: Speaker): string {
  return speaker.say(
    title === '' ? message('sheet.trial-alone') : message('sheet.trial', { written: title }),
  );
}

export function labelTitle({ regime }: NonNullable<SheetView['label']>, speaker: Speaker): string {
  return speaker.say(message('sheet.label', { code: regime }));
}
