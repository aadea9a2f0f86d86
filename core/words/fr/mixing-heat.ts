import type { mixingHeat as english } from '../en/mixing-heat.ts';
import type { Translation } from '../message.ts';

/** Le bilan de chaleur, et à côté la règle de la température de base. */
export const mixingHeat: Translation<typeof english> = {
  'provenance.given': () => 'donné',
  'provenance.measured': () => 'mesuré',
  'provenance.published': () => 'publié',
  'provenance.common-practice': () => 'usage courant',
  'provenance.in-section': () => 'donné dans sa section',

  'heat-bill.hydration': () => 'chaleur d’hydratation',
  'heat-bill.working': () => 'pétrissage',
  'heat-bill.room': () => 'fournil',
  'heat-bill.ice': () => 'glace',
  'heat-bill.change': ({ apartCelsius }, say) =>
    `${apartCelsius > 0 ? '+' : ''}${say.celsiusApart(apartCelsius)}`,
  'heat-bill.head': () => 'chaleur',
  'heat-bill.head-change': () => 'effet sur la pâte',
  'heat-bill.provenance': ({ source }, say) =>
    `_(${say.say(source)} : les chaleurs massiques sont publiées, l’échauffement au pétrissage est notre propre ajustement)_`,

  'comparison.rule': () => 'température de base',
  'comparison.balance': () => 'bilan de chaleur',
  'comparison.water': () => 'eau de coulage',
  'comparison.dough': () => 'température de pâte voulue',
  'comparison.flour': ({ celsius }, say) => `farine à ${say.celsius(celsius)}`,
  'comparison.preferment': ({ celsius }, say) => `préferment à ${say.celsius(celsius)}`,
  'comparison.room': ({ celsius }, say) => `fournil à ${say.celsius(celsius)}`,
  'comparison.others': () => 'tout le reste dans la cuve',
  'comparison.friction-given': () => 'facteur d’échauffement, donné',
  'comparison.friction-mild': () => 'facteur d’échauffement d’un jour tempéré',
  'comparison.working': () => 'pétrissage',
  'comparison.hydration': () => 'chaleur d’hydratation',
  'comparison.agree': ({ apartCelsius }, say) =>
    `La température de base et le bilan s’accordent à ${say.celsiusApart(apartCelsius)} près.`,
  'comparison.warmer': ({ apartCelsius }, say) =>
    `La température de base demande une eau plus chaude de ${say.celsiusApart(apartCelsius)}.`,
  'comparison.colder': ({ apartCelsius }, say) =>
    `La température de base demande une eau plus froide de ${say.celsiusApart(apartCelsius)}.`,
  'comparison.warmer-because': (off, say) =>
    `La température de base demande une eau plus chaude de ${say.celsiusApart(off.apartCelsius)} ; ${say.celsiusApart(off.partCelsius)} parce que ${say.say(off.reason)}.`,
  'comparison.colder-because': (off, say) =>
    `La température de base demande une eau plus froide de ${say.celsiusApart(off.apartCelsius)} ; ${say.celsiusApart(off.partCelsius)} parce que ${say.say(off.reason)}.`,
  'comparison.because-flour': () => 'cette règle compte la farine pour autant que l’eau',
  'comparison.because-preferment': () => 'cette règle compte le préferment pour autant que l’eau',
  'comparison.because-others': () => 'cette règle ne compte que la farine et l’eau',
  'comparison.because-day': () =>
    'le fournil et le facteur d’échauffement y tiennent lieu du pétrissage, de l’hydratation et de ce que prend le fournil, un autre jour',

  'heat.from-tap': ({ tapCelsius, doughCelsius }, say) =>
    `Avec toute son eau du robinet, à ${say.celsius(tapCelsius)}, la pâte finirait à ${say.celsius(doughCelsius)}.`,
  'heat.minutes-left': ({ minutes, limitCelsius }, say) =>
    `Encore ${say.minutes(minutes)} à la dernière vitesse et elle est trop chaude, au-dessus de ${say.celsius(limitCelsius)}.`,
  'heat.too-warm-from-start': ({ limitCelsius }, say) =>
    `Elle est trop chaude, au-dessus de ${say.celsius(limitCelsius)}, dès le début.`,
  'heat.too-warm-after': ({ minutes, limitCelsius }, say) =>
    `Elle est trop chaude, au-dessus de ${say.celsius(limitCelsius)}, après ${say.minutes(minutes)}.`,
};
