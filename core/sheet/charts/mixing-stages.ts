import { type MixingStage, stageOf } from '../../calc/mixing/development.ts';
import type { ProgrammeCurve } from '../../facts/programme-curve.ts';

export interface StageStretch {
  readonly stage: MixingStage;
  /** Minutes of the programme. */
  readonly from: number;
  readonly to: number;
}

/** The stages that a dough goes through within its programme, one after another; none where no development is known. */
export function stagesOf(curve: ProgrammeCurve): StageStretch[] {
  const known = curve.points.flatMap(({ minutes, development }) =>
    development === undefined ? [] : [{ minutes, development }],
  );
  if (known.length < 2) return [];
  const end = known.at(-1)!.minutes;
  // Development alone tells the stages up to developed; what comes after is told by its own moments.
  const after = (['let-down', 'breakdown'] as const).flatMap((stage) => {
    const at = curve.bands.find(({ kind }) => kind === stage)?.expectedMinutes;
    return at !== undefined && at < end ? [{ stage, at }] : [];
  });
  const turns: { stage: MixingStage; at: number }[] = [
    { stage: stageOf(known[0]!.development, 0), at: known[0]!.minutes },
  ];
  for (const [index, right] of known.entries()) {
    const left = known[index - 1] ?? right;
    let low = left.minutes;
    while (stageAt(left, right, low) !== stageOf(right.development, 0)) {
      const turn = nextTurn(left, right, low);
      turns.push({ stage: stageAt(left, right, turn), at: turn });
      low = turn;
    }
  }
  const all = [...turns.filter(({ at }) => at < (after[0]?.at ?? Number.POSITIVE_INFINITY)), ...after];
  return all
    .map(({ stage, at }, index) => ({ stage, from: at, to: all[index + 1]?.at ?? end }))
    .filter(({ from, to }) => to > from);
}

interface Known {
  readonly minutes: number;
  readonly development: number;
}

function stageAt(left: Known, right: Known, minutes: number): MixingStage {
  const span = right.minutes - left.minutes;
  const part = span > 0 ? (minutes - left.minutes) / span : 1;
  return stageOf(left.development + part * (right.development - left.development), 0);
}

/** The first minute after `from` at which the stage is another, to a thousandth; development only ever grows. */
function nextTurn(left: Known, right: Known, from: number): number {
  const stage = stageAt(left, right, from);
  let [same, other] = [from, right.minutes];
  while (other - same > 1e-3) {
    const middle = (same + other) / 2;
    if (stageAt(left, right, middle) === stage) same = middle;
    else other = middle;
  }
  return other;
}
