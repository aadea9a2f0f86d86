import { fractionOf, propertiesOf, type SaidProperties, saidValue } from '../model/properties.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { degrees, mass, percent } from '../text/figures.ts';

export type OverviewKind = 'bakery' | 'formula' | 'flour' | 'mixer' | 'plan';

/** One thing that a file of the workspace defines, with what tells it from its neighbours in a list. */
export interface OverviewEntry {
  readonly kind: OverviewKind;
  readonly name: string;
  /** `67% hydration · 25.2 kg dough`; empty where nothing is said of it. */
  readonly detail: string;
  readonly uri: string;
  /** Zero-based line of its header. */
  readonly line: number;
}

/** Everything of one file that stands in the overview of a workspace, in the order of its lines. */
export function overviewOf(
  uri: string,
  source: SourceFile,
  totalsOf: (block: Block) => string | undefined,
): OverviewEntry[] {
  return source.blocks.flatMap(({ block, firstLine }) => {
    const { top } = block;
    const name = top?.header.name?.text;
    if (top === undefined || name === undefined || name === '' || !isListed(top.kind)) return [];
    const said = propertiesOf(block, top);
    const detail = top.kind === 'formula' ? (totalsOf(block) ?? '') : detailOf(top.kind, said, block);
    return [{ kind: top.kind, name, detail, uri, line: firstLine + top.headerLine }];
  });
}

const listed: ReadonlySet<string> = new Set(['bakery', 'formula', 'flour', 'mixer', 'plan']);
const isListed = (kind: string): kind is OverviewKind => listed.has(kind);

function detailOf(kind: Exclude<OverviewKind, 'formula'>, said: SaidProperties, block: Block): string {
  const parts: readonly (string | undefined)[] = {
    bakery: () => [warmth(said, 'room'), warmth(said, 'flour'), warmth(said, 'tap water')],
    flour: () => [word(said, 'grain'), word(said, 'milling'), protein(said)],
    mixer: () => [word(said, 'kind'), bowl(said)],
    plan: () => [ready(said), planned(block)],
  }[kind]();
  return parts.filter((part) => part !== undefined).join(' · ');
}

function warmth(said: SaidProperties, property: string): string | undefined {
  const celsius = saidValue(said, property, 'temperature')?.celsius;
  return celsius === undefined ? undefined : `${property} ${degrees(celsius)}`;
}

function word(said: SaidProperties, property: string): string | undefined {
  return saidValue(said, property, 'word')?.word;
}

function protein(said: SaidProperties): string | undefined {
  const fraction = fractionOf(said, 'protein');
  return fraction === undefined ? undefined : `${percent(fraction)} protein`;
}

function bowl(said: SaidProperties): string | undefined {
  const range = saidValue(said, 'bowl', 'massRange');
  if (range === undefined) return undefined;
  return range.leastGrams === undefined
    ? `up to ${mass(range.mostGrams)}`
    : `${mass(range.leastGrams)} to ${mass(range.mostGrams)}`;
}

function ready(said: SaidProperties): string | undefined {
  const value = saidValue(said, 'ready', 'ready');
  if (value === undefined) return undefined;
  const two = (number: number): string => String(number).padStart(2, '0');
  const clock = `${two(Math.floor(value.minutes / 60))}:${two(value.minutes % 60)}`;
  return `ready ${value.date === undefined ? '' : `${value.date} `}${clock}`;
}

function planned(block: Block): string | undefined {
  const count = block.lines.filter(({ statement }) => statement.kind === 'planned').length;
  return count === 0 ? undefined : count === 1 ? '1 formula' : `${count} formulas`;
}
