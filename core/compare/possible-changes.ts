import { type Definition, definitionOf } from '../model/scope.ts';
import { parseFile } from '../syntax/file.ts';
import { foldName } from '../text/names.ts';

/** Texts of one side of a comparison by the names of their files, those that are compared and those around them. */
export type SideTexts = ReadonlyMap<string, string>;

/**
 * The files of which something may have changed: those whose text is another, and those that say a name which comes to something
 * else, by however many definitions in between. A file may be among them of which nothing has changed, and none is missing.
 * `undefined` stands for all files: what a bakery, a mixer or a trial says holds for formulas that do not name it.
 */
export function filesThatMayDiffer(before: SideTexts, after: SideTexts): ReadonlySet<string> | undefined {
  const differing = new Set<string>();
  const names: string[] = [];
  for (const file of new Set([...before.keys(), ...after.keys()])) {
    const [old, now] = [before.get(file), after.get(file)];
    if (old === now) continue;
    differing.add(file);
    for (const one of changedDefinitions(old ?? '', now ?? '')) {
      if (holdsForAll(one)) return undefined;
      names.push(one.name.folded);
    }
  }
  const unchanged = new Map<string, string>();
  for (const [file, text] of after)
    if (names.length > 0 && !differing.has(file)) unchanged.set(file, foldName(text));
  const asked = new Set(names);
  for (const name of asked) {
    for (const [file, folded] of unchanged) {
      if (!folded.includes(name)) continue;
      unchanged.delete(file);
      differing.add(file);
      for (const one of definitionsIn(after.get(file) ?? '')) {
        if (holdsForAll(one)) return undefined;
        asked.add(one.name.folded);
      }
    }
  }
  return differing;
}

function holdsForAll({ kind, tried }: Definition): boolean {
  return kind === 'bakery' || kind === 'mixer' || tried === true;
}

/** The definitions of either text that the other does not have as they are. */
function changedDefinitions(before: string, after: string): Definition[] {
  const [old, now] = [definitionsIn(before), definitionsIn(after)];
  const without = (some: readonly Definition[], others: readonly Definition[]): Definition[] => {
    const left = new Set(others.map(written));
    return some.filter((one) => !left.has(written(one)));
  };
  const changed = [...without(old, now), ...without(now, old)];
  // The same definition once more makes a name stand for two.
  const isAsMany = old.length === now.length;
  return isAsMany ? changed : [...old, ...now];
}

function definitionsIn(text: string): Definition[] {
  return parseFile(text).blocks.flatMap(({ block, firstLine }) => definitionOf('', firstLine, block) ?? []);
}

function written({ block }: Definition): string {
  return block.lines.map(({ text }) => text).join('\n');
}
