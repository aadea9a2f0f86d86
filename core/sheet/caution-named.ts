import type { Analysis } from '../analysis/analysis.ts';
import type { FormulaModel } from '../model/formula-model.ts';

/**
 * Cautions of what the text names beside the mixer: lye, boiling baths, hot fat, sheeter, divider and slicer. Words are
 * looked for whole, so that barley is no lye and olive oil no hot one, and what is done without is not spoken of. All of it
 * is common practice, no source.
 */
export function namedCautions({ resolved: { model } }: Analysis): string[] {
  const text = textOf(model);
  return [
    ...dangers.filter(({ isNamed }) => isNamed(text)).map(({ caution }) => caution),
    ...machineCautions(text.steps),
  ];
}

/** Where a formula names things, in lower case: steps with their remarks, baths, and what is weighed. */
interface NamedText {
  readonly steps: readonly string[];
  readonly baths: readonly string[];
  readonly weighed: readonly string[];
}

interface Danger {
  readonly isNamed: (text: NamedText) => boolean;
  readonly caution: string;
}

const lye = /\b(lye|caustic soda|sodium hydroxide|naoh)\b/g;
const boilingStep = /^(boil|poach|simmer|blanch)\b|\bto (the|a) boil\b|\b(boiling|simmering) \S+/g;
const boilingBath = /\b(boil|boiling|simmering|poaching)\b/g;
const boilingWater = /\bboiling (hot )?(water|milk)\b|\bwater,? boiling\b/g;
const fryingStep =
  /^fry\b|\b(deep|pan|shallow)[- ]fry\b|\bfrying\b|(?<!\bair[- ])\bfryer\b|\b(hot|frying) (fat|oil|lard|shortening)\b/g;
const fryingFat =
  /\b(frying|hot) (fat|oil|lard|shortening)\b|\b(fat|oil|lard|shortening) (for|to) (deep[- ])?fry(ing)?\b/g;

const dangers: readonly Danger[] = [
  {
    isNamed: ({ steps, baths, weighed }) => names([...steps, ...baths, ...weighed], lye),
    caution:
      'Lye burns skin and can blind: goggles, long gloves, apron. Lye goes into cold water, never water onto lye; nothing of aluminium; ' +
      'labelled, and locked away. Rinse a splash long under running water and call a doctor.',
  },
  {
    isNamed: ({ steps, baths, weighed }) =>
      names(steps, boilingStep) || names(baths, boilingBath) || names(weighed, boilingWater),
    caution:
      'Boiling liquid and its steam scald: a pot never more than half full, pieces lowered with a skimmer away from you, a dry floor and a clear way.',
  },
  {
    isNamed: ({ steps, baths, weighed }) =>
      names(steps, fryingStep) || names([...baths, ...weighed], fryingFat),
    caution:
      'Hot fat burns and can catch fire: never leave it, watch its thermometer, dry what goes in, keep lid and fire blanket at hand. No water onto burning fat.',
  },
];

/** The machines that a step may name, and what each does to a hand. A step `sheet` is a sheeter’s unless a pin does it. */
const machines: readonly { readonly name: string; readonly words: RegExp; readonly does: string }[] = [
  {
    name: 'sheeter',
    words:
      /\b(sheeter|dough brake|sheeting machine)\b|^sheet\b(?!\s*(pans?|trays?|cakes?)\b)(?!.*\b(pin|by hand)\b)/g,
    does: 'draws fingers in',
  },
  { name: 'divider', words: /\b(divider|dividing machine)\b/g, does: 'crushes and shears' },
  { name: 'slicer', words: /\b(slicer|slicing machine)\b/g, does: 'cuts to the bone' },
];

function machineCautions(steps: readonly string[]): string[] {
  const named = machines.filter(({ words }) => names(steps, words));
  if (named.length === 0) return [];
  const each = named.map(({ name, does }) => `the ${name} ${does}`).join(', ');
  return [
    `${each.charAt(0).toUpperCase()}${each.slice(1)}: guards shut, no hand near while it runs, off and unplugged before clearing and cleaning.`,
  ];
}

function textOf({ processes, sections }: FormulaModel): NamedText {
  const folded = (texts: readonly (string | undefined)[]): string[] =>
    texts.flatMap((text) => (text === undefined ? [] : [text.toLowerCase()]));
  return {
    steps: folded(
      processes.flatMap(({ header, steps }) => [
        header.part?.text,
        ...steps.map(({ step }) => [step.words.text, ...step.remarks].join(', ')),
      ]),
    ),
    baths: folded(sections.map(({ kind, name }) => (kind === 'bath' ? name?.text : undefined))),
    weighed: folded(
      sections.flatMap(({ name, lines }) => [
        name?.text,
        ...lines.map(({ statement }) => statement.name.text),
      ]),
    ),
  };
}

/** Whether one of the texts names one of the words, and not to say that it is not there. */
function names(texts: readonly string[], words: RegExp): boolean {
  return texts.some((text) =>
    [...text.matchAll(words)].some(
      ({ 0: found, index }) =>
        !/\b(no|not|never|without|instead of)\s+(an?\s+|the\s+|any\s+)?$/.test(text.slice(0, index)) &&
        !/^[- ]free\b/.test(text.slice(index + found.length)),
    ),
  );
}
