import { message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { RuleContext, RuleFinding } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { causesOf, holds, isGuessed, isMostlyGluten, phaseAt, type RunMix, stopFix } from './mixes.ts';

/** The band in which a dough comes to lie that is mixed too far, minutes of the programme, and where the programme is by then. */
export interface TooFar {
  readonly code: 'let-down' | 'broken-down';
  readonly band: { readonly low: number; readonly high: number };
  readonly minutes: number;
  /** The programme ends past the expected minute of the band. */
  readonly isPast: boolean;
}

const sentences = {
  'let-down': { is: 'let-down.is', mayBe: 'let-down.may-be' },
  'broken-down': { is: 'broken-down.is', mayBe: 'broken-down.may-be' },
} as const;

/** The finding on a dough that is mixed too far: that it is where all of a band lies in the programme, else that it may be. */
export function tooFarFinding(
  context: RuleContext,
  run: RunMix,
  { code, band, minutes, isPast }: TooFar,
  developedMinutes: number,
): RuleFinding {
  const { programmeMinutes } = run.mix.outcome;
  const line = phaseAt(run, minutes)?.line ?? run.model.headerLine;
  const isGuess = isGuessed(run);
  const isWhole = band.high <= programmeMinutes;
  const isSure = isMostlyGluten(run) && (!isGuess || isWhole);
  const facts = { lowMinutes: band.low, highMinutes: band.high, programmeMinutes, minutes: developedMinutes };
  const said = message(sentences[code][isWhole && isSure && !isGuess ? 'is' : 'mayBe'], facts);
  return {
    line,
    span: wordsOf(context.block, line),
    message: paragraph(said, isGuess ? message('mix.guess') : undefined),
    ...(isSure && isPast ? {} : { level: 'info' }),
    related: causesOf(context, run),
    fixes: stopFix(context, run, developedMinutes, holds),
  };
}
