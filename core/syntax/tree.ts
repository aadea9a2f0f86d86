import type { Span } from '../text/span.ts';
import type { ToldLimit } from './limits.ts';
import type { SyntaxProblem } from './syntax-problem.ts';

/** The sections that stand for themselves; each closes the formula above it. */
export type TopSection = 'formula' | 'flour' | 'ingredient' | 'mixer' | 'bakery' | 'plan' | 'experiment';
/** The sections that belong to the formula above them. */
export type SubSection =
  | 'preferment'
  | 'soaker'
  | 'scald'
  | 'part'
  | 'filling'
  | 'topping'
  | 'bath'
  | 'mix'
  | 'process'
  | 'trial';
export type SectionKind = TopSection | SubSection;
/** What a line stands in: a section, a section nobody knows (its lines are silent), or nothing yet. */
export type Context = SectionKind | 'unknown' | 'none';

export type TokenKind =
  | 'blank'
  | 'comment'
  | 'quoted'
  | 'quantity'
  | 'comma'
  | 'colon'
  | 'leftParen'
  | 'rightParen'
  | 'word'
  | 'raw'
  | 'unknown';

export interface Token extends Span {
  readonly kind: TokenKind;
  readonly text: string;
  readonly quantity?: Quantity;
}

export type Currency = string;

interface QuantitySpan extends Span {
  /** The number as the baker wrote it. */
  readonly number: string;
  /** The unit as the baker wrote it; empty for a bare number, a date or a clock time. */
  readonly unit: string;
}

/** A number with its unit, in the base unit of what it measures. */
export type Quantity = QuantitySpan &
  (
    | { readonly kind: 'mass'; readonly grams: number }
    | { readonly kind: 'volume'; readonly millilitres: number; readonly cups?: number }
    | { readonly kind: 'fraction'; readonly fraction: number }
    | { readonly kind: 'count'; readonly count: number }
    | { readonly kind: 'duration'; readonly seconds: number }
    | { readonly kind: 'temperature'; readonly celsius: number; readonly degrees: number }
    | { readonly kind: 'turns'; readonly rpm: number }
    | { readonly kind: 'times'; readonly factor: number }
    | { readonly kind: 'energy'; readonly kilojoules: number }
    | { readonly kind: 'warming'; readonly celsiusPerMinute: number }
    | { readonly kind: 'density'; readonly gramsPerMillilitre: number }
    | { readonly kind: 'money'; readonly amount: number; readonly currency: Currency; readonly per: Per }
    | { readonly kind: 'date'; readonly iso: string }
    | { readonly kind: 'clock'; readonly minutes: number }
    | { readonly kind: 'bare'; readonly value: number }
    | { readonly kind: 'range'; readonly low: string; readonly high: string }
    /** Beyond what a bakery can mean; `limit` says what it may be. */
    | { readonly kind: 'beyond'; readonly limit: ToldLimit }
    | {
        readonly kind: 'grouped';
        readonly readings: readonly string[];
        readonly first: string;
        readonly rest: string;
      }
  );
export type QuantityKind = Quantity['kind'];
export type QuantityOf<K extends QuantityKind> = Extract<Quantity, { kind: K }>;

export type Per =
  | { readonly measure: 'mass'; readonly grams: number }
  | { readonly measure: 'volume'; readonly millilitres: number }
  | { readonly measure: 'count'; readonly count: number };

/** A name as written, and folded so that two spellings of one name are equal. */
export interface Name extends Span {
  readonly text: string;
  readonly folded: string;
}

/** Why an amount is not known: it is not there, is not finished, cannot be read, or cannot be planned. */
export type Unread = 'missing' | 'half-typed' | 'unreadable' | 'not-planned';

/** What an ingredient or plan line asks for. `unknown` keeps the reason and says nothing itself. */
export type Amount = Span &
  (
    | { readonly kind: 'fraction'; readonly fraction: number; readonly aPiece?: true }
    | { readonly kind: 'mass'; readonly grams: number; readonly aPiece?: true; readonly baked?: true }
    | {
        readonly kind: 'volume';
        readonly millilitres: number;
        readonly cups?: number;
        readonly aPiece?: true;
      }
    | { readonly kind: 'count'; readonly count: number; readonly aPiece?: true }
    /** Percent of all flour of the formula, in a part too. */
    | { readonly kind: 'ofAllFlour'; readonly fraction: number }
    | { readonly kind: 'balance' }
    | { readonly kind: 'remaining' }
    | { readonly kind: 'hydration'; readonly fraction: number; readonly effective: boolean }
    | { readonly kind: 'unknown'; readonly reason: Unread }
  );

