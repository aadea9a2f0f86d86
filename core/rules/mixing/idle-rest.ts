import type { MixingPhase } from '../../calc/mixing/mixing-programme.ts';
import { elementAt } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import { removeLineFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { doughMixes, type RunMix } from './mixes.ts';

/** Rests shorter than this, in minutes, only let the baker reach for the scraper. */
const leastMinutes = 5;
/** From this development on a rest before more kneading spares no work any more. */
const alreadyDeveloped = 1;
/** A rest with the salt in is told from here on, minutes; up to here it rests the arms or the motor. */
const leastSaltedMinutes = 15;
/** Water to flour below which nothing is wetted. */
const wetting = 0.05;

export const idleRest: Rule = {
  code: 'idle-rest',
  level: 'hint',
  title: 'A rest in the programme does nothing for the dough',
  explanation:
    'Flour and water that rest together before kneading need up to a fifth less of it (30 minutes, common practice). A rest before both are ' +
    'in the bowl cannot do that; with the salt in it does far less; a developed dough gains nothing from it before more work, and a rest ' +
    'at the end of the programme belongs to the bulk. All of them bring the dough nearer to the temperature of the room. Rests ' +
    'between folds, before an addition, and of less than five minutes are left alone.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 4 min\n  speed 2 for 4 min\n  rest 20 min\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water\n' +
    '  speed 1 for 3 min\n  rest 20 min\n  add salt\n  speed 1 for 3 min\n  speed 2 for 3 min\n',
  *check({ analysis, block }) {
    for (const run of doughMixes(analysis)) {
      for (const [index, phase] of run.mix.input.phases.entries()) {
        if (phase.kind !== 'rest' || phase.seconds < leastMinutes * 60) continue;
        const why = whyIdle(run, index, phase.seconds / 60);
        const line = elementAt(run.mix.phaseLines, index);
        if (why === undefined) continue;
        yield {
          line,
          span: wordsOf(block, line),
          message: message(`idle-rest.${why.kind}`, { seconds: phase.seconds }),
          fixes: why.canGo ? [removeLineFix(message('idle-rest.fix-take-out'), block, line)] : [],
        };
      }
    }
  },
};

/** Why a rest does nothing, and whether it can be taken out. */
interface Idle {
  readonly kind: 'before-both' | 'at-end' | 'developed' | 'salted';
  readonly canGo: boolean;
}

function whyIdle(run: RunMix, index: number, minutes: number): Idle | undefined {
  const { input, outcome } = run.mix;
  const portions = input.phases
    .slice(0, index)
    .flatMap((phase) => ('portions' in phase ? phase.portions : []));
  const sum = (grams: 'flourGrams' | 'freeWaterGrams' | 'saltGrams'): number =>
    portions.reduce((all, portion) => all + Math.max(0, portion[grams]), 0);
  // The trace of water in dry things wets nothing.
  if (sum('flourGrams') === 0 || sum('freeWaterGrams') <= wetting * sum('flourGrams'))
    return { kind: 'before-both', canGo: true };
  const next = input.phases.slice(index + 1).find((phase) => phase.kind !== 'rest');
  if (next === undefined) return { kind: 'at-end', canGo: true };
  if (isGentle(next) || 'portions' in next) return undefined;
  const before = outcome.phaseEnds.findLast((end) => end.phase < index)?.development;
  if (before !== undefined && before >= alreadyDeveloped) return { kind: 'developed', canGo: true };
  if (sum('saltGrams') > 0 && minutes >= leastSaltedMinutes) return { kind: 'salted', canGo: false };
  return undefined;
}

function isGentle(phase: MixingPhase): boolean {
  return phase.kind === 'fold' || phase.kind === 'stir';
}
