import type { Analysis } from '../../analysis/analysis.ts';
import { stageMessage } from '../../analysis/mix-analysis.ts';
import { type TrialFacts, type TrialReadingFacts, trialFactsOf } from '../../facts/trial-facts.ts';
import { feelFacts, lossMessage } from '../../facts/trial-words.ts';
import type { Scope } from '../../model/scope.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import type { Row, TableSection } from './sheet-document.ts';

/** The name of the mixer that the trial at a line of the file can teach; undefined where its readings say nothing new. */
export type TaughtAt = (line: number) => string | undefined;

/** What trials of the formula measured, beside what is computed for the same minute. Runs each programme. */
export function trialSections(
  analysis: Analysis,
  scope: Scope,
  firstLine: number,
  speaker: Speaker,
  taughtAt: TaughtAt,
): TableSection[] {
  const { say } = speaker;
  const idOf = nodeIds();
  const trials = trialFactsOf(analysis, scope);
  const teachers = teachersOf(trials, (line) => taughtAt(firstLine + line));
  return trials.map((facts): TableSection => {
    const mixer = teachers.get(facts);
    const id = idOf('trial', facts.title);
    const ids = nodeIds();
    return {
      kind: 'table',
      id,
      name: 'trial',
      title: say(
        facts.title === '' ? message('sheet.trial-alone') : message('sheet.trial', { written: facts.title }),
      ),
      line: firstLine + facts.line,
      head: say(message('sheet.at')),
      columns: [
        { key: 'measured', title: say(message('sheet.measured')) },
        { key: 'computed', title: say(message('sheet.computed')) },
        { key: 'off', title: say(message('sheet.off-by')) },
      ],
      rows: facts.readings.map((reading) => readingRow(reading, ids, id, firstLine, speaker)),
      notes: notesOf(facts).map(say),
      ...(mixer === undefined
        ? {}
        : { teach: { mixer, words: say(message('teach-mixer.teach', { name: mixer })) } }),
    };
  });
}

/** Of the trials of each mixer that has something to learn the one whose readings miss the most. */
function teachersOf(trials: readonly TrialFacts[], taughtAt: TaughtAt): ReadonlyMap<TrialFacts, string> {
  const worst = new Map<string, TrialFacts>();
  for (const facts of trials) {
    const mixer = facts.spreadCelsius === undefined ? undefined : taughtAt(facts.line);
    if (mixer !== undefined && (worst.get(mixer)?.spreadCelsius ?? 0) < (facts.spreadCelsius ?? 0))
      worst.set(mixer, facts);
  }
  return new Map([...worst].map(([mixer, facts]) => [facts, mixer]));
}

function readingRow(
  reading: TrialReadingFacts,
  idOf: ReturnType<typeof nodeIds>,
  section: string,
  firstLine: number,
  speaker: Speaker,
): Row {
  const { minutes, isEnd, line, measuredCelsius, measuredStage, measuredFeel, predictedCelsius } = reading;
  const felt = feelFacts(measuredFeel ?? []).map(speaker.say);
  const state = (celsius: number | undefined, stage: string | undefined): string =>
    [
      ...(celsius === undefined ? [] : [speaker.celsius(celsius)]),
      ...(stage === undefined ? [] : [speaker.say(stageMessage(stage))]),
    ].join(' ');
  return {
    id: idOf(section, isEnd ? 'end' : String(minutes)),
    line: firstLine + line,
    name: speaker.say(isEnd ? message('readings.end') : message('programme.minutes', { minutes })),
    cells: {
      measured: {
        text: [state(measuredCelsius, measuredStage), ...felt].filter((one) => one !== '').join(', '),
      },
      computed: { text: state(predictedCelsius, reading.predictedStage) },
      off: {
        text:
          predictedCelsius === undefined || measuredCelsius === undefined
            ? ''
            : speaker.say(missMessage(measuredCelsius - predictedCelsius)),
      },
    },
  };
}

function missMessage(celsius: number): Message {
  const apartCelsius = Math.abs(celsius);
  if (apartCelsius < 0.05) return message('sheet.as-computed');
  return message(celsius > 0 ? 'sheet.warmer' : 'sheet.colder', { apartCelsius });
}

function notesOf({ spreadCelsius, noPrediction, loss }: TrialFacts): Message[] {
  return [
    ...(spreadCelsius === undefined
      ? noPrediction === undefined
        ? []
        : [message('readings.alone', { reason: noPrediction })]
      : [message('readings.miss', { apartCelsius: spreadCelsius })]),
    ...(loss === undefined ? [] : [lossMessage(loss)]),
  ];
}
