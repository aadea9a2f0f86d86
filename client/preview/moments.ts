import type { SheetBlock, SheetPhase, SheetStep, SheetView } from '../../server/protocol.ts';

/** One moment of the work, as a baker meets it: something to weigh, something the mixer does, or a step after it. */
export type Moment =
  | { readonly kind: 'weigh'; readonly key: string; readonly line: number; readonly block: SheetBlock }
  | { readonly kind: 'mix'; readonly key: string; readonly line: number; readonly phase: SheetPhase }
  | { readonly kind: 'step'; readonly key: string; readonly line: number; readonly step: SheetStep };

/**
 * The sheet as a row of moments in the order of the work: what is made before, the bowl and the programme as their lines
 * follow each other, what stays apart, the steps. Keys stay the same while lines above are typed.
 */
export function momentsOf(view: SheetView): readonly Moment[] {
  const seen = new Map<string, number>();
  const keyOf = (words: string) => {
    const count = (seen.get(words) ?? 0) + 1;
    seen.set(words, count);
    return `${words} ${count}`;
  };
  const weigh = (block: SheetBlock): Moment => ({
    kind: 'weigh',
    key: keyOf(`weigh ${block.kind} ${block.title}`),
    line: block.line,
    block,
  });
  const ofKind = (...kinds: readonly SheetBlock['kind'][]) =>
    view.blocks.filter(({ kind }) => kinds.includes(kind)).map(weigh);
  const phases = (view.mixing?.phases ?? []).map(
    (phase): Moment => ({ kind: 'mix', key: keyOf(`mix ${phase.label}`), line: phase.line, phase }),
  );
  const bowl = [...ofKind('bowl', 'later'), ...phases].sort((one, other) => one.line - other.line);
  const steps = view.steps.map(
    (step): Moment => ({ kind: 'step', key: keyOf(`step ${step.text}`), line: step.line, step }),
  );
  return [...ofKind('before'), ...bowl, ...ofKind('apart'), ...steps];
}

/** What a moment is called: `Into the bowl`, `speed 1`, `bulk 1 h 30 min at 25 °C`. */
export function momentTitle(moment: Moment): string {
  if (moment.kind === 'weigh') return moment.block.title;
  return moment.kind === 'mix' ? moment.phase.label : moment.step.text;
}

/** How long a moment takes, in seconds, where the file says so: what a timer of it runs. */
export function momentSeconds(moment: Moment): number | undefined {
  if (moment.kind === 'mix') return moment.phase.minutes * 60;
  return moment.kind === 'step' ? moment.step.seconds : undefined;
}
