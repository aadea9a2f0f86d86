import { fractionOf, propertiesOf, type SaidProperties, saidValue } from '../../model/properties.ts';
import type { Block, SourceFile } from '../../syntax/tree.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

export type OverviewKind = 'bakery' | 'formula' | 'flour' | 'mixer' | 'plan' | 'experiment';

/** One thing that a file of the workspace defines, with what tells it from its neighbours in a list. */
export interface OverviewEntry {
  readonly kind: OverviewKind;
  readonly name: string;
  /** `67% hydration · 25.2 kg dough`; empty where nothing is said of it. */
  readonly detail: string;
  /** The figures of that alone, `67% · 25.2 kg`, for a list that is narrow; where it would be no shorter, there is none. */
  readonly brief?: string;
  readonly uri: string;
  /** Zero-based line of its header. */
  readonly line: number;
}

/** Everything of one file that stands in the overview of a workspace, in the order of its lines. */
export function overviewOf(
  uri: string,
  source: SourceFile,
  totalsOf: (block: Block) => { readonly line?: Message; readonly brief?: Message },
  speaker: Speaker,
): OverviewEntry[] {
  return source.blocks.flatMap(({ block, firstLine }) => {
    const { top } = block;
    const name = top?.header.name?.text;
    if (top === undefined || name === undefined || name === '' || !isListed(top.kind)) return [];
    const said = propertiesOf(block, top);
    const totals = top.kind === 'formula' ? totalsOf(block) : {};
    const facts = top.kind === 'formula' ? [totals.line] : factsOf(top.kind, said, block);
    // A word of the notation stands as it is.
    const words = facts.map((one) => (typeof one === 'object' ? speaker.say(one) : one));
    const detail = words.filter((one) => one !== undefined).join(' · ');
    const brief = totals.brief === undefined ? {} : { brief: speaker.say(totals.brief) };
    return [{ kind: top.kind, name, detail, ...brief, uri, line: firstLine + top.headerLine }];
  });
}

const listed: ReadonlySet<string> = new Set(['bakery', 'formula', 'flour', 'mixer', 'plan', 'experiment']);
const isListed = (kind: string): kind is OverviewKind => listed.has(kind);

function factsOf(
  kind: Exclude<OverviewKind, 'formula'>,
  said: SaidProperties,
  block: Block,
): readonly (Message | string | undefined)[] {
  switch (kind) {
    case 'bakery':
      return [
        warmth(said, 'room', 'room'),
        warmth(said, 'flour', 'flour'),
        warmth(said, 'tap water', 'tap-water'),
      ];
    case 'flour':
      return [word(said, 'grain'), word(said, 'milling'), protein(said)];
    case 'mixer':
      return [word(said, 'kind'), bowl(said)];
    case 'plan':
      return [ready(said), planned(block)];
    case 'experiment': {
      const count = said.get('dough')?.length ?? 0;
      return count === 0 ? [] : [message('planned.doughs', { count })];
    }
  }
}

function warmth(
  said: SaidProperties,
  property: string,
  what: 'room' | 'flour' | 'tap-water',
): Message | undefined {
  const celsius = saidValue(said, property, 'temperature')?.celsius;
  return celsius === undefined ? undefined : message(`overview.${what}`, { celsius });
}

function word(said: SaidProperties, property: string): string | undefined {
  return saidValue(said, property, 'word')?.word;
}

function protein(said: SaidProperties): Message | undefined {
  const fraction = fractionOf(said, 'protein');
  return fraction === undefined ? undefined : message('overview.protein', { fraction });
}

function bowl(said: SaidProperties): Message | undefined {
  const range = saidValue(said, 'bowl', 'massRange');
  if (range === undefined) return undefined;
  const { leastGrams, mostGrams } = range;
  return leastGrams === undefined
    ? message('overview.bowl-most', { mostGrams })
    : message('overview.bowl', { leastGrams, mostGrams });
}

function ready(said: SaidProperties): Message | undefined {
  const value = saidValue(said, 'ready', 'ready');
  if (value === undefined) return undefined;
  const { date, minutes } = value;
  const when =
    date === undefined
      ? message('time.clock', { minutes })
      : message('time.date', { written: date, minutes });
  return message('overview.ready', { when });
}

function planned(block: Block): Message | undefined {
  const count = block.lines.filter(({ statement }) => statement.kind === 'planned').length;
  return count === 0 ? undefined : message('planned.formulas', { count });
}
