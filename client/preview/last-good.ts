import type { SheetBlock, SheetFact, SheetTrial, SheetView } from '../../server/protocol.ts';

/**
 * The figures of the last sheet that was whole, under a sheet that is held up: the figures stay, and what is said of
 * them (findings, the line that holds it up) is what holds now. Lines are carried over by name, so that a finding still
 * stands at its row when lines were added above; what is gone from the file keeps no line that a finding could take.
 */
export function overLastGood(good: SheetView, held: SheetView): SheetView {
  const blocks = good.blocks.map((block) => {
    const now = held.blocks.find((other) => other.title === block.title);
    return { ...block, line: now?.line ?? gone, rows: rowsWithLines(block, now) };
  });
  const phases = good.mixing?.phases.map((phase, index) => ({
    ...phase,
    line: held.mixing?.phases[index]?.line ?? gone,
  }));
  return {
    ...held,
    makes: good.makes,
    batches: good.batches,
    facts: factsWithLines(good.facts, held.facts),
    blocks,
    steps: good.steps.map((step, index) => ({ ...step, line: held.steps[index]?.line ?? gone })),
    timeline: good.timeline,
    yields: factsWithLines(good.yields, held.yields),
    // What it costs and what a label says are figures of the whole batch too.
    ...(good.cost ? { cost: good.cost } : {}),
    ...(good.label ? { label: good.label } : {}),
    trials: good.trials.map((trial) => trialWithLines(trial, held.trials)),
    charts: good.charts,
    cautions: good.cautions,
    ...(good.water
      ? { water: { ...good.water, line: held.water?.line ?? lineOfWaterRow(good, blocks) } }
      : {}),
    ...(good.mixing && phases ? { mixing: { ...good.mixing, line: held.mixing?.line ?? gone, phases } } : {}),
  };
}

/** No line of a file; a button with it shows the formula's own line instead. */
export const gone = -1;

/** A held sheet knows no water temperature yet, but the row it belongs to is still there. */
function lineOfWaterRow(good: SheetView, blocks: readonly SheetBlock[]): number {
  for (const [b, block] of good.blocks.entries()) {
    const row = block.rows.findIndex((one) => one.line === good.water?.line);
    if (row >= 0 && block.kind === 'bowl') return blocks[b]?.rows[row]?.line ?? gone;
  }
  return gone;
}

function factsWithLines(facts: readonly SheetFact[], now: readonly SheetFact[]): SheetFact[] {
  return facts.map(({ line: _, ...fact }) => {
    const line = now.find((other) => other.key === fact.key)?.line;
    return line === undefined ? fact : { ...fact, line };
  });
}

function trialWithLines(trial: SheetTrial, now: readonly SheetTrial[]): SheetTrial {
  const same = now.find(({ title }) => title === trial.title);
  const readings = trial.readings.map((reading, index) => {
    return { ...reading, line: same?.readings[index]?.line ?? gone };
  });
  return { ...trial, line: same?.line ?? gone, readings };
}

function rowsWithLines(block: SheetBlock, now: SheetBlock | undefined): SheetBlock['rows'] {
  // A name may stand twice in a block: the first takes the first line of that name, the second the next.
  const left = [...(now?.rows ?? [])];
  return block.rows.map((row) => {
    const index = left.findIndex((other) => other.name === row.name);
    const line = index < 0 ? gone : left.splice(index, 1)[0]!.line;
    return { ...row, line };
  });
}
