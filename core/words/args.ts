import type { Said } from './speaker.ts';

/**
 * What a message may be given, by name: the name says what it is and its unit. A list is closed so that a name means
 * the same in every message, and so that the test of all messages knows what to put in. Another language may need what
 * English does not, so a message is given figures and names, and never a part of a sentence.
 */
export interface Arg {
  /** How many; plural forms follow it. */
  readonly count: number;
  readonly otherCount: number;
  /** A share of something, 1 for all of it. */
  readonly fraction: number;
  readonly lowFraction: number;
  readonly highFraction: number;
  readonly usualFraction: number;
  readonly heldFraction: number;
  /** Points of percent between two shares, as a fraction. */
  readonly apartFraction: number;
  readonly grams: number;
  readonly hours: number;
  /** A step of a mixer, a line as people count them: a number that measures nothing. */
  readonly number: number;

  /** What something is called in the file or the catalogue. */
  readonly name: string;
  readonly otherName: string;
  readonly part: string;
  /** Names, to be listed. */
  readonly names: readonly string[];
  /** Words of the notation, which no language translates: a section, a property, a unit, a code. */
  readonly section: string;
  readonly otherSection: string;
  readonly property: string;
  readonly unit: string;
  readonly code: string;
  readonly words: readonly string[];
  /** A piece of a file as it stands there. */
  readonly written: string;
  readonly otherWritten: string;
  /** What is to be written in its place, in the notation. */
  readonly meant: string;
  readonly otherMeant: string;
  /** Several of them, of which one is to be chosen. */
  readonly choices: readonly string[];
  /** A whole line of the notation, to show how it reads. */
  readonly example: string;

  /** Messages within a message. */
  readonly reason: Said;
  readonly facts: readonly Said[];
}

/** The arguments of a message, by their names. */
export type Args<N extends keyof Arg> = Pick<Arg, N>;

/** What a message without arguments takes. */
export type NoArgs = Readonly<Record<string, never>>;
