/** The closed lists of words in the notation: what a line may say where only some words mean something. */

export const roleWords = [
  'flour',
  'water',
  'salt',
  'yeast',
  'fat',
  'sugar',
  'egg',
  'dairy',
  'seeds',
] as const;
export const grains = [
  'wheat',
  'rye',
  'spelt',
  'emmer',
  'einkorn',
  'khorasan',
  'durum',
  'barley',
  'oats',
  'buckwheat',
  'rice',
  'maize',
] as const;
export const millings = ['white', 'medium', 'wholemeal'] as const;
export const mixerKinds = ['hand', 'spiral', 'planetary', 'fork', 'twin arm', 'horizontal'] as const;
export const doughForms = ['tin', 'hearth'] as const;
export const labels = ['EU', 'US'] as const;
/** The trade’s three degrees of mixing. */
export const degreeWords = ['short', 'improved', 'intensive'] as const;
export const iceSupplies = ['to hand'] as const;
/** Which doughs may go into one load of the oven. */
export const loadSharings = ['same bake', 'never'] as const;

/** The words that start a step with a meaning; others are kept as written. */
export const stepWords = [
  'bulk',
  'fold',
  'rest',
  'divide',
  'shape',
  'retard',
  'proof',
  'enclose',
  'sheet',
  'score',
  'boil',
  'bake',
  'cool',
] as const;

/** The textbook words for the state of a dough, in their order. */
export const stageWords = [
  'pick-up',
  'clean-up',
  'developing',
  'developed',
  'let-down',
  'breakdown',
] as const;

/** What hands and eyes say of a dough at the mixer, from early to late. */
export const feelWords = [
  'rough',
  'tears',
  'sticks to the bowl',
  'sticky',
  'wet',
  'clears the bowl',
  'smooth',
  'stretches',
  'shiny',
  'window',
  'slack',
  'stringy',
] as const;
