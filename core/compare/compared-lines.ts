import { diffArrays } from 'diff';
import { message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Change, Told } from './comparison.ts';
import { groupBy } from './group.ts';
import type { WrittenLine } from './written.ts';

/** More differing lines than any programme has; beyond them all old lines go and all new ones come. */
const mostEdits = 400;

/**
 * What changed in lines whose order matters: a programme, a process. Lines that say the same are matched first; of what
 * is left between them, a line gone and one come about the same thing are one line changed.
 */
export function changesInOrder(
  before: readonly WrittenLine[],
  after: readonly WrittenLine[],
  say: Speaker,
): Change[] {
  const changes: LineChange[] = [];
  let [from, to] = [0, 0];
  let [gone, come]: [WrittenLine[], WrittenLine[]] = [[], []];
  const flush = (): void => {
    const waiting = groupBy(come, ({ about }) => about);
    const paired = new Set<WrittenLine>();
    for (const line of gone) {
      const same = waiting.get(line.about)?.shift();
      if (same !== undefined) paired.add(same);
      changes.push([line, same]);
    }
    for (const line of come) if (!paired.has(line)) changes.push([undefined, line]);
    [gone, come] = [[], []];
  };
  for (const { count, added, removed } of editsOf(before, after)) {
    if (removed) gone.push(...before.slice(from, from + count));
    else if (added) come.push(...after.slice(to, to + count));
    else flush();
    if (!added) from += count;
    if (!removed) to += count;
  }
  flush();
  return withMoved(changes).map((change) => toldChange(change, after, say));
}

type LineChange = readonly [before: WrittenLine | undefined, after: WrittenLine | undefined];

/** A line that went in one place and came in another says the same: it is one line that moved. */
function withMoved(changes: readonly LineChange[]): LineChange[] {
  const come = groupBy(
    changes.flatMap(([before, after]) => (before === undefined && after !== undefined ? [after] : [])),
    ({ key }) => key,
  );
  const moved = new Set<WrittenLine>();
  const joined = changes.map((change): LineChange => {
    const [before, after] = change;
    if (before === undefined || after !== undefined) return change;
    const elsewhere = come.get(before.key)?.shift();
    if (elsewhere === undefined) return change;
    moved.add(elsewhere);
    return [before, elsewhere];
  });
  return joined.filter(([before, after]) => before !== undefined || !moved.has(after!));
}

function toldChange([before, after]: LineChange, all: readonly WrittenLine[], say: Speaker): Change {
  const isMoved = before !== undefined && after !== undefined && before.key === after.key;
  const above = isMoved ? all[all.indexOf(after) - 1] : undefined;
  const place =
    above === undefined
      ? message('comparison.moved-first')
      : message('comparison.moved-after', { written: above.text });
  return {
    name: (before ?? after)!.name,
    ...(before === undefined ? {} : { before: toldLine(before) }),
    ...(after === undefined ? {} : { after: toldLine(after) }),
    ...(isMoved ? { by: say.say(place) } : {}),
  };
}

/** What changed in lines whose order says nothing: properties. */
export function changesInAnyOrder(
  before: readonly WrittenLine[],
  after: readonly WrittenLine[],
  say: Speaker,
): Change[] {
  const left = countsOf(after);
  const gone = before.filter((line) => !take(left, line.key));
  const stillLeft = countsOf(before);
  const come = after.filter((line) => !take(stillLeft, line.key));
  return changesInOrder(gone, come, say);
}

export function toldLine({ value, text, line }: WrittenLine): Told {
  return { text: value === '' ? text : value, line };
}

function editsOf(
  before: readonly WrittenLine[],
  after: readonly WrittenLine[],
): readonly { count: number; added: boolean; removed: boolean }[] {
  const keys = (lines: readonly WrittenLine[]): string[] => lines.map(({ key }) => key);
  return (
    diffArrays(keys(before), keys(after), { maxEditLength: mostEdits }) ?? [
      { count: before.length, added: false, removed: true },
      { count: after.length, added: true, removed: false },
    ]
  );
}

function countsOf(lines: readonly WrittenLine[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { key } of lines) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

function take(counts: Map<string, number>, key: string): boolean {
  const count = counts.get(key) ?? 0;
  counts.set(key, count - 1);
  return count > 0;
}
