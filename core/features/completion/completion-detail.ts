import type { Analysis } from '../../analysis/analysis.ts';
import { findCatalogueMixer } from '../../catalogue/mixers.ts';
import { compositionMarkdown } from '../../facts/composition-words.ts';
import { escapeMarkdown, totalsMarkdown } from '../../facts/formula-words.ts';
import { sectionOf } from '../../facts/line-facts.ts';
import { sectionId } from '../../model/formula-model.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import { findMixer } from '../../model/found-mixer.ts';
import { partsOf } from '../../model/mentions.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import type { Rule } from '../../rules/engine/rule.ts';
import { rules } from '../../rules/engine/rule-catalogue.ts';
import { headerForms } from '../../syntax/line-forms.ts';
import { nameBetween } from '../../syntax/name-reading.ts';
import type { Block, SectionKind } from '../../syntax/tree.ts';
import { holdsIngredients, properties, sectionWords } from '../../syntax/vocabulary.ts';
import { type Message, message } from '../../words/message.ts';
import type { RulePage } from '../../words/rule-page-words.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { CompletionKind } from '../answers.ts';

/** Where a completion was offered. */
export interface CompletionPlace {
  readonly block: Block | undefined;
  readonly scope: Scope;
  readonly analysisOf: (definition: Pick<Definition, 'uri' | 'block'>) => Analysis | undefined;
  readonly uri: string;
  readonly speaker: Speaker;
  /** What the page of a rule says. */
  readonly pageOf: (rule: Rule) => RulePage;
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
      return found.kind === 'found' ? compositionMarkdown(found.ingredient, place.speaker) : undefined;
    }
    case 'part':
      return partWords(place, name.folded);
    case 'formula': {
      const [definition, second] = scope.find('formula', name.folded)[0] ?? [];
      const analysis =
        definition === undefined || second !== undefined ? undefined : place.analysisOf(definition);
      return analysis === undefined ? undefined : totalsMarkdown(analysis, place.speaker);
    }
    case 'mixer':
      return mixerWords(place, label);
    case 'rule': {
      const rule = rules.find(({ code }) => code === label);
      return rule === undefined ? undefined : [place.pageOf(rule).explanation ?? rule.explanation];
    }
    case 'section':
      return sectionWords.includes(label as SectionKind)
        ? wordsOfSection(label as SectionKind, place.speaker)
        : undefined;
    default:
      return undefined;
  }
}

function partWords(
  { block, uri, analysisOf, speaker }: CompletionPlace,
  folded: string,
): string[] | undefined {
  const part = block === undefined ? undefined : partsOf(block).get(folded);
  const analysis = block === undefined || part === undefined ? undefined : analysisOf({ uri, block });
  const solved =
    analysis === undefined || part === undefined
      ? undefined
      : sectionOf(analysis, sectionId(part.headerLine));
  if (solved === undefined) return undefined;
  const { totalGrams: grams, hydration: fraction, lines } = solved;
  const said: Message[] = [];
  if (grams !== undefined) said.push(message('section.all', { grams }));
  if (fraction !== undefined && solved.inBowl) said.push(message('totals.hydration-fact', { fraction }));
  const rows = lines.map((line) => speaker.say(lineMessage(escapeMarkdown(line.name), line.fraction)));
  return [...said.map(speaker.say), rows.join('\n')].filter((words) => words !== '');
}

function lineMessage(name: string, fraction: number | undefined): Message {
  return fraction === undefined
    ? message('part-detail.line', { name })
    : message('part-detail.line-share', { name, fraction });
}

function mixerWords({ scope, speaker }: CompletionPlace, label: string): string[] | undefined {
  const found = findMixer(nameBetween(label, 0, label.length), scope);
  if (found.kind !== 'found') return undefined;
  const { data, definition, mostGrams, leastGrams, kindAssumed } = found.mixer;
  const source = findCatalogueMixer(data.kind)?.source ?? message('provenance.common-practice');
  const named = { name: escapeMarkdown(label), written: data.kind };
  const said: Message[] = [message(kindAssumed ? 'mixer-detail.title-assumed' : 'mixer-detail.title', named)];
  if (mostGrams !== undefined)
    said.push(
      leastGrams === undefined
        ? message('mixer-detail.bowl-most', { mostGrams })
        : message('mixer-detail.bowl', { leastGrams, mostGrams }),
    );
  const speeds = data.speeds.flatMap(({ number, rpm }) =>
    rpm === undefined ? [] : [speaker.say(message('mixer-detail.speed', { number, rpm }))],
  );
  return [
    ...said.map(speaker.say),
    ...(speeds.length === 0 ? [] : [speeds.join('\n')]),
    speaker.say(
      definition === undefined
        ? message('mixer-detail.figures', { source })
        : message('mixer-detail.figures-own', { written: data.kind, source }),
    ),
  ];
}

function wordsOfSection(section: SectionKind, { say }: Speaker): string[] {
  const words = properties[section].map(({ word }) => word).filter((word) => word !== 'note');
  return [
    headerForms[section].map((form) => `\`${form}\``).join(' · '),
    ...(holdsIngredients(section) ? [say(message('section-detail.ingredients'))] : []),
    ...(words.length === 0 ? [] : [say(message('section-detail.properties', { words }))]),
  ];
}
