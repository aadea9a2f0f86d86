import type { Analysis } from '../analysis/analysis.ts';
import type { SolvedSection } from '../calc/formula/formula-result.ts';
import type { Ingredient } from '../model/found-ingredient.ts';
import { firstOf } from '../text/element.ts';
import { leastWeighedGrams } from '../text/figures.ts';
import { type Message, message } from '../words/message.ts';
import { escapeMarkdown } from './formula-words.ts';
import type { LineFacts } from './line-facts.ts';

/** What a part comes to. */
export function sectionMessages(solved: SolvedSection): Message[] {
  const { totalGrams: grams, flourGrams, hydration, cultureGrams, steamGrams, keepBackGrams } = solved;
  const said: Message[] = [];
  if (grams !== undefined)
    said.push(
      flourGrams !== undefined && flourGrams > 0
        ? message('section.all-flour', { grams, otherGrams: flourGrams })
        : message('section.all', { grams }),
    );
  if (hydration !== undefined) said.push(message('totals.hydration-fact', { fraction: hydration }));
  if (cultureGrams !== undefined) said.push(message('section.culture', { grams: cultureGrams }));
  if (steamGrams !== undefined) said.push(message('section.steam', { grams: steamGrams }));
  if (keepBackGrams !== undefined) said.push(message('section.kept-back', { grams: keepBackGrams }));
  if (!solved.inBowl) said.push(message('section.outside'));
  return said;
}

/** A percent and what it is of: the flour of its section, or its line of 100% where it has no flour. */
function shareMessage(fraction: number, section: SolvedSection): Message {
  if (section.kind === 'dough') return message('line.of-flour', { fraction });
  const part = escapeMarkdown(section.name);
  if (section.flourGrams === undefined || section.flourGrams > 0)
    return message('line.of-part-flour', { fraction, part });
  const whole = section.lines.filter((line) => line.fraction !== undefined && isNear(line.fraction, 1));
  return whole.length === 1
    ? message('line.of-line', { fraction, name: escapeMarkdown(firstOf(whole).name) })
    : message('line.in-part', { fraction, part });
}

const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 1e-9;

/** What an ingredient line comes to. */
export function lineMessages(analysis: Analysis, facts: LineFacts): Message[] {
  const { line, section, ingredient, final } = facts;
  const parts: Message[] = [];
  if (line.fraction !== undefined) parts.push(shareMessage(line.fraction, section));
  if (line.grams !== undefined) parts.push(message('line.weight', { grams: line.grams }));
  const name = escapeMarkdown(line.name);
  const said: Message[] = [
    parts.length === 0 ? message('line.title', { name }) : message('line.title-figures', { name, parts }),
  ];
  if (line.unsolved !== undefined) said.push(message('line.not-known'));
  const drawn = final?.drawnGrams ?? 0;
  if (final?.grams !== undefined && drawn > 0)
    said.push(
      final.grams < leastWeighedGrams
        ? message('line.all-drawn')
        : message('line.rest-drawn', { grams: final.grams, otherGrams: drawn }),
    );
  if (line.part) {
    const part = analysis.solved?.sections.find((one) => one.id === line.key);
    if (part?.hydration !== undefined)
      said.push(message('line.part-hydration', { fraction: part.hydration }));
  } else if (ingredient === undefined) said.push(message('line.not-defined'));
  else if (!ingredient.isFlour && ingredient.role !== 'water' && line.grams !== undefined)
    said.push(waterMessage(ingredient, line.grams));
  return said;
}

/** How much water so much of an ingredient brings. */
function waterMessage({ composition: { water } }: Ingredient, grams: number): Message {
  if (water === undefined) return message('line.water-not-known');
  return water > 0.005
    ? message('line.brings-water', { grams: water * grams, fraction: water })
    : message('line.no-water');
}
