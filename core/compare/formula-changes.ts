import { programmeWords } from '../syntax/vocabulary.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { changesInAnyOrder, changesInOrder } from './compared-lines.ts';
import type { Change, ChangeGroup, Subject, Told } from './comparison.ts';
import { computedChanges, partHydration, workChanges } from './computed.ts';
import type { FormulaSummary } from './file-summary.ts';
import { findingChanges } from './finding-changes.ts';
import { groupBy } from './group.ts';
import { formerOnes } from './same-name.ts';
import type { WrittenLine, WrittenSection } from './written.ts';

/**
 * What changed between two states of a formula, subject by subject, in the order a baker would ask. Whatever is written
 * differently is told somewhere: what no other subject explains stands under `wording`.
 */
export function groupsOf(before: FormulaSummary, after: FormulaSummary, say: Speaker): ChangeGroup[] {
  const computed = computedChanges(before.totals, after.totals, say);
  const [doughPair, ...pairs] = sectionPairs(before.sections, after.sections);
  const groups = new Map<string, { subject: Subject; title: string; changes: Change[] }>();
  const add = (subject: Subject, titled: Message, changes: readonly Change[]): void => {
    if (changes.length === 0) return;
    const title = say.say(titled);
    const group = groups.get(title);
    if (group === undefined) groups.set(title, { subject, title, changes: [...changes] });
    else group.changes.push(...changes);
  };
  const explained = new Set(computed.ingredients.map(({ name }) => foldName(name)));
  const own = ownChanges(doughPair!, partNames(before, after), explained, say);
  const of = (...kinds: readonly string[]): Pair[] => pairs.filter((pair) => kinds.includes(some(pair).kind));

  add('label', message('comparison-title.label'), computed.label);
  add('makes', message('comparison-title.makes'), [...own.makes, ...computed.makes]);
  add('dough', message('comparison-title.dough'), computed.dough);
  add('ingredients', message('comparison-title.ingredients'), [...computed.ingredients, ...own.parts]);
  for (const pair of of(...partKinds)) {
    const { name, kind } = some(pair);
    add(
      'part',
      message('comparison-title.part', { part: name ?? kind, section: kind }),
      partChanges(pair, before, after, say),
    );
  }
  for (const pair of of('mix')) {
    add('mixing', titleOf(pair, 'mixing'), [
      ...headerChange(pair, say),
      ...changesInOrder(...linesOf(pair), say),
    ]);
  }
  add('mixing', message('comparison-title.mixing-outlook'), computed.mixing);
  add('temperatures', message('comparison-title.temperatures'), [
    ...own.temperatures,
    ...computed.temperatures,
  ]);
  for (const pair of of('process'))
    add('process', titleOf(pair, 'process'), changesInOrder(...linesOf(pair), say));
  add('process', message('comparison-title.process'), workChanges(before.work, after.work, say));
  add('cost', message('comparison-title.cost'), computed.cost);
  for (const pair of of('trial')) add('trials', message('comparison-title.trials'), trialChanges(pair, say));
  add('findings', message('comparison-title.findings'), findingChanges(before, after, say));
  const others = pairs.filter((pair) => !told.has(some(pair).kind));
  add('wording', message('comparison-title.wording'), [
    ...own.wording,
    ...others.flatMap((pair) => changesInAnyOrder(...linesOf(pair), say)),
  ]);
  return [...groups.values()];
}

type Pair = readonly [before: WrittenSection | undefined, after: WrittenSection | undefined];

const partKinds = ['preferment', 'soaker', 'scald', 'part', 'filling', 'topping', 'bath'];
const told: ReadonlySet<string> = new Set([...partKinds, 'mix', 'process', 'trial']);

/** The sections of both sides by what tells them apart and by their lines, the dough's first, in the order of the new side. */
function sectionPairs(before: readonly WrittenSection[], after: readonly WrittenSection[]): Pair[] {
  const [left, come] = [before, after].map((side) => groupBy(side.slice(1), ({ key }) => key)) as [
    Map<string, WrittenSection[]>,
    Map<string, WrittenSection[]>,
  ];
  const former = new Map(
    [...come].flatMap(([key, sections]) => [
      ...formerOnes(left.get(key) ?? [], sections, ({ lines }) => lines.map((line) => line.key)),
    ]),
  );
  const paired = after.slice(1).map((section): Pair => [former.get(section), section]);
  const kept = new Set(former.values());
  const gone = before.slice(1).filter((section) => !kept.has(section));
  return [[before[0], after[0]], ...paired, ...gone.map((section): Pair => [section, undefined])];
}