/** One thing a `load` or `add` line puts in the bowl. */
export interface LoadItem extends Span {
  readonly name: Name;
  readonly all: boolean;
  readonly remaining: boolean;
  /** Everything that no other line of the programme names, but for these: `all`, `all but butter`, `the rest`. */
  readonly allBut?: readonly Name[];
  readonly portion?: LoadPortion;
  readonly celsius?: number;
}

/** How much of it goes in now: percent of the flour, a share of what its line has, a weight, or words that do not say it, `most of`. */
export type LoadPortion = Span &
  (
    | { readonly kind: 'ofFlour'; readonly fraction: number }
    | { readonly kind: 'ofLine'; readonly fraction: number }
    | { readonly kind: 'weight'; readonly grams: number }
    | { readonly kind: 'unsaid' }
  );

/** A stretch of work on a dough: `speed 1 for 60 min`, `knead 12 min`, `rest 20 min`. */
export type RunPart = Span & { readonly seconds: number } & (
    | { readonly kind: 'speed'; readonly number: number }
    | { readonly kind: 'knead' | 'fold' | 'stir' | 'rest' }
  );

/** One of several times of a line, seconds. */
export type MomentRead = Span & { readonly seconds: number };

/** What was seen and felt of a dough. */
export interface Seen {
  readonly stage?: Name;
  /** How the dough looked and felt, in the words there are for it. */
  readonly feel?: readonly Name[];
  /** Words that are neither a stage nor one of feel, and a second stage. */
  readonly unread?: readonly Name[];
}

/** The value of a property line, by its form. */
export type Value =
  | ({ readonly form: 'temperature'; readonly celsius: number; readonly withinCelsius?: number } & Seen)
  | { readonly form: 'difference'; readonly celsius: number }
  | { readonly form: 'mass'; readonly grams: number }
  | { readonly form: 'volume'; readonly millilitres: number }
  | { readonly form: 'count'; readonly count: number }
  | { readonly form: 'fraction'; readonly fraction: number; readonly atMoisture?: number }
  | { readonly form: 'times'; readonly factor: number }
  | {
      readonly form: 'duration';
      readonly seconds: number;
      readonly celsius?: number;
      readonly atGrams?: number;
    }
  | { readonly form: 'energy'; readonly kilojoules: number }
  | { readonly form: 'density'; readonly gramsPerMillilitre: number }
  | { readonly form: 'price'; readonly amount: number; readonly currency: Currency; readonly per: Per }
  | { readonly form: 'word'; readonly word: string; readonly span: Span }
  | { readonly form: 'name'; readonly name: Name }
  | { readonly form: 'names'; readonly names: readonly Name[] }
  | { readonly form: 'massRange'; readonly leastGrams?: number; readonly mostGrams: number }
  | {
      readonly form: 'machineSpeed';
      readonly number: number;
      readonly rpm: number;
      readonly celsiusPerMinute?: number;
      readonly withinPerMinute?: number;
      readonly develops?: number;
      readonly developsWithin?: number;
    }
  | { readonly form: 'mixSpeed'; readonly number: number; readonly seconds: number }
  | { readonly form: 'load'; readonly items: readonly LoadItem[] }
  | { readonly form: 'draws'; readonly fraction: number; readonly all: boolean; readonly name: Name }
  | { readonly form: 'yieldPieces'; readonly count: number; readonly grams: number; readonly baked: boolean }
  | { readonly form: 'yieldMass'; readonly grams: number; readonly baked: boolean }
  | { readonly form: 'yieldFlour'; readonly grams: number }
  /** Without a temperature it has words of what was seen. */
  | ({ readonly form: 'reading'; readonly seconds: number; readonly celsius?: number } & Seen)
  /** What was seen at the end of mixing where nobody took the temperature. */
  | ({ readonly form: 'seen' } & Seen)
  | { readonly form: 'mixedIn'; readonly name?: Name; readonly byHand?: true }
  | { readonly form: 'rise'; readonly fraction: number; readonly seconds: number }
  | { readonly form: 'partTemperature'; readonly name: Name; readonly celsius: number }
  | {
      readonly form: 'testedDough';
      readonly name: Name;
      /** Where it is mixed, where that is not what its programme says. */
      readonly mixer?: Name;
      readonly byHand?: true;
      /** How it is worked, where that is not its programme. */
      readonly run: readonly RunPart[];
      /** Words behind a comma that are none of these. */
      readonly unread?: Name;
    }
  | { readonly form: 'minutes'; readonly times: readonly MomentRead[] }
  | { readonly form: 'stock'; readonly name: Name; readonly grams: number }
  | { readonly form: 'ready'; readonly date?: string; readonly minutes: number };

