import { inMixer } from '../../facts/mixing-words.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { labelsOf, type SheetLabels } from '../build/sheet-labels.ts';
import type { ExperimentDoughView, ExperimentView } from './experiment-view.ts';
import { cellOf, measuredMessage } from './reading-messages.ts';

/** An experiment as it is run at the bench: its doughs in the order in which they are mixed, and when each is read. */
export interface ExperimentBench {
  readonly experiment: string;
  readonly uri: string;
  /** Of its header, counted from zero. */
  readonly line: number;
  readonly doughs: readonly BenchDough[];
  readonly labels: BenchLabels;
}

export interface BenchDough {
  readonly name: string;
  /** `in bench planetary`; absent where nobody knows it. */
  readonly place?: string;
  /** Of its programme; absent where it is not known. */
  readonly programmeMinutes?: number;
  /** Why it cannot be predicted. */
  readonly reason?: string;
  /** `Stop the mixer`, or what hands do. */
  readonly stop: string;
  /** When it is read, as far as its programme goes, minutes from the start of mixing. */
  readonly readings: readonly {
    readonly minutes: number;
    readonly celsius?: number;
    readonly expected: string;
  }[];
  /** What stands in its trials, each with its day. */
  readonly logged: readonly { readonly date?: string; readonly minutes: number; readonly words: string }[];
}

/** The words of the bench; `{0}` and `{1}` stand for what it fills in. */
export type BenchLabels = SheetLabels & ReturnType<typeof benchLabels>;

/** The bench of an experiment, worded by whoever worded its view. */
export function experimentBench(view: ExperimentView, speaker: Speaker): ExperimentBench {
  const { experiment, uri, line, doughs, order } = view;
  const turnOf = ({ name }: ExperimentDoughView): number => {
    const turn = order.findIndex(({ dough }) => dough === name);
    return turn < 0 ? order.length : turn;
  };
  return {
    ...{ experiment, uri, line },
    doughs: doughs
      .toSorted((one, other) => turnOf(one) - turnOf(other))
      .map((dough) => benchDough(dough, speaker)),
    labels: { ...labelsOf(speaker), ...benchLabels(speaker) },
  };
}

function benchDough(dough: ExperimentDoughView, { say }: Speaker): BenchDough {
  const { name, mixer, byHand, programmeMinutes, reason, readings, measured } = dough;
  return {
    name,
    ...(mixer === undefined ? {} : { place: say(inMixer(mixer)) }),
    ...(programmeMinutes === undefined ? {} : { programmeMinutes }),
    ...(reason === undefined ? {} : { reason }),
    stop: say(message(byHand ? 'bench.stop-hands' : 'bench.stop-mixer')),
    readings: readings.flatMap((one) => {
      const { minutes, celsius } = one;
      if (programmeMinutes !== undefined && minutes > programmeMinutes + 1e-6) return [];
      return [{ minutes, ...(celsius === undefined ? {} : { celsius }), expected: cellOf(one, say) }];
    }),
    logged: measured.map((one) => ({
      ...(one.date === undefined ? {} : { date: one.date }),
      minutes: one.minutes,
      words: say(measuredMessage(one)),
    })),
  };
}

/** Where the bench fills in something. */
const [first, second] = ['{0}', '{1}'];
const one = { written: first };
const two = { written: first, otherWritten: second };

function benchLabels({ say }: Speaker) {
  return {
    run: say(message('bench.run')),
    runHint: say(message('bench.run-hint')),
    asSheet: say(message('bench.as-sheet')),
    blanks: say(message('bench.blanks')),
    hidden: say(message('bench.hidden')),
    doughs: say(message('bench.doughs')),
    begin: say(message('bench.begin')),
    stopped: say(message('bench.stopped')),
    goOn: say(message('bench.go-on')),
    mixedSoFar: say(message('bench.mixed-so-far')),
    stopIn: say(message('bench.stop-in', two)),
    stopNow: say(message('bench.stop-now', one)),
    readAt: say(message('bench.read-at', one)),
    noneLeft: say(message('bench.none-left')),
    minute: say(message('bench.minute')),
    byTimer: say(message('bench.by-timer', one)),
    minuteFirst: say(message('bench.minute-first')),
    planned: say(message('bench.planned')),
    expected: say(message('bench.expected', one)),
    clearSure: say(message('bench.clear-sure')),
  };
}
