import { readdirSync, readFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { join } from 'node:path';
import { parseAst } from 'vitest/node';

export interface WrittenPattern {
  /** Where it stands: the path from the root of the repository. */
  readonly file: string;
  readonly source: string;
  readonly flags: string;
}

const root = join(import.meta.dirname, '..', '..');

/** Every regular expression that is written out in the code of some folders, each once. */
export function writtenPatterns(folders: readonly string[]): WrittenPattern[] {
  const found = new Map<string, WrittenPattern>();
  for (const folder of folders)
    for (const path of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!path.endsWith('.ts') || path.endsWith('.d.ts')) continue;
      const file = `${folder}/${path.replaceAll('\\', '/')}`;
      const code = stripTypeScriptTypes(readFileSync(join(root, file), 'utf8'), { mode: 'transform' });
      for (const { source, flags } of patternsIn(parseAst(code)))
        if (!found.has(`/${source}/${flags}`)) found.set(`/${source}/${flags}`, { file, source, flags });
    }
  return [...found.values()];
}

/** The literals below a node of a syntax tree. */
function* patternsIn(node: unknown): Iterable<{ readonly source: string; readonly flags: string }> {
  if (node === null || typeof node !== 'object') return;
  const { regex } = node as { readonly regex?: { readonly pattern: string; readonly flags: string } };
  if (regex !== undefined) yield { source: regex.pattern, flags: regex.flags };
  else for (const inner of Object.values(node)) yield* patternsIn(inner);
}

/** Runs some work and lists the regular expressions that code of the core puts together in it. */
export async function madePatterns(work: () => Promise<unknown>): Promise<WrittenPattern[]> {
  const Plain = globalThis.RegExp;
  const made = new Map<string, WrittenPattern>();
  globalThis.RegExp = new Proxy(Plain, {
    construct(target, args: [string | RegExp, string?]) {
      const one = Reflect.construct(target, args) as RegExp;
      const file = /\/(core\/[^:?]+\.ts)/.exec(new Error().stack ?? '')?.[1];
      if (file !== undefined) made.set(String(one), { file, source: one.source, flags: one.flags });
      return one;
    },
  });
  try {
    await work();
  } finally {
    globalThis.RegExp = Plain;
  }
  return [...made.values()];
}
