import type { UsualConditions } from '../model/scope.ts';
import type { Level } from '../rules/engine/finding.ts';
import { type Display, plainDisplay } from '../text/display.ts';
import { english, type Grammar, type Language, plainGrammar } from '../words/language.ts';

/** What the people who run the core may set; every field has a default. */
export interface Settings {
  /** The level of a rule by its code; `off` silences it everywhere. */
  readonly rules: Readonly<Record<string, Level | 'off'>>;
  /** The most findings of one file that are told; the rest is counted in one last finding. */
  readonly maxFindings: number;
  /** Figures that a half-typed line makes unknown for a moment are answered as they were last, in brackets. */
  readonly keepsLastFigures: boolean;
  /** How figures are shown. */
  readonly display: Display;
  /** Beside each weight on a batch sheet stands what one scale reads after it. */
  readonly scaleReading: boolean;
  /** What holds where no bakery says otherwise. */
  readonly usual: UsualConditions;
  /** The language that answers are worded in. */
  readonly language: Language;
  /** How that language forms plurals and lists, as the host knows. */
  readonly grammar: Grammar;
}

export const defaultSettings: Settings = {
  rules: {},
  maxFindings: 200,
  keepsLastFigures: false,
  display: plainDisplay,
  scaleReading: true,
  usual: {},
  language: english,
  grammar: plainGrammar,
};
