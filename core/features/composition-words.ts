import { absorptionAt14, peakMinutes, proteinAt14, stabilityMinutes } from '../calc/flour.ts';
import type { Known } from '../calc/known.ts';
import type { Ingredient } from '../model/ingredient.ts';
import { minutes, percent, trimmed } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import type { Message } from '../words/message.ts';
import { flourTypeWords } from './flour-type-words.ts';
import { escapeMarkdown } from './formula-words.ts';
import { inMarkdown } from './in-markdown.ts';

/** What is known of a flour, each figure with where it comes from. */
export function flourMarkdown(ingredient: Ingredient): string[] {
  const flour = ingredient.flour!;
  const rows: string[] = [];
  const row = (label: string, value: Known<number, Message>, words: (value: number) => string): void => {
    if (value.known) rows.push(`- ${label} ${words(value.value)} _(${value.provenance})_`);
  };
  row('protein, at 14 % moisture:', proteinAt14(flour), percent);
  row('absorption, at 14 % moisture:', absorptionAt14(flour), percent);
  if (flour.grain !== 'rye') {
    row('peak', peakMinutes(flour), (value) => minutes(value));
    row('stability', stabilityMinutes(flour), (value) => minutes(value));
  }
  const type = flourTypeWords(ingredient);
  if (type !== undefined) rows.push(`- ${type}`);
  return rows.length === 0 ? [] : [rows.join('\n')];
}

/** What is in an ingredient, and where its figures come from. */
export function compositionMarkdown(ingredient: Ingredient): string[] {
  const names = ['water', 'protein', 'fat', 'carbohydrate', 'sugars', 'fibre', 'ash'] as const;
  const parts = names.flatMap((name) => {
    const value = ingredient.composition[name];
    return value === undefined ? [] : [`${name} ${percent(value)}`];
  });
  const said = [
    `**${escapeMarkdown(ingredient.name)}** — ${ingredient.role === 'other' ? 'ingredient' : ingredient.role}`,
  ];
  const energy = ingredient.kilojoulesPer100Grams;
  if (energy !== undefined) parts.push(`energy ${trimmed(energy, 0)} kJ in 100 g _(given)_`);
  said.push(parts.length === 0 ? 'Nothing is known of what is in it.' : parts.join(' · '));
  if (ingredient.flour !== undefined) said.push(...flourMarkdown(ingredient));
  said.push(`_Figures: ${inMarks(inMarkdown(ingredient.source))}._`);
  return said;
}
