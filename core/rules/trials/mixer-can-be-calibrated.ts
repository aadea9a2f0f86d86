import type { Analysis } from '../../analysis/analysis.ts';
import { handTrials, type MixerTrials, mixerTrials } from '../../analysis/mixer-trials.ts';
import type { Calibration } from '../../calc/calibration/calibration.ts';
import { agreesWithBelieved } from '../../calc/calibration/calibration-development.ts';
import { thermometerCelsius } from '../../calc/heat/thermometer.ts';
import { byHand } from '../../model/found-mixer.ts';
import { propertiesOf } from '../../model/properties.ts';
import { wholeOf } from '../../model/variant.ts';
import { elementAt } from '../../text/element.ts';
import { stopFirst } from '../../text/stop-first.ts';
import { type Message, message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule, RuleContext, RuleEdit, RuleFinding, RuleFix } from '../engine/rule.ts';
import { type BlockPlace, headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { apartOf, isContradictory, oddOf } from './calibration-doubts.ts';
import { calibrationEdits, handsSection, type WrittenFactor } from './calibration-edits.ts';
import { quantityMessage, readingsMessage, writtenValue } from './calibration-words.ts';

/** How much nearer to the readings a fit must come to be worth a finding, °C. */
const worthwhileCelsius = 0.1;
/** No mixer develops dough so many times as fast, or as slowly, as its kind does; our own choice. */
const believableFactor = 4;

export const mixerCanBeCalibrated: Rule = {
  code: 'mixer-can-be-calibrated',
  level: 'hint',
  title: 'Trials tell how this mixer warms dough',
  explanation:
    'The readings of the trials run on this mixer fit another warming than its section states or its kind suggests. The fix writes what ' +
    'they say: how a speed warms (`warms`), how slowly the dough follows the room (`settles`), or for hands what they warm it towards; and how fast it `develops` dough, where the stages seen close that in, differ from what is believed, and two flours or more show it. ' +
    'What one flour shows on one mixer may be either’s and is written into neither. Hands need no section: the fix makes one called `mixer by hand`, which every `mix by hand` then goes by. ' +
    'Each figure comes with its standard error (`within`), and no prediction is then surer than that; one reading far from all others hardly counts and is named, and what the readings do not determine is left as it is and named. Nothing is said while ' +
    `the misses stay within ${thermometerCelsius} °C, which is what a thermometer in dough is good for. ${stopFirst}`,
  bad:
    'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\n' +
    'mix in hook:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n\n' +
    'trial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 14 °C\n  mixed in hook\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  at 3 min  20.5 °C\n  at 6 min  22.2 °C\n  end  24.5 °C\n',
  good:
    'mixer hook:\n  kind spiral\n  speed 1 100 rpm, warms 0.46 °C/min within 0.06 °C/min\n  speed 2 200 rpm, warms 1.33 °C/min within 0.22 °C/min\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\n' +
    'mix in hook:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n\n' +
    'trial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 14 °C\n  mixed in hook\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  at 3 min  20.5 °C\n  at 6 min  22.2 °C\n  end  24.5 °C\n',
  *check({ block, scope, analysis }) {
    const { top } = block;
    if (analysis !== undefined) {
      yield* handsOf({ block, scope, analysis });
      return;
    }
    if (top?.kind !== 'mixer' || top.header.name === undefined) return;
    const trials = mixerTrials(block, top.header.name, scope);
    if (trials === undefined) return;
    const said = propertiesOf(block, top);
    const { warming, factor } = worthTelling(trials);
    // Where all of it is written already, readings that contradict one another have been looked over.
    const edits = calibrationEdits(block, said, trials.mixer, warming, factor).filter(
      ({ line, start, end, insert }) => elementAt(block.lines, line).text.slice(start, end) !== insert,
    );
    if (edits.length > 0)
      yield findingOf(headerPlace(block, top.headerLine), trials, { warming, factor }, edits);
  },
};

/** Hands need no section: what their trials show stands at the programme of the newest, or at its trials, and the fix makes the section. */
function* handsOf({ block, scope, analysis }: HandsContext): Iterable<RuleFinding> {
  const { mixes, trials: own } = analysis.resolved.model;
  const mix = mixes.find(({ header }) => header.byHand === true);
  const headerLine = mix?.headerLine ?? own.at(-1)?.headerLine;
  if (headerLine === undefined || own.length === 0) return;
  const trials = handTrials(scope);
  // A variant is known by its own text, and so is where the section goes.
  const written = wholeOf(block)?.own ?? block;
  if (trials === undefined || trials.newest.block !== written) return;
  const { warming } = worthTelling(trials);
  if (warming === undefined) return;
  const edits = [handsSection(written, trials.mixer.name, warming)];
  const place = { line: headerLine, span: wordsOf(block, headerLine) };
  yield findingOf(place, trials, { warming, factor: undefined }, edits);
}

interface HandsContext extends Pick<RuleContext, 'block' | 'scope'> {
  readonly analysis: Analysis;
}

/** What is worth writing: how the mixer warms, how fast it develops, or both. */
interface Told {
  readonly warming: Calibration | undefined;
  readonly factor: WrittenFactor | undefined;
}

function worthTelling(trials: MixerTrials): Told {
  const factor = developmentToWrite(trials);
  if (!trials.calibration.known) return { warming: undefined, factor };
  const { spreadBefore, spreadAfter } = trials.calibration.value;
  const isWarmingKnown =
    spreadBefore.known &&
    !isContradictory(trials.calibration.value) &&
    (spreadBefore.value <= thermometerCelsius || spreadBefore.value - spreadAfter < worthwhileCelsius);
  return { warming: isWarmingKnown ? undefined : trials.calibration.value, factor };
}

function findingOf(
  place: BlockPlace,
  trials: MixerTrials,
  told: Told,
  edits: readonly RuleEdit[],
): RuleFinding {
  return {
    ...place,
    message: messageOf(trials, told),
    related: trials.formulas.map((definition) => ({
      definition,
      message: message('mixer-can-be-calibrated.trial'),
    })),
    fixes: [fixOf(told, edits)],
  };
}

/** The factor that the stages seen leave, where they close it in on both sides and leave out what is now believed. */
function developmentToWrite(trials: MixerTrials): WrittenFactor | undefined {
  const development = trials.development();
  if (!development.known) return undefined;
  const { least, most, speeds, flours } = development.value;
  // What one flour alone shows may be the flour’s.
  if (flours < 2) return undefined;
  if (!(least > 0) || most === undefined || agreesWithBelieved({ least, most })) return undefined;
  return { least, most, middle: Math.sqrt(least * most), speeds };
}

function messageOf(trials: MixerTrials, { warming, factor }: Told): Message {
  const source = readingsMessage(trials);
  const { name } = trials.mixer;
  return paragraph(
    name === byHand.name
      ? message('mixer-can-be-calibrated.hands', { source })
      : message('mixer-can-be-calibrated.mixer', { name, source }),
    ...(warming === undefined ? [] : warmingMessages(warming)),
    ...(factor === undefined ? [] : developmentMessages(factor)),
  );
}

function warmingMessages(warming: Calibration): (Message | undefined)[] {
  const { spreadBefore, spreadAfter: laterCelsius, parameters } = warming;
  const open = parameters.filter((one) => !one.value.known).map((one) => quantityMessage(one.quantity));
  return [
    spreadBefore.known
      ? message('mixer-can-be-calibrated.misses', { apartCelsius: spreadBefore.value, laterCelsius })
      : message('mixer-can-be-calibrated.misses-calibrated', { laterCelsius }),
    open.length === 0 ? undefined : message('mixer-can-be-calibrated.cannot-tell', { parts: open }),
    apartOf(warming),
    oddOf(warming),
  ];
}

function developmentMessages(factor: WrittenFactor): (Message | undefined)[] {
  return [
    message('mixer-can-be-calibrated.develops', { lowFactor: factor.least, highFactor: factor.most }),
    isFarOff(factor) ? message('mixer-can-be-calibrated.far-off') : undefined,
  ];
}

function fixOf(told: Told, edits: readonly RuleEdit[]): RuleFix {
  const { warming, factor } = told;
  const title = titleOf(told);
  const isOdd =
    (warming !== undefined && oddOf(warming) !== undefined) || (factor !== undefined && isFarOff(factor));
  return isOdd ? { title, edits } : { title, edits, preferred: true };
}

function titleOf({ warming, factor }: Told): Message {
  const words = (warming?.parameters ?? []).flatMap((one) => writtenValue(one) ?? []);
  if (factor === undefined) return message('mixer-can-be-calibrated.fix', { words });
  return words.length === 0
    ? message('mixer-can-be-calibrated.fix-develops')
    : message('mixer-can-be-calibrated.fix-both', { words });
}

function isFarOff({ middle }: WrittenFactor): boolean {
  return middle > believableFactor || middle < 1 / believableFactor;
}
