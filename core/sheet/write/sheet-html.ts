import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { originWords, type SheetOrigin } from '../build/origin.ts';
import { conditionWords, factWords, type Told, toldOf } from '../build/sheet-words.ts';
import { type Child, element, htmlPage, type Markup } from './markup.ts';
import { blockSection } from './sheet-html-blocks.ts';
import { chartSection } from './sheet-html-charts.ts';
import { cautionsSection, outcomeSections, trialSections } from './sheet-html-outcome.ts';
import { pageFoot, sheetStyle } from './sheet-html-style.ts';
import { clockSection, mixingSection } from './sheet-html-work.ts';
import type { FiledSheet } from './sheet-json.ts';

/** Batch sheets as one page that prints as it stands, each from a page of its own on. */
export function sheetsAsHtml(sheets: readonly FiledSheet[], speaker: Speaker): string {
  const names = [...new Set(sheets.map(({ view }) => view.formula))].join(', ');
  const feet = sheets.map(({ view, origin }, index) =>
    pageFoot(`sheet-${index + 1}`, view.formula, origin, speaker),
  );
  const articles = sheets.map(({ view, origin }, index) =>
    article(toldOf(view, speaker), origin, `sheet-${index + 1}`),
  );
  const title = speaker.say(message('sheet.title', { name: names }));
  return htmlPage(speaker.language, title, sheetStyle + feet.join(''), [element('main', {}, ...articles)]);
}

function article(told: Told, origin: SheetOrigin, id: string): Markup {
  const { view } = told;
  return element(
    'article',
    { class: `sheet ${id}`, 'aria-labelledby': id },
    element(
      'header',
      {},
      element('h1', { id, dir: 'auto' }, view.formula),
      line('makes', view.makes.join(' · ')),
      line('batches', view.batches.text),
      line('from', originWords(origin, told.speaker)),
      sentences('lead', told.lead),
      pairs(
        'facts',
        view.facts.map((fact) => [fact.label, factWords(fact, told), told.findings(`fact ${fact.key}`)]),
      ),
      pairs(
        'facts day',
        view.conditions.map((condition) => [condition.label, conditionWords(condition, told), []]),
      ),
    ),
    ...view.blocks.map((block, b) => blockSection(block, b, told, `${id}-block-${b + 1}`)),
    mixingSection(told, `${id}-mixing`),
    clockSection(told, `${id}-clock`),
    ...outcomeSections(told, id),
    cautionsSection(told, `${id}-cautions`),
    // Nobody works from trials and charts: the pages that are worked from come before.
    ...trialSections(told, id),
    ...view.charts.map((chart, index) => chartSection(chart, told, `${id}-chart-${index + 1}`)),
  );
}

function line(name: string, text: string | undefined): Child {
  return text === undefined || text === '' ? undefined : element('p', { class: name, dir: 'auto' }, text);
}

function sentences(name: string, all: readonly string[]): Child {
  if (all.length === 0) return undefined;
  return element('ul', { class: name }, ...all.map((one) => element('li', { dir: 'auto' }, one)));
}

function pairs(
  name: string,
  all: readonly (readonly [label: string, value: string, findings: readonly string[]])[],
): Child {
  if (all.length === 0) return undefined;
  const said = all.map(([label, value, findings]) =>
    element(
      'div',
      {},
      element('dt', {}, label),
      element('dd', { dir: 'auto' }, value),
      ...findings.map((finding) => element('dd', { class: 'note', dir: 'auto' }, finding)),
    ),
  );
  return element('dl', { class: name }, ...said);
}
