import type { Analysis } from '../../analysis/analysis.ts';
import { stageMessage } from '../../analysis/mix-analysis.ts';
import type { Known } from '../../calc/known.ts';
import type { MinutesBand } from '../../calc/mixing/mixing.ts';
import { waterToUse } from '../../facts/mixing-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Row, TableSection } from './sheet-document.ts';

/** One figure of a formula in words; undefined where it has none. */
type Figure = (analysis: Analysis, speaker: Speaker) => string | undefined;

/** What is set beside what the file has, in the order of a baker's questions: how wet, how long, how warm, how far, how long it holds. */
const figures: readonly { readonly key: string; readonly name: Message; readonly figure: Figure }[] = [
  {
    key: 'hydration',
    name: message('map.axis-water'),
    figure: ({ solved }, speaker) =>
      solved?.hydration === undefined ? undefined : speaker.percent(solved.hydration, 1),
  },
  {
    key: 'minutes',
    name: message('before-after.mixing'),
    figure: ({ doughMix }, speaker) =>
      doughMix.known ? speaker.minutes(doughMix.value.outcome.programmeMinutes) : undefined,
  },
  {
    key: 'water',
    name: message('before-after.water'),
    figure: ({ doughMix }, { say }) => {
      const water = doughMix.known ? waterToUse(doughMix.value) : undefined;
      return water === undefined ? undefined : say(water.text);
    },
  },
  {
    key: 'celsius',
    name: message('before-after.ends'),
    figure: ({ doughMix }, speaker) => {
      if (!doughMix.known) return undefined;
      const { endCelsius, endCelsiusBand } = doughMix.value.outcome;
      return endCelsius.known ? speaker.celsiusBand(endCelsius.value, endCelsiusBand) : undefined;
    },
  },
  {
    key: 'stage',
    name: message('before-after.state'),
    figure: ({ doughMix }, { say }) => {
      const stage = doughMix.known ? doughMix.value.outcome.stage : doughMix;
      return stage.known ? say(stageMessage(stage.value)) : undefined;
    },
  },
  momentFigure('developedAfter', message('map.developed-from')),
  momentFigure('letDownAfter', message('map.let-down-from')),
  {
    key: 'too warm',
    name: message('map.too-warm-from'),
    figure: ({ doughMix }, speaker) => {
      if (!doughMix.known) return undefined;
      const { limitAfter } = doughMix.value.outcome;
      return limitAfter.known ? speaker.minutes(limitAfter.value.minutes) : undefined;
    },
  },
];

function momentFigure(key: 'developedAfter' | 'letDownAfter', name: Message) {
  const figure: Figure = ({ doughMix }, speaker) =>
    doughMix.known ? bandWords(doughMix.value.outcome[key], doughMix.value.outcome, speaker) : undefined;
  return { key, name, figure };
}

/** So many times the programme on a moment is only far off. */
const farOff = 3;

function bandWords(
  band: Known<MinutesBand, Message>,
  { programmeMinutes }: { readonly programmeMinutes: number },
  speaker: Speaker,
): string | undefined {
  if (!band.known) return undefined;
  const { low, high } = band.value;
  return low > programmeMinutes * farOff
    ? speaker.say(message('moment.far-off'))
    : speaker.minutesBand(low, high);
}

/** The figures of several formulas under one another's names, each in words; what none of them has is left out. */
export function figuresBeside(
  analyses: readonly Analysis[],
  speaker: Speaker,
): { readonly key: string; readonly name: string; readonly texts: readonly (string | undefined)[] }[] {
  return figures.flatMap(({ key, name, figure }) => {
    const texts = analyses.map((analysis) => figure(analysis, speaker));
    return texts.every((text) => text === undefined) ? [] : [{ key, name: speaker.say(name), texts }];
  });
}

/** What is tried of the formula itself beside what its file has, each of one batch. */
export function beforeAfter(inFile: Analysis, tried: Analysis, speaker: Speaker): TableSection {
  const { say } = speaker;
  return {
    ...{ kind: 'table', id: 'before-after', name: 'before-after' },
    title: say(message('before-after.title')),
    head: '',
    columns: [
      { key: 'inFile', title: say(message('before-after.in-file')) },
      { key: 'tried', title: say(message('before-after.tried')) },
    ],
    rows: figuresBeside([inFile, tried], speaker).map(({ key, name, texts: [before, after] }): Row => {
      const none = '–';
      return {
        id: `before-after/${key}`,
        name,
        cells: { inFile: { text: before ?? none }, tried: { text: after ?? none } },
      };
    }),
  };
}
