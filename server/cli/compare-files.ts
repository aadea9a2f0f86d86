import { setImmediate as nextTurn } from 'node:timers/promises';
import {
  type Comparison,
  compareSummaries,
  createService,
  type FileSummary,
  filesThatMayDiffer,
  foldName,
  heaviest,
  type PlaceInFile,
  type Speaker,
  underNewNamesOf,
  withNamesCounted,
} from '../../core/index.ts';
import { growSlowlyFor } from '../host/slow-growth.ts';
import type { ReadSide } from './compare-sides.ts';

/** A formula or definition of a comparison, by where it stands. */
interface Compared {
  readonly before?: PlaceInFile;
  readonly after?: PlaceInFile;
}

/**
 * What was asked for on both sides. Files that cannot differ are not worked out; of the others those that define the same names on
 * both sides are compared one after another, so that thousands need no room at once. What stands on one side
 * alone is looked for in the files that were not asked for by its name, so that a formula that moved is told as moved.
 */
export async function compareSides(asItWas: ReadSide, after: ReadSide, words: Speaker): Promise<Comparison> {
  const before = underNewNamesOf(asItWas, after, () => createService({ lean: true }));
  growSlowlyFor(before.texts.size + after.texts.size);
  const [old, now] = [readable(before.files, after), readable(after.files, before)];
  const differing = filesThatMayDiffer(asItWas.texts, after.texts);
  const isWanted = (file: string): boolean => differing?.has(file) !== false;
  const parts: Comparison[] = [];
  const open: { readonly before: FileSummary[]; readonly after: FileSummary[] } = { before: [], after: [] };
  const isThere = new Set(now);
  for (const file of old.filter(isWanted)) {
    const was = before.summary(file);
    const is = isThere.has(file) ? after.summary(file) : undefined;
    if (was !== undefined && is !== undefined && namesOf(was) === namesOf(is))
      parts.push(compareSummaries([was], [is], words));
    else {
      if (was !== undefined) open.before.push(was);
      if (is !== undefined) open.after.push(is);
    }
    // What a weak reference points to is held until the turn ends.
    await nextTurn();
  }
  const wasThere = new Set(old);
  for (const file of now)
    if (!wasThere.has(file) && isWanted(file)) open.after.push(...listed(after.summary(file)));
  const isPart = old.length > open.before.length || now.length > open.after.length;
  parts.push(compareOpen(open, { before, after }, { isPart, asked: new Set([...old, ...now]), words }));
  const order = placeOrder(old, now);
  return withNamesCounted({
    verdict: heaviest(parts),
    formulas: parts.flatMap(({ formulas }) => formulas).toSorted(order),
    definitions: parts.flatMap(({ definitions }) => definitions).toSorted(order),
    named: parts.flatMap(({ named }) => named ?? []),
  });
}

function listed(summary: FileSummary | undefined): FileSummary[] {
  return summary === undefined ? [] : [summary];
}

/** What a file defines, in its order. */
function namesOf({ formulas, definitions }: FileSummary): string {
  return JSON.stringify([
    formulas.map(({ folded }) => folded),
    definitions.map(({ kind, folded }) => [kind, folded]),
  ]);
}

/** Files that do not define the same on both sides, compared with each other and with those around them. */
function compareOpen(
  open: { readonly before: readonly FileSummary[]; readonly after: readonly FileSummary[] },
  { before, after }: { readonly before: ReadSide; readonly after: ReadSide },
  {
    isPart,
    asked,
    words,
  }: { readonly isPart: boolean; readonly asked: ReadonlySet<string>; readonly words: Speaker },
): Comparison {
  const comparison = compareSummaries(open.before, open.after, words, isPart);
  if (!before.looksAround || !after.looksAround) return comparison;
  const lonely = [...comparison.formulas, ...comparison.definitions].filter(({ fate }) => fate !== 'kept');
  const names = lonely.map((one) => foldName('formula' in one ? one.formula : one.name));
  if (names.length === 0) return comparison;
  const files = new Set<string>();
  for (const { texts } of [before, after])
    for (const [file, text] of texts) {
      if (asked.has(file)) continue;
      const folded = foldName(text);
      if (names.some((name) => folded.includes(name))) files.add(file);
    }
  const more = (side: ReadSide): FileSummary[] => [...files].flatMap((file) => listed(side.summary(file)));
  const whole = compareSummaries(
    [...open.before, ...more(before)],
    [...open.after, ...more(after)],
    words,
    isPart,
  );
  const isAsked = (one: Compared): boolean =>
    [one.before, one.after].some((place) => place !== undefined && asked.has(place.file));
  const [formulas, definitions] = [whole.formulas.filter(isAsked), whole.definitions.filter(isAsked)];
  const found = [...formulas, ...definitions];
  const verdict = comparison.verdict === 'wording' && found.length === 0 ? 'wording' : heaviest(found);
  return { ...whole, verdict, formulas, definitions };
}

/** In the order of the new files, then what is there no more in that of the old ones. */
function placeOrder(old: readonly string[], now: readonly string[]) {
  const [oldAt, nowAt] = [old, now].map((files) => new Map(files.map((file, index) => [file, index])));
  const keyOf = ({ before, after }: Compared): readonly number[] =>
    after !== undefined
      ? [0, nowAt?.get(after.file) ?? now.length, after.line]
      : [1, oldAt?.get(before?.file ?? '') ?? old.length, before?.line ?? 0];
  return (one: Compared, other: Compared): number => {
    const [some, others] = [keyOf(one), keyOf(other)];
    const at = some.findIndex((value, index) => value !== others[index]);
    return at < 0 ? 0 : (some[at] ?? 0) - (others[at] ?? 0);
  };
}

/** The files of one side but for those that the other could not read: they are neither new nor gone. */
function readable(
  files: readonly string[],
  { unread }: { readonly unread: readonly string[] },
): readonly string[] {
  return files.filter((file) => !unread.some((one) => isIn(file, one)));
}

/** Whether a path is another one or lies below it. */
export function isIn(path: string, other: string): boolean {
  return path === other || path.startsWith(`${other}/`);
}