const some = ([before, after]: Pair): WrittenSection => (after ?? before)!;
const linesOf = ([before, after]: Pair): [readonly WrittenLine[], readonly WrittenLine[]] => [
  before?.lines ?? [],
  after?.lines ?? [],
];

/** `mixing`, `mixing of night poolish`. */
function titleOf(pair: Pair, what: 'mixing' | 'process'): Message {
  const { key, kind } = some(pair);
  const part = key.slice(kind.length).trim();
  if (what === 'mixing')
    return part === '' ? message('comparison-title.mixing') : message('comparison-title.mixing-of', { part });
  return part === '' ? message('comparison-title.process') : message('comparison-title.process-of', { part });
}

function partNames(...sides: readonly FormulaSummary[]): ReadonlySet<string> {
  return new Set(sides.flatMap(({ totals }) => totals.parts.slice(1).map(({ name }) => foldName(name))));
}

interface OwnChanges {
  readonly makes: Change[];
  readonly parts: Change[];
  readonly temperatures: Change[];
  readonly wording: Change[];
}

/** What the formula's own lines say differently, less what the overall formula explains already. */
function ownChanges(
  pair: Pair,
  parts: ReadonlySet<string>,
  explained: ReadonlySet<string>,
  say: Speaker,
): OwnChanges {
  const found: OwnChanges = { makes: [], parts: [], temperatures: [], wording: [] };
  const [before, after] = linesOf(pair);
  const byLine = (lines: readonly WrittenLine[]): Map<number, WrittenLine> =>
    new Map(lines.map((line) => [line.line, line]));
  const [old, now] = [byLine(before), byLine(after)];
  for (const change of changesInAnyOrder(before, after, say)) {
    const was = old.get(change.before?.line ?? -1);
    const is = now.get(change.after?.line ?? -1);
    const { kind, about } = (is ?? was)!;
    if (kind === 'property') (about === 'dough temperature' ? found.temperatures : found.makes).push(change);
    else if (was !== undefined && is !== undefined && was.celsius !== is.celsius)
      found.temperatures.push(change);
    else if (kind === 'ingredient' && parts.has(about)) found.parts.push(change);
    else if (kind !== 'ingredient' || !explained.has(about)) found.wording.push(change);
  }
  return found;
}

function partChanges(pair: Pair, before: FormulaSummary, after: FormulaSummary, say: Speaker): Change[] {
  const lines = changesInAnyOrder(...linesOf(pair), say);
  if (pair[0] === undefined || pair[1] === undefined) return [...headerChange(pair, say), ...lines];
  const of = ({ totals }: FormulaSummary) =>
    totals.parts.slice(1).find(({ name }) => name === some(pair).name);
  return [...lines, ...partHydration(of(before), of(after), say)];
}

/** The header of a section that is new, gone or reads otherwise: another mixer, say. */
function headerChange([before, after]: Pair, say: Speaker): Change[] {
  if (before !== undefined && after !== undefined && foldName(before.title) === foldName(after.title))
    return [];
  return [changeOf(say.say(message('comparison-name.section')), before, after, ({ title }) => title)];
}

function trialChanges(pair: Pair, say: Speaker): Change[] {
  const [before, after] = pair;
  const { title } = some(pair);
  if (before !== undefined && after !== undefined) {
    const [ran, measured] = [linesThat(pair, isProgramme), linesThat(pair, (line) => !isProgramme(line))];
    return [...changesInOrder(...ran, say), ...changesInAnyOrder(...measured, say)].map((change) => ({
      ...change,
      name: say.say(message('comparison-name.of-trial', { written: title, property: change.name })),
    }));
  }
  return [changeOf(title, before, after, ({ lines }) => lines.map(({ text }) => text).join('; '))];
}

/** The lines of what was run have an order; what was measured has none but its own minutes. */
const isProgramme = ({ kind, about }: WrittenLine): boolean =>
  kind === 'property' && programmeWords.has(about.split(' ')[0]!);

function linesThat(pair: Pair, are: (line: WrittenLine) => boolean): [WrittenLine[], WrittenLine[]] {
  const [before, after] = linesOf(pair);
  return [before.filter(are), after.filter(are)];
}

function changeOf(
  name: string,
  before: WrittenSection | undefined,
  after: WrittenSection | undefined,
  words: (section: WrittenSection) => string,
): Change {
  const tell = (section: WrittenSection): Told => ({ text: words(section), line: section.line });
  return {
    name,
    ...(before === undefined ? {} : { before: tell(before) }),
    ...(after === undefined ? {} : { after: tell(after) }),
  };
}
