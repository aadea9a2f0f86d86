import type { Analysis } from '../analysis/analysis.ts';
import type { Hint } from '../features/answers.ts';
import type { Block } from '../syntax/tree.ts';
import { message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

/** As many formulas as anybody edits in one sitting. */
const mostFormulas = 300;

/** The totals of a formula in short. */
export interface ShortStatus {
  readonly formula: string;
  readonly text: string;
  readonly tooltip: string;
}

interface Whole {
  /** Labels by the text of their line; of two lines alike the first and then the second. */
  readonly hints: ReadonlyMap<string, readonly Hint[]>;
}

/**
 * The figures of each formula when it was last whole. While a line is half typed, the weights of all others are unknown for a
 * moment; who looks at them is shown the last that were known, in brackets, and no gap.
 */
export class LastWhole {
  readonly #whole = new Map<string, Whole>();
  readonly #status = new Map<string, ShortStatus>();

  /** The hints of a block, lines counted in it; what is not known for the moment is as it was last. */
  hints(uri: string, block: Block, analysis: Analysis | undefined, now: readonly Hint[]): readonly Hint[] {
    const name = block.top?.header.name?.folded;
    if (analysis === undefined || name === undefined) return now;
    const key = `${uri}\n${name}`;
    if (isWhole(analysis)) {
      keep(this.#whole, key, { hints: byText(block, now) });
      return now;
    }
    const before = this.#whole.get(key);
    if (before === undefined) return now;
    // Half of a total would be taken for all of it.
    const whole = now.filter(({ kind }) => kind === 'amount' || kind === 'mixing');
    return [...whole, ...missing(block, whole, before)].toSorted((one, other) => one.line - other.line);
  }

  /** The totals of a formula; those it had last where they are not known for the moment. */
  status(
    uri: string,
    block: Block,
    analysis: Analysis,
    now: ShortStatus | undefined,
    speaker: Speaker,
  ): ShortStatus | undefined {
    const name = block.top?.header.name?.folded;
    if (name === undefined) return now;
    const key = `${uri}\n${name}`;
    if (now !== undefined && isWhole(analysis)) {
      keep(this.#status, key, now);
      return now;
    }
    const before = this.#status.get(key);
    if (before === undefined) return now;
    return {
      ...before,
      text: `(${before.text})`,
      tooltip: `${before.tooltip}\n${speaker.say(message('status.as-last'))}`,
    };
  }
}

function keep<T>(all: Map<string, T>, key: string, one: T): void {
  all.delete(key);
  all.set(key, one);
  if (all.size <= mostFormulas) return;
  const [oldest] = all.keys();
  all.delete(oldest!);
}

/** Whether nothing is lacking for the weights of all that is mixed. */
function isWhole({ solved, resolved }: Analysis): boolean {
  const said = resolved.model.block.lines.every(({ statement }) => statement.kind !== 'unreadable');
  return (
    said &&
    solved?.doughGrams !== undefined &&
    solved.finalMix.lines.every(({ grams }) => grams !== undefined) &&
    resolved.model.sections.every(({ lines }) =>
      lines.every(({ statement }) => statement.amount.kind !== 'unknown'),
    )
  );
}

function byText(block: Block, hints: readonly Hint[]): Whole['hints'] {
  const found = new Map<string, Hint[]>();
  for (const hint of hints) {
    const text = block.lines[hint.line]!.text;
    const same = found.get(text);
    if (same === undefined) found.set(text, [hint]);
    else same.push(hint);
  }
  return found;
}

function missing(block: Block, now: readonly Hint[], { hints }: Whole): Hint[] {
  const told = new Set(now.map(({ line }) => line));
  const taken = new Map<string, number>();
  return block.lines.flatMap(({ text }, line): Hint[] => {
    const at = taken.get(text) ?? 0;
    const before = hints.get(text)?.[at];
    if (before === undefined) return [];
    taken.set(text, at + 1);
    return told.has(line) ? [] : [{ ...before, line, label: `(${before.label})` }];
  });
}
