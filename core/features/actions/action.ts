import type { Analysis } from '../../analysis/analysis.ts';
import type { Scope } from '../../model/scope.ts';
import type { Finding } from '../../rules/engine/finding.ts';
import type { Block, SourceFile } from '../../syntax/tree.ts';
import type { FileEdit } from '../../text/edits.ts';
import type { Place } from '../../text/span.ts';
import type { Message } from '../../words/message.ts';
import type { Examine } from './sound-edits.ts';

/** What an action does to the text, so that an editor can put it where its kind belongs. */
export type ActionKind = 'fix' | 'rewrite' | 'extract' | 'inline' | 'sort' | 'fixAll';

/** A stretch of a file: the cursor where both ends are one. Zero-based lines, UTF-16 columns. */
export interface TextRange extends Place {
  readonly endLine: number;
}

/** Where somebody asks what can be done, and all that may be looked at to say it. */
export interface ActionContext {
  readonly uri: string;
  readonly source: SourceFile;
  /** The block in which the range begins; it has `firstLine` in the file. */
  readonly block: Block;
  readonly firstLine: number;
  /** The lines of the range, counted in the block; the last is within the block. */
  readonly line: number;
  readonly lastLine: number;
  readonly column: number;
  readonly isSelection: boolean;
  readonly range: TextRange;
  readonly scope: Scope;
  /** Present when the block is a formula. Worked out when asked for. */
  readonly analysis: () => Analysis | undefined;
  /** Everything found in the file. */
  readonly findings: () => readonly Finding[];
  /** What is found in the file as it is, or as another text, however much that is. */
  readonly examine: Examine;
  /** Where other files have their text, for edits beyond this file. */
  readonly fileOf: (uri: string) => SourceFile | undefined;
  /** Hears of an action that failed, which no input should make it. */
  failed(what: string): void;
  /** Present where the block is a variant made whole. */
  readonly variant?: VariantBorder;
}

/** Where what an action makes of a variant made whole is turned into what the variant says. */
export interface VariantBorder {
  /** The lines of the whole in the order in which a formula that has no base would have them; −1 is a blank one. */
  readonly order: readonly number[];
  /** A text in that order as a formula that has no base. */
  alone(text: string): string;
  /** Edits of the file for changed lines of the whole, and what its text would be; `undefined` where a variant cannot say it. */
  edits(changed: ReadonlyMap<number, readonly string[]>, text: string): readonly FileEdit[] | undefined;
}

/** One thing that can be done here. Offering it must cost little; what it writes is worked out when it is chosen. */
export interface Offer {
  readonly title: Message;
  /** Tells several offers of one action apart, where it has several. */
  readonly argument?: string;
  readonly preferred?: true;
  /** The findings that it answers. */
  readonly findings?: readonly Finding[];
  /** The action has looked itself at whether each of its edits does what it is for, and makes no error. */
  readonly isSound?: true;
  /** `undefined` when it turns out that it cannot be done after all, which it also is where it would leave its findings or make an error. */
  readonly edits: () => readonly FileEdit[] | undefined;
}

/** Something an editor can do to a text for the baker: one file each, one row in the catalogue. */
export interface Action {
  /** Permanent, in kebab case. */
  readonly id: string;
  readonly kind: ActionKind;
  /** What it is called in the guide. */
  readonly name: string;
  /** Markdown for the guide: what it does and what it leaves alone. */
  readonly explanation: string;
  /** A whole file of notation in which it is offered; `‸` marks the cursor, two of them a selection. */
  readonly example: string;
  /**
   * Offered on a variant too: `true` where the action knows of variants itself, `whole` where it works on the variant made whole and its changes
   * are turned into lines of the variant. Others put lines in order, and those of the base have no place among those of the variant.
   */
  readonly variants?: true | 'whole';
  readonly offers: (context: ActionContext) => Iterable<Offer>;
}

/** An offer as it leaves the core. */
export interface OfferedAction {
  readonly id: string;
  readonly argument?: string;
  readonly kind: ActionKind;
  readonly title: string;
  readonly preferred?: true;
  readonly findings: readonly Finding[];
}
