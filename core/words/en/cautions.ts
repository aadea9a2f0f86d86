import { stopFirst } from '../../text/stop-first.ts';
import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The usual cautions of the work. */
export const cautions = {
  'caution.hot-water': ({ waterCelsius }: Args<'waterCelsius'>, say: Speaker) =>
    `Water at ${say.celsius(waterCelsius)} can scald, and kills yeast that meets it: pour it away from hands, and keep the yeast off it.`,
  'caution.dough-stands': (standing: Standing, say: Speaker) => `The dough stands ${stands(standing, say)}`,
  'caution.part-stands': (standing: Standing & Args<'part'>, say: Speaker) =>
    `${standing.part} stands ${stands(standing, say)}`,
  'caution.step': ({ written }: Args<'written'>) => `“${written}”`,
  'caution.core': ({ celsius, limitCelsius }: Args<'celsius' | 'limitCelsius'>, say: Speaker) =>
    `Done inside at about ${say.celsius(celsius)} to ${say.celsius(limitCelsius)}, by a thermometer in the middle of a loaf.`,
  'caution.dark-wheat': ({ microgramsPerKilogram }: Args<'microgramsPerKilogram'>, say: Speaker) =>
    `A dark crust ${acrylamide} wheat bread is ${level(microgramsPerKilogram, say)}`,
  'caution.dark-other': ({ microgramsPerKilogram }: Args<'microgramsPerKilogram'>, say: Speaker) =>
    `A dark crust ${acrylamide} bread that is not mainly of wheat is ${level(microgramsPerKilogram, say)}`,
  'caution.dark-wheat-at': (
    { celsius, microgramsPerKilogram }: Args<'celsius' | 'microgramsPerKilogram'>,
    say: Speaker,
  ) =>
    `Baked at up to ${say.celsius(celsius)}, a dark crust ${acrylamide} wheat bread is ${level(microgramsPerKilogram, say)}`,
  'caution.dark-other-at': (
    { celsius, microgramsPerKilogram }: Args<'celsius' | 'microgramsPerKilogram'>,
    say: Speaker,
  ) =>
    `Baked at up to ${say.celsius(celsius)}, a dark crust ${acrylamide} bread that is not mainly of wheat is ${level(microgramsPerKilogram, say)}`,
  'caution.lye': () =>
    'Lye burns skin and can blind: goggles, long gloves, apron. Lye goes into cold water, never water onto lye; nothing of aluminium; labelled, and locked away. Rinse a splash long under running water and call a doctor.',
  'caution.boiling': () =>
    'Boiling liquid and its steam scald: a pot never more than half full, pieces lowered with a skimmer away from you, a dry floor and a clear way.',
  'caution.frying': () =>
    'Hot fat burns and can catch fire: never leave it, watch its thermometer, dry what goes in, keep lid and fire blanket at hand. No water onto burning fat.',
  'caution.machines': ({ facts }: Args<'facts'>, say: Speaker) =>
    `Guards shut, no hand near while it runs, off and unplugged before clearing and cleaning: ${say.list(facts.map(say.say))}.`,
  'caution.sheeter': () => 'the sheeter draws fingers in',
  'caution.divider': () => 'the divider crushes and shears',
  'caution.slicer': () => 'the slicer cuts to the bone',
  'caution.raw': () => 'Raw flour and raw dough are not to be tasted.',
  'caution.raw-egg': () => 'Raw flour, raw dough and raw egg are not to be tasted.',
  'caution.by-hand': () => `Pour flour low and slowly: ${dust}`,
  'caution.machine': () =>
    `No hands in a running bowl; guards stay shut. ${stopFirst} Start slow, so that no flour flies: ${dust}`,
  'caution.heat-and-weight': () =>
    'Oven, trays and steam burn. Sacks, bowls and full trays are heavy: use the aids there are.',
  'caution.allergens': () =>
    'Allergens are what the files say; the producer answers for the label. Follow your machine’s manual, local food law and licensed advice.',
};

/** What flour dust does: common practice, as the authorities for safety at work have it. */
const dust = 'its dust causes bakers’ asthma, and a cloud of it can explode.';

const acrylamide =
  'holds more acrylamide: bake golden rather than brown. The benchmark of Regulation (EU) 2017/2158 for soft';

function level(microgramsPerKilogram: number, say: Speaker): string {
  return `${say.number(microgramsPerKilogram, 0)} µg/kg; it is no limit, and only a laboratory tells the figure of a loaf.`;
}

type Standing = Args<'names' | 'seconds' | 'celsius' | 'limitCelsius' | 'facts'>;

function stands({ names, seconds, celsius, limitCelsius, facts }: Standing, say: Speaker): string {
  return `${say.duration(seconds)} between ${say.celsius(celsius)} and ${say.celsius(limitCelsius)} (${say.list(facts.map(say.say))}) with ${say.list(names)} in it: keep such times short and the bench clean, and follow local food law.`;
}