/** What one line says. */
export type Statement =
  | { readonly kind: 'blank' }
  | HeaderStatement
  | PropertyStatement
  | IngredientStatement
  | PlannedStatement
  | StepStatement
  | { readonly kind: 'note'; readonly text: string }
  /** A line of a section nobody knows: kept, and silent. */
  | { readonly kind: 'silent' }
  /** A line with a problem that leaves nothing to compute with. */
  | { readonly kind: 'unreadable' };

export interface HeaderStatement {
  readonly kind: 'header';
  readonly section: SectionKind | 'unknown';
  /** Of a section that nobody knows: it stands in a formula and does not end it. */
  readonly within?: true;
  /** The section word or words. */
  readonly keyword: Span;
  readonly name?: Name;
  /** The part that a `mix PART in` or a `process PART` is about. */
  readonly part?: Name;
  /** The formula that a variant takes everything of that it does not say itself: `formula NAME like BASE:`. */
  readonly base?: Name;
  /** The mixer of a `mix in`; `by hand` sets `byHand` instead. */
  readonly mixer?: Name;
  readonly byHand?: true;
  readonly date?: string;
  readonly words?: string;
}

export interface PropertyStatement {
  readonly kind: 'property';
  /** The property word as the table spells it. */
  readonly property: string;
  readonly keyword: Span;
  /** Where the value stands; empty right after the word when nothing is written yet. */
  readonly valueSpan: Span;
  /** Absent when the value is missing or could not be read; the line then has a problem or is half typed. */
  readonly value?: Value;
}

export interface IngredientStatement {
  readonly kind: 'ingredient';
  readonly name: Name;
  readonly amount: Amount;
  /** `at 8 °C` after the comma. */
  readonly celsius?: number;
}

export interface PlannedStatement {
  readonly kind: 'planned';
  readonly name: Name;
  readonly amount: Amount;
  readonly readyMinutes?: number;
}

export interface StepStatement {
  readonly kind: 'step';
  readonly words: Name;
  /** The known first word (bulk, fold, bake …), when it is one. */
  readonly known?: string;
  readonly seconds?: number;
  readonly celsius?: number;
  /** Times of folds said in the remarks, seconds from the start of the step. */
  readonly foldSeconds: readonly number[];
  readonly remarks: readonly string[];
  /** It stands among ingredients or in a mix, where no process has begun: the first of its steps. */
  readonly begins?: true;
}

/** What came of reading the words of one line. */
export interface LineRead {
  readonly statement: Statement;
  readonly problems: readonly SyntaxProblem[];
  readonly otherwise?: IngredientStatement | PlannedStatement;
  readonly further?: readonly PropertyStatement[];
}

export interface Accept {
  readonly span: Span;
  readonly codes: readonly { readonly code: string; readonly span: Span }[];
  readonly reason?: string;
}

/** One line, read. Spans are columns of the line, so an unmoved line is read once wherever it stands. */
export interface ParsedLine {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly statement: Statement;
  /** The other reading of a line whose number looked grouped, taken where its name is known. */
  readonly otherwise?: IngredientStatement | PlannedStatement;
  /** What a line of a mix says behind its statement, where it says several lines of the notation in other words. */
  readonly further?: readonly PropertyStatement[];
  readonly problems: readonly SyntaxProblem[];
  readonly accept?: Accept;
  /** Nothing but blanks and comment. */
  readonly empty: boolean;
}

/** A section and the lines it holds; line numbers count from the first line of its block. */
export interface Section {
  readonly kind: SectionKind | 'unknown';
  readonly header: HeaderStatement;
  readonly headerLine: number;
  /** One past the last line that belongs to it. */
  readonly endLine: number;
  /** The lines it holds below its header, where they are not those between the two: of a variant made whole. */
  readonly held?: readonly number[];
}

/** The lines that a section holds below its header, in their order. */
export function linesOf({ headerLine, endLine, held }: Section): readonly number[] {
  return held ?? Array.from({ length: endLine - headerLine - 1 }, (_, index) => headerLine + 1 + index);
}

/**
 * A top-level section with the sections that belong to it; lines before the first header make a block without a
 * header. A block whose lines are the same objects as before means the same, wherever it has moved.
 */
export interface Block {
  readonly lines: readonly ParsedLine[];
  readonly top?: Section;
  readonly subs: readonly Section[];
  /** Problems of headers in their surroundings, with lines counted from the block's first. */
  readonly problems: readonly (SyntaxProblem & { readonly line: number })[];
}

export interface SourceFile {
  readonly lines: readonly ParsedLine[];
  readonly endings: readonly string[];
  readonly blocks: readonly { readonly block: Block; readonly firstLine: number }[];
}
