import type { LabelRegime } from '../calc/product/allergens.ts';
import type { Block, Name } from '../syntax/tree.ts';

/**
 * What can be defined and looked for by name. Flours and ingredients share one space of names. A formula that holds trials
 * is found under `tried` too, so that whoever wants those need not look at all others.
 */
export type DefinitionKind = 'ingredient' | 'mixer' | 'formula' | 'bakery' | 'plan' | 'experiment' | 'tried';

export interface Definition {
  readonly kind: Exclude<DefinitionKind, 'tried'>;
  readonly name: Name;
  readonly uri: string;
  readonly firstLine: number;
  readonly block: Block;
  /** Whether a formula holds trials. */
  readonly tried?: boolean;
}

/**
 * Names as seen from one file. Levels go from near to far: the file's own folder, each folder above it up to the
 * root, then the rest of the workspace. Only levels with a hit are listed.
 */
export interface Scope {
  find(kind: DefinitionKind, folded: string): readonly (readonly Definition[])[];
  /** The nearest definition of a kind, whatever its name (the bakery of a folder). */
  nearest(kind: DefinitionKind): Definition | undefined;
  /** The names of a kind that can be seen, nearest first. */
  names(kind: DefinitionKind): readonly Definition[];
  /** The names as another file sees them. */
  from(uri: string): Scope;
  /** What holds where no bakery says otherwise. */
  readonly usual?: UsualConditions;
}

/** Conditions for all files, as they are set; what is absent is taken as a mild day. */
export interface UsualConditions {
  readonly roomCelsius?: number;
  readonly flourCelsius?: number;
  readonly tapCelsius?: number;
  readonly label?: LabelRegime | 'both';
}

export const noScope: Scope = {
  find: () => [],
  nearest: () => undefined,
  names: () => [],
  from: () => noScope,
};

/** The definition that a block makes, if it makes one. */
export function definitionOf(uri: string, firstLine: number, block: Block): Definition | undefined {
  const { top } = block;
  if (top === undefined || top.kind === 'unknown' || top.header.name === undefined) return undefined;
  const kind = top.kind === 'flour' ? 'ingredient' : top.kind;
  if (!isDefined(kind)) return undefined;
  const tried = kind === 'formula' && block.subs.some((sub) => sub.kind === 'trial');
  return { kind, name: top.header.name, uri, firstLine, block, ...(tried && { tried }) };
}

const defined: ReadonlySet<string> = new Set([
  'ingredient',
  'mixer',
  'formula',
  'bakery',
  'plan',
  'experiment',
]);

function isDefined(kind: string): kind is Definition['kind'] {
  return defined.has(kind);
}
