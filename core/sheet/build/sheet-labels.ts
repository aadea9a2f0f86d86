import { stageMessage } from '../../analysis/mix-analysis.ts';
import { mixingStages } from '../../calc/mixing/development.ts';
import { stageDrawings } from '../../facts/stage-drawings.ts';
import { byHand } from '../../model/found-mixer.ts';
import { feelWords } from '../../syntax/vocabulary.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

/** The words that a panel itself has. In some, `{0}` and `{1}` stand for what the panel fills in. */
export type SheetLabels = ReturnType<typeof labelsOf>;

/** Where the panel fills in something. */
const [first, second] = ['{0}', '{1}'];
const one = { written: first };
const two = { written: first, otherWritten: second };

/** The words of the panel, in the language of the sheet that they come with. */
export function labelsOf({ language, say }: Speaker) {
  return {
    /** BCP 47. */
    language,
    showLine: say(message('panel.show-line')),
    line: say(message('panel.line', one)),
    levels: {
      error: say(message('sheet-level.error')),
      warning: say(message('sheet-level.warning')),
      info: say(message('sheet-level.info')),
      hint: say(message('sheet-level.hint')),
    },
    ...heads({ say }),
    ...fields({ say }),
    ...working({ say }),
  };
}

type Says = Pick<Speaker, 'say'>;

/** What stands over what is shown. */
function heads({ say }: Says) {
  return {
    tried: say(message('panel.tried')),
    heldBy: say(message('panel.held-by', two)),
    held: say(message('panel.held')),
    lastFigures: say(message('panel.last-figures')),
    knownSoFar: say(message('panel.known-so-far')),
    noIngredients: say(message('panel.no-ingredients', { example: 'strong white 100%' })),
    asTable: say(message('sheet.as-table')),
    why: say(message('panel.why')),
    endsAt: say(message('panel.ends-at', one)),
  };
}

/** What can be tried, and how to give it back. */
function fields({ say }: Says) {
  return {
    try: say(message('panel.try')),
    reset: say(message('panel.reset')),
    keep: say(message('panel.keep')),
    keepHint: say(message('panel.keep-hint')),
    scaleReads: say(message('sheet.scale-reads')),
    pin: say(message('panel.pin')),
    pinned: say(message('panel.pinned')),
    pinHint: say(message('panel.pin-hint')),
    work: say(message('panel.work')),
    workHint: say(message('panel.work-hint')),
    notDone: say(message('panel.not-done')),
    dayFold: say(message('panel.day-fold')),
    day: say(message('panel.day')),
    room: say(message('sheet.room')),
    flour: say(message('sheet.flour')),
    tapWater: say(message('sheet.tap-water')),
    scaleStep: say(message('sheet.scale-step')),
    mixer: say(message('sheet.mixer')),
    /** What hands are called that mix, and their name among the mixers. */
    byHand: { name: byHand.name, words: say(message('place.by-hand')) },
    clock: say(message('panel.clock')),
    mixingStarts: say(message('panel.mixing-starts')),
    readyAt: say(message('panel.ready-at')),
    timeOfDay: say(message('panel.time-of-day')),
    notANumber: say(message('panel.not-a-number')),
    todayInstead: say(message('panel.today-instead', one)),
    assumed: say(message('sheet.assumed')),
    notKnown: say(message('sheet.not-known')),
    asInFile: say(message('panel.as-in-file')),
    size: say(message('panel.size')),
    sizeBy: say(message('panel.size-by')),
    ofWhat: say(message('panel.of-what')),
    pieces: say(message('sheet.pieces')),
    dough: say(message('sheet.dough')),
    baked: say(message('sheet.baked')),
    onHand: say(message('panel.on-hand')),
    bowls: say(message('panel.bowls')),
    aboveZero: say(message('panel.above-zero')),
    whatIfFold: say(message('panel.what-if-fold')),
    whatIf: say(message('panel.what-if')),
    sameFeel: say(message('panel.same-feel')),
    minutes: say(message('panel.minutes', one)),
    more: say(message('panel.more', one)),
    less: say(message('panel.less', one)),
    map: say(message('panel.map')),
    noMap: say(message('panel.no-map')),
    maps: {
      water: say(message('panel.map-water')),
      flour: say(message('panel.map-flour')),
      speed: say(message('panel.map-speed')),
    },
  };
}

/** One moment of the work after another, and the readings taken on the way. */
function working({ say }: Says) {
  return {
    wholeSheet: say(message('panel.whole-sheet')),
    nothingToDo: say(message('panel.nothing-to-do')),
    moments: say(message('panel.moments')),
    back: say(message('panel.back')),
    next: say(message('panel.next')),
    anew: say(message('panel.anew')),
    anewSure: say(message('panel.anew-sure')),
    batch: say(message('panel.batch')),
    of: say(message('panel.of', two)),
    reads: say(message('panel.reads', one)),
    togetherFigure: say(message('panel.together', one)),
    timeLeft: say(message('panel.time-left')),
    startTimer: say(message('panel.start-timer')),
    stopTimer: say(message('panel.stop-timer')),
    overSince: say(message('panel.over-since', one)),
    over: say(message('panel.over', one)),
    log: say(message('panel.log')),
    logAt: say(message('panel.log-at', one)),
    logEnd: say(message('panel.log-end')),
    stopFirst: say(message('readings.stop-first')),
    waterDegrees: say(message('panel.water-degrees', { unit: first })),
    degrees: say(message('panel.degrees', { unit: first })),
    orDegrees: say(message('panel.or-degrees', { unit: first })),
    noDegrees: say(message('panel.no-degrees')),
    stages: say(message('panel.stages')),
    /** Each stage as the notation spells it, as its reader does, and as a drawing of one stroke in a square of 24. */
    stageNames: mixingStages.map((stage) => ({
      stage,
      words: say(stageMessage(stage)),
      drawing: stageDrawings[stage],
    })),
    feels: say(message('panel.feels')),
    /** How a dough may feel, as the notation spells it and as its reader does. */
    feelNames: feelWords.map((word) => ({ word, words: say(message(`feel.${word}`)) })),
    noStage: say(message('panel.no-stage')),
    temperatureFirst: say(message('panel.temperature-first')),
    noReading: say(message('panel.no-reading', two)),
  };
}
