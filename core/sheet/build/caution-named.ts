import type { Analysis } from '../../analysis/analysis.ts';
import type { FormulaModel } from '../../model/formula-model.ts';
import { type Message, message } from '../../words/message.ts';

/**
 * Cautions of what the text names beside the mixer: lye, boiling baths, hot fat, sheeter, divider and slicer. Words are
 * looked for whole, so that barley is no lye and olive oil no hot one, and what is done without is not spoken of. All of it
 * is common practice, no source.
 */
export function namedCautions({ resolved: { model } }: Analysis): Message[] {
  const text = textOf(model);
  return [
    ...dangers.filter(({ isNamed }) => isNamed(text)).map(({ code }) => message(code)),
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
  readonly code: 'caution.lye' | 'caution.boiling' | 'caution.frying';
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
    code: 'caution.lye',
  },
  {
    isNamed: ({ steps, baths, weighed }) =>
      names(steps, boilingStep) || names(baths, boilingBath) || names(weighed, boilingWater),
    code: 'caution.boiling',
  },
  {
    isNamed: ({ steps, baths, weighed }) =>
      names(steps, fryingStep) || names([...baths, ...weighed], fryingFat),
    code: 'caution.frying',
  },
];

/** The machines that a step may name, and what each does to a hand. A step `sheet` is a sheeter’s unless a pin does it. */
const machines: readonly {
  readonly code: 'caution.sheeter' | 'caution.divider' | 'caution.slicer';
  readonly words: RegExp;
}[] = [
  {
    code: 'caution.sheeter',
    words:
      /\b(sheeter|dough brake|sheeting machine)\b|^sheet\b(?!\s*(pans?|trays?|cakes?)\b)(?!.*\b(pin|by hand)\b)/g,
  },
  { code: 'caution.divider', words: /\b(divider|dividing machine)\b/g },
  { code: 'caution.slicer', words: /\b(slicer|slicing machine)\b/g },
];

function machineCautions(steps: readonly string[]): Message[] {
  const facts = machines.flatMap(({ code, words }) => (names(steps, words) ? [message(code)] : []));
  return facts.length === 0 ? [] : [message('caution.machines', { facts })];
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
