import type { Analysis } from '../analysis/analysis.ts';
import { findCatalogueMixer } from '../catalogue/mixers.ts';
import { sectionId } from '../model/formula-model.ts';
import { findIngredient } from '../model/ingredient.ts';
import { partsOf } from '../model/mentions.ts';
import { findMixer } from '../model/mixer.ts';
import type { Definition, Scope } from '../model/scope.ts';
import { rules } from '../rules/catalogue.ts';
import { headerForms } from '../syntax/line-forms.ts';
import { nameBetween } from '../syntax/names.ts';
import type { Block, SectionKind } from '../syntax/tree.ts';
import { holdsIngredients, properties, sectionWords } from '../syntax/vocabulary.ts';
import { mass, percent } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import { plainSpeaker } from '../words/speak.ts';
import type { CompletionKind } from './answers.ts';
import { compositionMarkdown } from './composition-words.ts';
import { escapeMarkdown, totalsMarkdown } from './formula-words.ts';
import { sectionOf } from './line-facts.ts';

/** Where a completion was offered. */
export interface CompletionPlace {
  readonly block: Block | undefined;
  readonly scope: Scope;
  readonly analysisOf: (definition: Pick<Definition, 'uri' | 'block'>) => Analysis | undefined;
  readonly uri: string;
}

/** More on one completion, as Markdown: what an ingredient is made of, what a part comes to, what a rule says. */
export function completionDetailOf(
  place: CompletionPlace,
  kind: CompletionKind,
  label: string,
): string | undefined {
  const said = detailOf(place, kind, label);
  return said === undefined || said.length === 0 ? undefined : said.join('\n\n');
}

function detailOf(
  place: CompletionPlace,
  kind: CompletionKind,
  label: string,
): readonly string[] | undefined {
  const { scope } = place;
  const name = nameBetween(label, 0, label.length);
  switch (kind) {
    case 'ingredient': {
      const found = findIngredient(name, scope);
      return found.kind === 'found' ? compositionMarkdown(found.ingredient, plainSpeaker) : undefined;
    }
    case 'part':
      return partWords(place, name.folded);
    case 'formula': {
      const [definition, second] = scope.find('formula', name.folded)[0] ?? [];
      const analysis =
        definition === undefined || second !== undefined ? undefined : place.analysisOf(definition);
      return analysis === undefined ? undefined : totalsMarkdown(analysis, plainSpeaker);
    }
    case 'mixer':
      return mixerWords(place, label);
    case 'rule': {
      const rule = rules.find(({ code }) => code === label);
      return rule === undefined ? undefined : [rule.explanation];
    }
    case 'section':
      return sectionWords.includes(label as SectionKind) ? wordsOfSection(label as SectionKind) : undefined;
    default:
      return undefined;
  }
}

function partWords({ block, uri, analysisOf }: CompletionPlace, folded: string): string[] | undefined {
  const part = block === undefined ? undefined : partsOf(block).get(folded);
  const analysis = block === undefined || part === undefined ? undefined : analysisOf({ uri, block });
  const solved =
    analysis === undefined || part === undefined
      ? undefined
      : sectionOf(analysis, sectionId(part.headerLine));
  if (solved === undefined) return undefined;
  const { totalGrams, hydration, lines } = solved;
  return [
    ...(totalGrams === undefined ? [] : [`${mass(totalGrams)} in all.`]),
    ...(hydration === undefined || !solved.inBowl ? [] : [`hydration **${percent(hydration)}**`]),
    lines
      .map(
        (line) =>
          `- ${escapeMarkdown(line.name)}${line.fraction === undefined ? '' : ` ${percent(line.fraction)}`}`,
      )
      .join('\n'),
  ].filter((words) => words !== '');
}

function mixerWords({ scope }: CompletionPlace, label: string): string[] | undefined {
  const found = findMixer(nameBetween(label, 0, label.length), scope);
  if (found.kind !== 'found') return undefined;
  const { data, definition, mostGrams, leastGrams, kindAssumed } = found.mixer;
  const usual = findCatalogueMixer(data.kind);
  const speeds = data.speeds.map(({ number, rpm }) => `- speed ${number}: ${rpm} rpm`).join('\n');
  const bowl =
    mostGrams === undefined
      ? []
      : [
          `Bowl: ${leastGrams === undefined ? 'up to ' : `${mass(leastGrams)} to `}${mass(mostGrams)} of dough.`,
        ];
  const source =
    definition === undefined
      ? usual === undefined
        ? 'common practice'
        : inMarks(usual.source)
      : `as its section says, the rest from the usual ${data.kind} (${usual === undefined ? 'common practice' : inMarks(usual.source)})`;
  return [
    `**${escapeMarkdown(label)}** — ${data.kind}${kindAssumed ? ', as its section does not say its kind' : ''}`,
    ...bowl,
    ...(speeds === '' ? [] : [speeds]),
    `_Figures: ${source}._`,
  ];
}

function wordsOfSection(section: SectionKind): string[] {
  const words = properties[section].map(({ word }) => word).filter((word) => word !== 'note');
  return [
    headerForms[section].map((form) => `\`${form}\``).join(' · '),
    ...(holdsIngredients(section) ? ['Holds ingredient lines.'] : []),
    ...(words.length === 0 ? [] : [`May say: ${words.join(', ')}.`]),
  ];
}
