import { type MixerTrials, mixerTrials } from '../analysis/mixer-trials.ts';
import type { Calibration } from '../calc/calibration.ts';
import { developmentRate, findSpeed } from '../calc/mixer.ts';
import { thermometerCelsius } from '../calc/thermometer.ts';
import type { Mixer } from '../model/mixer.ts';
import { propertiesOf, type SaidProperties } from '../model/properties.ts';
import type { Block } from '../syntax/tree.ts';
import { degreesApart, figure, trimmed } from '../text/figures.ts';
import { stopFirst } from '../text/stop-first.ts';
import { quantityWords, readingsWords, writtenValue } from './calibration-words.ts';
import { headerPlace, quantityPlace } from './places.ts';
import type { Rule, RuleEdit, RuleFix } from './rule.ts';
import { listed, wordsOf } from './words.ts';

/** How much nearer to the readings a fit must come to be worth a finding, °C. */
const worthwhileCelsius = 0.1;
/** Readings missed by more than this even when calibrated contradict one another, °C; common practice, no source. */
const contradictoryCelsius = 1;
/** No mixer develops dough so many times as fast, or as slowly, as its kind does; our own choice. */
const believableFactor = 4;
/** Flours alone make a prediction of development uncertain by so much. */
const flourAlone = 1.2;

export const mixerCanBeCalibrated: Rule = {
  code: 'mixer-can-be-calibrated',
  level: 'hint',
  title: 'Trials tell how this mixer warms dough',
  explanation:
    'The readings of the trials run on this mixer fit another warming than its section states or its kind suggests. The fix writes what ' +
    'they say: how a speed warms (`warms`), how slowly the dough follows the room (`settles`), or for hands what they warm it towards; and how fast it `develops` dough, where the stages seen close that in and differ from what is believed. ' +
    'Each figure comes with its standard error; what the readings do not determine is left as it is and named. Nothing is said while ' +
    `the misses stay within ${thermometerCelsius} °C, which is what a thermometer in dough is good for. ${stopFirst}`,
  bad:
    'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\n' +
    'mix in hook:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n\n' +
    'trial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 14 °C\n  mixed in hook\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  at 3 min  20.5 °C\n  at 6 min  22.2 °C\n  end  24.5 °C\n',
  good:
    'mixer hook:\n  kind spiral\n  speed 1 100 rpm, warms 0.47 °C/min\n  speed 2 200 rpm, warms 1.29 °C/min\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\n' +
    'mix in hook:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n\n' +
    'trial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 14 °C\n  mixed in hook\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  at 3 min  20.5 °C\n  at 6 min  22.2 °C\n  end  24.5 °C\n',
  *check({ block, scope }) {
    const { top } = block;
    if (top?.kind !== 'mixer' || top.header.name === undefined) return;
    const trials = mixerTrials(block, top.header.name, scope);
    if (trials === undefined || !trials.calibration.known) return;
    const { value } = trials.calibration;
    const { spreadBefore, spreadAfter } = value;
    const isWarmingKnown =
      spreadBefore.known &&
      (spreadBefore.value <= thermometerCelsius || spreadBefore.value - spreadAfter < worthwhileCelsius);
    const said = propertiesOf(block, top);
    const factor = developmentToWrite(trials);
    const warming = isWarmingKnown ? [] : editsOf(block, said, value);
    const developing = factor === undefined ? [] : developmentEdits(block, said, trials.mixer, factor);
    const edits = merged([...warming, ...developing]);
    if (edits.length === 0) return;
    const told = {
      ...(warming.length === 0 ? {} : { warming: value }),
      ...(developing.length === 0 || factor === undefined ? {} : { factor }),
    };
    yield {
      ...headerPlace(block, top.headerLine),
      message: messageOf(trials, told),
      related: trials.formulas.map((definition) => ({ definition, message: 'a trial on this mixer' })),
      fixes: [fixOf(told, edits)],
    };
  },
};

/** What is worth writing: how the mixer warms, how fast it develops, or both. */
interface Told {
  readonly warming?: Calibration;
  readonly factor?: WrittenFactor;
}

/** A factor on the development of some speeds with the band that the stages leave. */
interface WrittenFactor {
  readonly least: number;
  readonly most: number;
  readonly middle: number;
  readonly speeds: readonly number[];
}

/** The factor that the stages seen leave, where they close it in on both sides and leave out what is now believed. */
function developmentToWrite(trials: MixerTrials): WrittenFactor | undefined {
  const development = trials.development();
  if (!development.known) return undefined;
  const { least, most, speeds } = development.value;
  if (!(least > 0) || most === undefined || (least <= flourAlone && most >= 1 / flourAlone)) return undefined;
  return { least, most, middle: Math.sqrt(least * most), speeds };
}

function messageOf(trials: MixerTrials, { warming, factor }: Told): string {
  const said: string[] = [];
  if (warming !== undefined) {
    const { spreadBefore, spreadAfter, parameters } = warming;
    const before = spreadBefore.known
      ? `now it misses them by ${degreesApart(spreadBefore.value)}, calibrated by ${degreesApart(spreadAfter)}`
      : `calibrated it misses them by ${degreesApart(spreadAfter)}`;
    const open = parameters.filter((one) => !one.value.known).map((one) => quantityWords(one.quantity));
    const odd = oddOf(warming);
    said.push(
      `${before}.${open.length === 0 ? '' : ` They cannot tell ${listed(open)}.`}${odd === undefined ? '' : ` ${odd}`}`,
    );
  }
  if (factor !== undefined)
    said.push(
      `${warming === undefined ? 'by' : 'By'} the stages seen it develops dough ${figure(factor.least, 2)} to ${figure(factor.most, 2)} times as fast as worked out.${isFarOff(factor) ? ' No mixer is so far off: look the stages and the flour over first.' : ''}`,
    );
  return `“${trials.mixer.name}” can be calibrated from ${readingsWords(trials)}: ${said.join(' ')}`;
}

