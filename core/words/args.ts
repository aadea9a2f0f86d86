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
  readonly trialCount: number;
  /** A share of something, 1 for all of it. */
  readonly fraction: number;
  readonly lowFraction: number;
  readonly highFraction: number;
  readonly usualFraction: number;
  readonly heldFraction: number;
  readonly laterFraction: number;
  /** As it is wanted; and the most that may be. */
  readonly targetFraction: number;
  readonly limitFraction: number;
  /** So many times as fast or as much, from the one to the other. */
  readonly lowFactor: number;
  readonly highFactor: number;
  /** Points of percent between two shares, as a fraction. */
  readonly apartFraction: number;
  /** Half the width of a band. */
  readonly withinFraction: number;
  readonly grams: number;
  readonly otherGrams: number;
  readonly doughGrams: number;
  readonly pouredGrams: number;
  readonly bakedGrams: number;
  readonly lostGrams: number;
  /** Dough left in bowl, on table and hands. */
  readonly stuckGrams: number;
  readonly iceGrams: number;
  /** Water beside ice, from the tap. */
  readonly tapGrams: number;
  readonly leastGrams: number;
  readonly mostGrams: number;
  readonly gramsPerMillilitre: number;
  /** Grams of water to 100 g of flour; and those that a dough is as soft as. */
  readonly waterPerHundred: number;
  readonly softPerHundred: number;
  readonly microgramsPerKilogram: number;
  readonly hours: number;
  readonly minutes: number;
  readonly lowMinutes: number;
  readonly highMinutes: number;
  /** How long a whole programme lasts. */
  readonly programmeMinutes: number;
  readonly seconds: number;
  readonly otherSeconds: number;
  readonly usualSeconds: number;
  readonly lowSeconds: number;
  readonly highSeconds: number;
  readonly celsius: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** Either way of a temperature. */
  readonly bandCelsius: number;
  readonly targetCelsius: number;
  readonly limitCelsius: number;
  readonly doughCelsius: number;
  readonly waterCelsius: number;
  readonly tapCelsius: number;
  /** Differences of temperatures: above what is wanted, between two, a part of one, by how much water is colder. */
  readonly overCelsius: number;
  readonly apartCelsius: number;
  /** By how much readings are missed once a mixer is calibrated. */
  readonly laterCelsius: number;
  readonly partCelsius: number;
  readonly colderCelsius: number;
  /** Between two temperatures. */
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly kilojoules: number;
  /** Money, in a currency by its three letters. */
  readonly amount: number;
  readonly currency: string;
  readonly otherCurrency: string;
  readonly celsiusPerMinute: number;
  readonly rpm: number;
  /** A step of a mixer, a line as people count them: a number that measures nothing. */
  readonly number: number;
  readonly otherNumber: number;
  readonly slowestNumber: number;
  /** The ends of what a setting may be. */
  readonly leastNumber: number;
  readonly mostNumber: number;

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
  readonly otherProperty: string;
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
  /** What a finding says, in the words it was given. */
  readonly sentence: string;
  /** A whole line of the notation, to show how it reads. */
  readonly example: string;
  /** A file or a folder by its path as it is shown, or by its name alone. */
  readonly file: string;
  readonly otherFile: string;
  readonly files: readonly string[];
  /** A state of a repository as it was asked for; and its commit by the first signs of its name. */
  readonly revision: string;
  readonly commit: string;
  /** What a program is called with, or what is to be typed: an option, a command, a setting of an editor or of git. */
  readonly option: string;
  readonly command: string;
  readonly setting: string;

  /** Messages within a message. */
  readonly reason: Said;
  readonly title: Said;
  /** How warm a dough is, the stage it is in, and how far it is wished to be mixed. */
  readonly warmth: Said;
  readonly stage: Said;
  readonly otherStage: Said;
  readonly degree: Said;
  /** The dough at a moment: as it is, as it was measured, as it is computed, and how these two differ. */
  readonly state: Said;
  readonly measured: Said;
  readonly computed: Said;
  readonly difference: Said;
  /** Figures of a line; where a figure comes from; which water; where and when something happens. */
  readonly figures: Said;
  readonly source: Said;
  readonly otherSource: Said;
  /** What is to be added about a row of a table. */
  readonly remark: Said;
  readonly water: Said;
  readonly place: Said;
  /** What an ingredient is for in a dough; what a word of the notation stands for. */
  readonly role: Said;
  readonly meaning: Said;
  readonly when: Said;
  readonly otherWhen: Said;
  readonly facts: readonly Said[];
  /** Those that stand side by side: one at the least. */
  readonly parts: readonly Said[];
}

/** The arguments of a message, by their names. */
export type Args<N extends keyof Arg> = Pick<Arg, N>;

/** What a message without arguments takes. */
export type NoArgs = Readonly<Record<string, never>>;
