import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Why something about mixing is not known: clauses that stand behind a colon, and what was assumed, in sentences. */
export const mixingReasons = {
  'flour.none': () => 'there is no flour in the dough',
  'flour.of': ({ name, reason }: Args<'name' | 'reason'>, say: Speaker) => `${name}: ${say.say(reason)}`,
  'flour.no-protein': () => 'the protein of the flour is not stated',
  'flour.no-ash': () => 'the ash of the flour is not stated',
  'flour.no-network': ({ name }: Args<'name'>) =>
    `${name} flour forms no gluten network that mixing could develop`,
  'flour.mostly-rye': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `more than ${say.percent(fraction)} of the flour is rye or other grain that forms no gluten network; mix it until even, it cannot be over-mixed`,
  'flour.mostly-other': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `more than ${say.percent(fraction)} of the flour forms no gluten network; mix it until even, it cannot be over-mixed`,
  'flour.protein-assumed': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `The protein of the flour is not stated: ${say.percent(fraction)} is assumed, so the bands are wide.`,
  'flour.type-alone': () =>
    'The type of a flour says how white it is and not how strong: the protein usual of it is taken, so the bands are wider. A section of its own may state its “protein”, “peak” and “stability”.',
  'flour.extrapolated': ({ lowFraction, highFraction }: Args<'lowFraction' | 'highFraction'>, say: Speaker) =>
    `The protein lies outside ${say.number(lowFraction * 100, 1)} to ${say.percent(highFraction)}, so the absorption is extrapolated.`,
  'flour.narrows': () => 'Rye and other grain that forms no gluten network narrow the tolerance to mixing.',

  'mixing.no-lines': () => 'the formula has no lines yet',
  'mixing.no-programme': () => 'the formula has no mixing programme',
  'mixing.no-mixer': () => 'the mixer is not known',
  'mixing.mixer-not-known': ({ name }: Args<'name'>) => `the mixer “${name}” is not known`,
  'mixing.no-weights': () => 'the weights of the dough are not known yet',
  'mixing.portion-unsaid': ({ name }: Args<'name'>) => `how much ${name} goes in first is not said`,
  'mixing.line-unfinished': () => 'a line of the mixing programme is not finished',
  'mixing.water-stated': ({ waterCelsius }: Args<'waterCelsius'>, say: Speaker) =>
    `the file states the water at ${say.celsius(waterCelsius)}`,
  'mixing.no-rpm': ({ number }: Args<'number'>) =>
    `speed ${number} of the mixer has no rpm; write it in the mixer’s section`,
  'mixing.no-such-rpm': ({ number, rpm }: Args<'number' | 'rpm'>, say: Speaker) =>
    `no mixer turns at ${say.number(rpm, 1)} rpm; correct speed ${number} in the mixer’s section`,
  'mixing.too-gentle': () => 'work so gentle never develops it',
  'mixing.never-together': () => 'the programme never works flour and water together',
  'mixing.too-hot': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `it would be hotter than ${say.celsius(limitCelsius)}, and no dough is mixed so warm`,
  'mixing.over': () => 'the programme is over by then',
  'mixing.not-asked': () => 'only temperatures are asked for',
  'mixing.no-limit': () => 'no temperature was asked for',
  'mixing.no-end': () => 'the end temperature is not known',
  'mixing.never-so-warm': () => 'at the last speed the dough never gets that warm',
  'mixing.no-temperature': () => 'the figures of the mixer lead to no temperature',
  'mixing.nothing-warm': () => 'nothing with a known temperature is in the bowl',
  'mixing.nothing-yet': () => 'nothing is in the bowl by then',
  'mixing.on-the-way': () => 'the temperatures on the way are not known',
  'mixing.works-too-early': () =>
    'The programme works before flour and water are both in the bowl; those minutes develop nothing.',
  'mixing.gentle-speed': ({ number }: Args<'number'>) =>
    `Speed ${number} is so gentle that it mixes more than it develops: work counts in full only above a least intensity.`,
  'mixing.gentle-work': () =>
    'The work is so gentle that it mixes more than it develops: work counts in full only above a least intensity.',

  'conversion.no-speeds': () => 'the other mixer states no speeds',
  'conversion.too-long': ({ hours }: Args<'hours'>, say: Speaker) =>
    `the other mixer would need more than ${say.count(hours, { one: 'an hour', other: '# hours' })}`,

  'fermentation.nothing-raises': () => 'nothing in the formula raises the dough',

  'heat.amount-not-known': ({ name }: Args<'name'>) => `the amount of ${name} is not known`,
  'heat.temperature-not-known': ({ name }: Args<'name'>) => `the temperature of ${name} is not known`,
  'heat.no-target': () => 'the desired dough temperature is not stated',
  'heat.no-room': () => 'the temperature of the room is not stated',
  'heat.no-tap': () => 'the temperature of the tap water is not stated',
  'heat.no-water-temperature': () => 'the temperature of the water is not stated',
  'heat.no-rise': () => 'the warming by mixing is not known',
  'heat.no-water': () => 'there is no water to temper',
  'heat.no-solution': () => 'the temperatures stated lead to no water temperature',
  'heat.nothing': () => 'there is nothing in the bowl',

  'rule-of-thumb.ice': () => 'the rule of thumb does not count ice that is weighed in',
  'rule-of-thumb.no-flour': () => 'no flour is loaded dry, so there is no flour temperature',
  'rule-of-thumb.no-friction': () =>
    'mixing so long or so strong has no friction factor that a rule of thumb could use',
  'rule-of-thumb.no-lever': () => 'no water makes a difference to this dough',
  'rule-of-thumb.no-water': () => 'the rule of thumb leads to no water that could be drawn',

  'trial.no-yield': () => 'the formula has no yield',
  'trial.no-size': () => 'the formula has no yield, so what went in is not known',
  'trial.no-water': () => 'the trial does not state how warm the water was',
  'trial.no-end': () => 'the trial does not state how warm the dough was at the end',
  'trial.no-dough-weight': () => 'the trial does not state what the dough weighed',
  'trial.line-unfinished': () => 'a line of the trial’s own programme is not finished',
  'trial.no-hydration': () => 'the hydration is not known',
  'trial.other-size': () => 'it was a batch of another size than the formula’s',
  'trial.no-loss': () => 'the dough weighs what went in',
  'trial.not-apart': () => 'flour and water do not both go in by themselves',
  'trial.no-temperatures': () => 'the temperatures of what went in are not known',
};