function fixOf({ warming, factor }: Told, edits: readonly RuleEdit[]): RuleFix {
  const told = (warming?.parameters ?? []).flatMap((one) => writtenValue(one) ?? []);
  if (factor !== undefined) told.push('how fast it develops dough');
  const title = `Write what the trials say: ${listed(told)}`;
  const isOdd =
    (warming !== undefined && oddOf(warming) !== undefined) || (factor !== undefined && isFarOff(factor));
  return isOdd ? { title, edits } : { title, edits, preferred: true };
}

function isFarOff({ middle }: WrittenFactor): boolean {
  return middle > believableFactor || middle < 1 / believableFactor;
}

/** What makes a fit doubtful, with what to do. */
function oddOf(warming: Calibration): string | undefined {
  return (
    coolerWhenFaster(warming) ??
    (warming.spreadAfter > contradictoryCelsius
      ? 'The readings contradict one another, or the programme was not the one written: look them over first.'
      : undefined)
  );
}

/** What to say where the fit has a faster speed warm less than a slower one, which no mixer does. */
function coolerWhenFaster({ parameters }: Calibration): string | undefined {
  const rates = parameters.flatMap(({ quantity, value }) =>
    quantity.kind === 'warms' && value.known ? [{ speed: quantity.speed, rate: value.value }] : [],
  );
  rates.sort((one, other) => one.speed - other.speed);
  const at = rates.findIndex(({ rate }, index) => index > 0 && rate < rates[index - 1]!.rate);
  return at < 0
    ? undefined
    : `By them speed ${rates[at]!.speed} would warm less than speed ${rates[at - 1]!.speed}, which no mixer does: look the readings over first.`;
}

/** `develops` on each speed that was used and has a line of its own. */
function developmentEdits(
  block: Block,
  said: SaidProperties,
  { data }: Mixer,
  factor: WrittenFactor,
): RuleEdit[] {
  return (said.get('speed') ?? []).flatMap(({ line, statement: { value } }): RuleEdit[] => {
    if (value?.form !== 'machineSpeed' || !factor.speeds.includes(value.number)) return [];
    const speed = findSpeed(data, value.number);
    const rate = speed.known ? developmentRate(data, speed.value) : speed;
    if (!rate.known) return [];
    const written = `${trimmed(rate.value * factor.middle, 2)} times`;
    const stated = quantityPlace(block, line, 'times');
    if (stated !== undefined) return [{ line, ...stated, insert: written }];
    const { end } = wordsOf(block, line);
    return [{ line, start: end, end, insert: `, develops ${written}` }];
  });
}

/** Edits that insert at one place become one, in their order: editors do not agree on what two of them mean. */
function merged(edits: readonly RuleEdit[]): RuleEdit[] {
  const made: RuleEdit[] = [];
  for (const edit of edits) {
    const at = made.findIndex(
      (one) => one.line === edit.line && one.start === edit.start && one.end === edit.end,
    );
    const before = made[at];
    if (before === undefined || edit.start !== edit.end) made.push(edit);
    else made[at] = { ...before, insert: before.insert + edit.insert };
  }
  return made;
}

function editsOf(block: Block, said: SaidProperties, { mixer, parameters }: Calibration): RuleEdit[] {
  const added: string[] = [];
  const edits: RuleEdit[] = [];
  for (const one of parameters) {
    const written = writtenValue(one);
    if (written === undefined) continue;
    const { quantity } = one;
    if (quantity.kind !== 'warms') {
      const line = said.get(quantity.kind)?.[0]?.line;
      if (line === undefined) added.push(written);
      else edits.push(wholeLine(block, line, written));
      continue;
    }
    const line = said
      .get('speed')
      ?.find(
        ({ statement: { value } }) => value?.form === 'machineSpeed' && value.number === quantity.speed,
      )?.line;
    const rate = written.slice(written.indexOf('warms'));
    if (line === undefined) {
      const rpm = mixer.speeds.find((speed) => speed.number === quantity.speed)?.rpm;
      if (rpm !== undefined) added.push(`speed ${quantity.speed} ${rpm} rpm, ${rate}`);
      continue;
    }
    const warms = quantityPlace(block, line, 'warming');
    const rpm = quantityPlace(block, line, 'turns');
    if (warms !== undefined) edits.push({ line, ...warms, insert: rate.slice('warms '.length) });
    else if (rpm !== undefined) edits.push({ line, start: rpm.end, end: rpm.end, insert: `, ${rate}` });
  }
  return added.length === 0 ? edits : [...edits, belowAll(block, added)];
}

function wholeLine(block: Block, line: number, written: string): RuleEdit {
  const { statement } = block.lines[line]!;
  const start = statement.kind === 'property' ? statement.keyword.start : 0;
  const end = statement.kind === 'property' ? statement.valueSpan.end : 0;
  return { line, start, end, insert: written };
}

/** New lines go below the last line that says something, before the blank ones that part it from the next section. */
function belowAll(block: Block, added: readonly string[]): RuleEdit {
  let line = block.lines.length - 1;
  while (line > 0 && block.lines[line]!.empty) line--;
  const end = block.lines[line]!.text.length;
  return { line, start: end, end, insert: added.map((text) => `\n  ${text}`).join('') };
}
