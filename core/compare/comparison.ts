/**
 * What changed between two states of a formula, of a file or of a whole folder, as plain data that anybody can show: every
 * change has its words ready and its figures beside them, the unit in their names.
 */
export interface Comparison {
  /** The heaviest of what follows. */
  readonly verdict: Verdict;
  /** In the order of the files and their lines; those of which nothing changed are left out. */
  readonly formulas: readonly FormulaComparison[];
  /** Flours, ingredients, mixers, bakeries and plans; those of which nothing changed are left out. */
  readonly definitions: readonly DefinitionComparison[];
  /** Of what got another name, each formula in which it stands; counted where it is told. */
  readonly named?: readonly NamedAnew[];
}

/**
 * From light to heavy: nothing differs but the file it stands in; only blanks, comments and the order of sections differ; other words for the same
 * figures; something a baker does or weighs, or what comes of it, differs.
 */
export type Verdict = 'same' | 'layout' | 'wording' | 'changed';

export type Fate = 'added' | 'removed' | 'kept';

/** Where something stands: the file as it was named to the comparison, its line counted from zero. */
export interface PlaceInFile {
  readonly file: string;
  readonly line: number;
}

export interface FormulaComparison {
  readonly formula: string;
  readonly fate: Fate;
  readonly verdict: Verdict;
  /** Its name before, where the two differ. */
  readonly renamedFrom?: string;
  /** Its file before, where the two differ. */
  readonly movedFrom?: string;
  /** Nothing of it is written differently: what changed follows from something outside it, such as a flour or a bakery. */
  readonly follows?: true;
  readonly before?: PlaceInFile;
  readonly after?: PlaceInFile;
  readonly groups: readonly ChangeGroup[];
}

export interface DefinitionComparison {
  readonly kind: 'flour' | 'ingredient' | 'mixer' | 'bakery' | 'plan' | 'experiment';
  readonly name: string;
  readonly fate: Fate;
  readonly verdict: Verdict;
  /** Its name before, where the two differ and its lines are the very same but for a price and notes. */
  readonly renamedFrom?: string;
  /** How many formulas and lists of ingredients say its new name where they said the old one; it is told in none of them. */
  readonly namedIn?: { readonly formulas: number; readonly ingredientLists: number };
  readonly movedFrom?: string;
  readonly before?: PlaceInFile;
  readonly after?: PlaceInFile;
  readonly changes: readonly Change[];
}

export type Subject =
  | 'label'
  | 'makes'
  | 'dough'
  | 'ingredients'
  | 'part'
  | 'mixing'
  | 'temperatures'
  | 'process'
  | 'cost'
  | 'trials'
  | 'findings'
  | 'wording'
  | 'merge';

/** Changes of one subject, under a title a baker reads. */
export interface ChangeGroup {
  readonly subject: Subject;
  readonly title: string;
  readonly changes: readonly Change[];
}

export interface Change {
  /** What it is that changed, in the words of the notation. */
  readonly name: string;
  /** Absent where it is new. */
  readonly before?: Told;
  /** Absent where it is gone. */
  readonly after?: Told;
  /** How much more or less, in words: `+0.2 points`, `+17 g`; or what else is to be said of it: `accepted: reason`. */
  readonly by?: string;
}

/** A value in words, with such figures as there are. Fractions are of flour. */
export interface Told {
  readonly text: string;
  /** Beside the first figure: the weight beside a percentage. */
  readonly beside?: string;
  readonly fraction?: number;
  readonly grams?: number;
  readonly celsius?: number;
  readonly minutes?: number;
  readonly pieces?: number;
  readonly amount?: number;
  /** Of a finding: `error`, `warning`, `info` or `hint`. */
  readonly level?: string;
  /** A finding that somebody let stand. */
  readonly accepted?: true;
  /** The line that says it, counted from zero in its file. */
  readonly line?: number;
}

/** What was called otherwise before and has the very same lines now but for a price and notes, none other having them. */
export interface Renaming {
  readonly kind: string;
  readonly from: string;
  readonly to: string;
  /** Where its name stood before: the column just before its end. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** Where it is defined now. */
  readonly fileNow: string;
}

/** Where a new name stands, which is told with it and nowhere else. */
export interface NamedAnew {
  readonly renaming: Renaming;
  /** Its lines name it. */
  readonly inFormula: boolean;
  /** The list of ingredients of its label does. */
  readonly onLabel: boolean;
}
