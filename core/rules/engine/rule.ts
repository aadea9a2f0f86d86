import type { Analysis } from '../../analysis/analysis.ts';
import type { ExperimentAnalysis } from '../../analysis/experiment-analysis.ts';
import type { PlanAnalysis } from '../../analysis/plan-analysis.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import type { Block } from '../../syntax/tree.ts';
import type { Span } from '../../text/span.ts';
import type { Message } from '../../words/message.ts';

export type RuleLevel = 'error' | 'warning' | 'info' | 'hint';

/** A rule: what it is called, what it says of itself, and how it looks at one block of a file. */
export interface Rule {
  /** Permanent, in kebab case: settings, `# accept` and reports know the rule by it. */
  readonly code: string;
  readonly level: RuleLevel;
  /** One line, for lists. */
  readonly title: string;
  /** Markdown: why it matters and what to do. */
  readonly explanation: string;
  /** Whole files of notation: the rule speaks of the first and is silent on the second. */
  readonly bad: string;
  readonly good: string;
  /** Its preferred fix mends how something is written and changes no bread, so an editor may take it when a file is saved. */
  readonly mendsSlips?: true;
  /** Absent for what the reading of a line reports itself, and for what the pass over all rules finds (`# accept`). */
  readonly check?: (context: RuleContext) => Iterable<RuleFinding>;
}

/** One block as a rule sees it. Lines are counted in the block. */
export interface RuleContext {
  readonly uri: string;
  readonly block: Block;
  readonly scope: Scope;
  /** Present when the block is a formula. */
  readonly analysis?: Analysis;
  /** Present when the block is a plan. */
  readonly plan?: PlanAnalysis;
  /** Present when the block is an experiment. */
  readonly experiment?: ExperimentAnalysis;
}

/** The formula of a block that is one. Throws a RangeError for any other: whoever asks came by something of a formula. */
export function formulaOf({ analysis }: RuleContext): Analysis {
  if (analysis === undefined) throw new RangeError('The block is no formula.');
  return analysis;
}

export interface RuleFinding {
  readonly line: number;
  readonly span: Span;
  readonly message: Message;
  /** Another than the rule’s own: milder where only part of a band lies beyond, an error where nothing can be computed; a level that the user set stands above both. */
  readonly level?: RuleLevel;
  readonly related?: readonly RelatedLine[];
  readonly fixes?: readonly RuleFix[];
  readonly unused?: true;
}

/** One finding in a block, lines counted in it, with the level the rule has by default. */
export interface BlockFinding {
  readonly code: string;
  readonly level: RuleLevel;
  readonly line: number;
  readonly span: Span;
  readonly message: Message;
  readonly related: readonly RelatedLine[];
  readonly fixes: readonly RuleFix[];
  readonly unused?: true;
}

/** Another place that has to do with a finding: a line of the same block, or a definition. */
export type RelatedLine =
  | {
      readonly line: number;
      readonly span: Span;
      readonly message: Message;
      readonly definition?: undefined;
    }
  | {
      readonly definition: Definition;
      /** A line of it, counted in its block; its name where no line is given. */
      readonly line?: number;
      readonly span?: Span;
      readonly message: Message;
    };

export interface RuleFix {
  readonly title: Message;
  readonly edits: readonly RuleEdit[];
  readonly preferred?: true;
}

/** An edit in the file of the block. `endLine` when it takes out whole lines. */
export interface RuleEdit extends Span {
  readonly line: number;
  readonly endLine?: number;
  readonly insert: string;
}
