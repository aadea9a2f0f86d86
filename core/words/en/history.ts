import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What became of a formula over its revisions. */
export const history = {
  'history.hydration': () => 'hydration',
  'history.salt': () => 'salt',
  'history.prefermented-flour': () => 'prefermented flour',
  'history.mix-minutes': () => 'mixing',
  'history.end-temperature': () => 'dough temperature, computed',
  'history.water-temperature': () => 'water',
  'history.cost': () => 'cost',
  'history.allergens': () => 'allergens',
  'history.cost-of-kilogram': ({ amount, currency }: Args<'amount' | 'currency'>, say: Speaker) =>
    `${say.money(amount, currency)} per kg of dough`,
  'history.cost-at-least': ({ amount, currency }: Args<'amount' | 'currency'>, say: Speaker) =>
    `at least ${say.money(amount, currency)} per kg of dough`,
  'history.no-allergens': () => 'none',
  'history.not-known': () => 'not known',
  'history.none': () => 'none',

  'history.so-many': ({ count, trialCount }: Args<'count' | 'trialCount'>, say: Speaker) =>
    `${say.count(count, { one: '# revision with a change', other: '# revisions with a change' })}, ${say.count(trialCount, { one: '# trial', other: '# trials' })}`,
  'history.head-date': () => 'date',
  'history.head-commit': () => 'commit',
  'history.head-author': () => 'by',
  'history.head-changed': () => 'what changed',
  'history.head-words': () => 'in the words of the commit',
  'history.new': () => 'new',
  'history.removed': () => 'removed',
  /** In the place of a commit's words. */
  'history.uncommitted': () => 'not committed yet',
  'history.renamed-from': ({ name }: Args<'name'>) => `renamed from ${name}`,
  'history.named-anew': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `${name} renamed to ${otherName}`,
  'history.moved-from': ({ file }: Args<'file'>) => `moved from ${file}`,
  'history.trial-unmeasured': () => 'trial; the temperature at its end was not noted',
  'history.trial-measured': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `trial, at its end ${say.celsius(celsius)}`,
  'history.trial-beside': (
    { celsius, targetCelsius, commit }: Args<'celsius' | 'targetCelsius' | 'commit'>,
    say: Speaker,
  ) => `trial, at its end ${say.celsius(celsius)}; computed at ${commit} ${say.celsius(targetCelsius)}`,
  'history.trial-beside-now': ({ celsius, targetCelsius }: Args<'celsius' | 'targetCelsius'>, say: Speaker) =>
    `trial, at its end ${say.celsius(celsius)}; computed now ${say.celsius(targetCelsius)}`,
  'history.chart-of': ({ name, otherName, count }: Args<'name' | 'otherName' | 'count'>, say: Speaker) =>
    `${name} of ${otherName} over time, ${say.count(count, { one: '# revision', other: '# revisions' })} that set it. The table says the same.`,
  'history.chart-key': () =>
    'Line: what held on the main line. Dot: a revision that changed it. Diamond: measured in a trial. Cross: computed for that trial.',

  /** In a hover: the figure, its value in git, since which day, by whom, in which words. */
  'history.since': ({
    name,
    sentence,
    meant,
    otherName,
    otherWritten,
  }: Args<'name' | 'sentence' | 'meant' | 'otherName' | 'otherWritten' | 'commit'>) =>
    `in git: ${name} ${sentence} since ${meant} (${otherName}: ${otherWritten})`,
  'history.since-first': ({
    name,
    sentence,
    meant,
    otherName,
    otherWritten,
  }: Args<'name' | 'sentence' | 'meant' | 'otherName' | 'otherWritten' | 'commit'>) =>
    `in git: ${name} ${sentence} from the first commit on, ${meant} (${otherName}: ${otherWritten})`,

  'history.no-such-formula': ({ name, revision }: Args<'name' | 'revision'>) =>
    `no formula “${name}” in the history of ${revision}; look at the spelling.`,
  'history.no-such-formula-meant': ({ name, otherName, revision }: Args<'name' | 'otherName' | 'revision'>) =>
    `no formula “${name}” in the history of ${revision}. Is it “${otherName}”?`,
  'history.several': ({ name, files }: Args<'name' | 'files'>, say: Speaker) =>
    `several files have a formula “${name}”; name one behind it: ${say.anyOf(files)}.`,
  'history.no-such-figure': ({ name, names }: Args<'name' | 'names'>, say: Speaker) =>
    `no figure “${name}”; there is ${say.list(names)}, and each ingredient by its name.`,
  'history.read-so-far': ({ count, otherCount }: Args<'count' | 'otherCount'>, say: Speaker) =>
    `${say.number(count, 0)} of ${say.count(otherCount, { one: '# revision', other: '# revisions' })} read`,
  'history.begins': ({ commit }: Args<'commit'>) =>
    `this clone is shallow: its history begins at ${commit}; “git fetch --unshallow” brings the rest.`,
};
