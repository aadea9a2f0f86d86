import type { Ingredient } from '../model/found-ingredient.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { flourFigures } from './flour-words.ts';
import { escapeMarkdown } from './formula-words.ts';
import { inMarkdown } from './in-markdown.ts';

/** What is known of a flour, each figure with where it comes from. */
export function flourMarkdown(ingredient: Ingredient, speaker: Speaker): string[] {
  const rows = flourFigures(ingredient).map((one) => `- ${speaker.say(one)}`);
  return rows.length === 0 ? [] : [rows.join('\n')];
}

/** What is in an ingredient, and where its figures come from. */
export function compositionMarkdown(ingredient: Ingredient, speaker: Speaker): string[] {
  const names = ['water', 'protein', 'fat', 'carbohydrate', 'sugars', 'fibre', 'ash'] as const;
  const parts: Message[] = names.flatMap((name) => {
    const fraction = ingredient.composition[name];
    return fraction === undefined ? [] : [message(`composition.${name}`, { fraction })];
  });
  const kilojoules = ingredient.kilojoulesPer100Grams;
  if (kilojoules !== undefined) parts.push(message('composition.energy', { kilojoules }));
  const name = escapeMarkdown(ingredient.name);
  return [
    speaker.say(message('composition.title', { name, role: message(`role.${ingredient.role}`) })),
    speaker.say(parts.length === 0 ? message('composition.not-known') : message('totals.line', { parts })),
    ...(ingredient.flour === undefined ? [] : flourMarkdown(ingredient, speaker)),
    speaker.say(message('composition.figures', { source: inMarkdown(ingredient.source) })),
  ];
}
