import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What stands around the changes of a comparison: its verdict, heads, and what became of each formula. */
export const comparisonPage = {
  'comparison-page.title': () => 'What changed',
  'comparison-page.same': () => 'Nothing differs.',
  'comparison-page.outside': () => 'Only lines outside of any section differ.',
  'comparison-page.layout': () =>
    'Nothing a baker weighs differs: only blanks, comments or the order of sections.',
  'comparison-page.wording': () => 'The same figures are written differently.',
  'comparison-page.changed': () => 'What a baker weighs or does differs.',

  'comparison-page.what': () => 'what',
  'comparison-page.before': () => 'before',
  'comparison-page.after': () => 'now',
  'comparison-page.by': () => 'by',
  'comparison-page.not-there': () => 'not there',
  'comparison-page.removed': () => 'removed',
  'comparison-page.new': () => 'new',
  'comparison-page.line': () => 'line',
  'comparison-page.parts': () => 'parts',
  'comparison-page.place': ({ file, number }: Args<'file' | 'number'>, say: Speaker) =>
    `${file}, line ${say.number(number, 0)}`,

  'comparison-page.renamed': ({ name }: Args<'name'>) => `renamed from ${name}`,
  'comparison-page.named-in': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: 'also in # formula', other: 'also in # formulas' }),
  'comparison-page.named-on': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: 'in # ingredient list', other: 'in # ingredient lists' }),
  'comparison-page.moved': ({ file }: Args<'file'>) => `moved from ${file}`,
  'comparison-page.only-layout': () => 'only layout and comments differ',
  'comparison-page.same-figures': () => 'written differently, the same figures',
  'comparison-page.other-order': () => 'the same lines in another order',

  'comparison-page.finding-new': () => 'new',
  'comparison-page.finding-now': () => 'now',
  'comparison-page.finding-no-longer': () => 'no longer',
  'comparison-page.finding-was': ({ sentence, title }: Args<'sentence' | 'title'>, say: Speaker) =>
    `${sentence} (was ${say.say(title)})`,

  'comparison-page.follow': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, {
      one: '# formula that nobody edited follows from something outside it',
      other: '# formulas that nobody edited follow from something outside them',
    }),
  'comparison-page.follow-change': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, {
      one: '# formula that nobody edited follows from the change above',
      other: '# formulas that nobody edited follow from the change above',
    }),
  'comparison-page.follow-changes': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, {
      one: '# formula that nobody edited follows from the changes above',
      other: '# formulas that nobody edited follow from the changes above',
    }),
  'comparison-page.more': ({ count }: Args<'count'>, say: Speaker) => say.count(count, { other: '# more' }),
  'comparison-page.all': ({ count }: Args<'count'>, say: Speaker) => `all ${say.number(count, 0)}`,
};
