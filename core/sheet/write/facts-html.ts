import type { Speaker } from '../../words/speaker.ts';
import type { FactsSection, SheetNode } from '../build/sheet-document.ts';
import { type Child, element, type Markup } from './markup.ts';
import { factWords, foundAt } from './sheet-sentences.ts';

/** Blanks to be written in by hand, side by side. */
function blanks({ facts }: FactsSection): Markup {
  const all = facts.map(({ id, label, blank }) =>
    element(
      'span',
      { 'data-id': id },
      `${label} `,
      element('span', { class: 'blank' }),
      blank === undefined || blank === '' ? undefined : ` ${blank}`,
    ),
  );
  return element('p', { class: 'blanks' }, ...all);
}

/** Facts of a section of their own: side by side, or blanks. */
export function factsBody(section: FactsSection, speaker: Speaker): Child {
  return section.name === 'log' ? blanks(section) : pairs(section, speaker);
}

/** The answers at the head: a sign, a figure and a word each, the rest small below. */
function answers({ facts }: FactsSection, speaker: Speaker): Child {
  const said = facts.map((fact) =>
    element(
      'div',
      { 'data-id': fact.id, class: fact.verdict?.level },
      element('dt', {}, fact.label),
      element(
        'dd',
        { dir: 'auto' },
        `${fact.verdict?.sign ?? ''} ${fact.value}`,
        fact.verdict === undefined || fact.verdict.word === ''
          ? undefined
          : element('span', { class: 'word' }, ` ${fact.verdict.word}`),
      ),
      ...fact.notes.map((one) => element('dd', { class: 'note', dir: 'auto' }, one)),
    ),
  );
  // Nothing unfolds on paper: what was found at them stands below, across all three.
  const found = facts.flatMap((fact) =>
    foundAt(fact, speaker).map((one) => element('li', { dir: 'auto', 'data-id': fact.id }, one)),
  );
  return element(
    'div',
    {},
    element('dl', { class: 'glance' }, ...said),
    found.length === 0 ? undefined : element('ul', { class: 'findings' }, ...found),
  );
}

/** Facts below the heading, each with what was found at it. */
export function pairs(section: FactsSection, speaker: Speaker): Child {
  if (section.name === 'glance') return answers(section, speaker);
  const said = section.facts.map((fact) =>
    element(
      'div',
      { 'data-id': fact.id },
      element('dt', {}, fact.label),
      element('dd', { dir: 'auto' }, factWords(fact)),
      ...foundAt(fact, speaker).map((one) => element('dd', { class: 'note', dir: 'auto' }, one)),
    ),
  );
  return element('dl', { class: section.name === 'day' ? 'facts day' : 'facts' }, ...said);
}

/** What was found at a node as a list, or nothing. */
export function foundList(node: SheetNode, speaker: Speaker): Child {
  return sentences('findings', foundAt(node, speaker));
}

/** Sentences as a list of that class, or nothing. */
export function sentences(name: string, all: readonly string[]): Child {
  if (all.length === 0) return undefined;
  return element('ul', { class: name }, ...all.map((one) => element('li', { dir: 'auto' }, one)));
}
