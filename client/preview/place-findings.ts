import type { SheetFinding, SheetView } from '../../server/protocol.ts';

/** A place of the sheet that a finding can stand at. */
export type SheetPlace =
  | `row ${number} ${number}`
  | `block ${number}`
  | `phase ${number}`
  | `step ${number}`
  | `fact ${string}`
  | `yield ${string}`
  | `trial ${number}`
  | 'water'
  | 'mixing'
  | 'heading';

export type PlacedFindings = ReadonlyMap<SheetPlace, readonly SheetFinding[]>;

/**
 * Gives every finding the one place it concerns, by its line: the thing weighed first, then the block, the mixing, the
 * steps, the facts, what comes of it and the trials. A line that shows nowhere on the sheet is told under the heading.
 */
export function placeFindings(view: SheetView): PlacedFindings {
  const placeOfLine = new Map<number, SheetPlace>();
  const claim = (line: number | undefined, place: SheetPlace) => {
    if (line !== undefined && line !== view.line && !placeOfLine.has(line)) placeOfLine.set(line, place);
  };
  for (const [b, block] of view.blocks.entries()) {
    for (const [r, row] of block.rows.entries()) claim(row.line, `row ${b} ${r}`);
  }
  for (const [p, phase] of (view.mixing?.phases ?? []).entries()) claim(phase.line, `phase ${p}`);
  claim(view.mixing?.line, 'mixing');
  for (const [b, block] of view.blocks.entries()) claim(block.line, `block ${b}`);
  claim(view.water?.line, 'water');
  for (const [s, step] of view.steps.entries()) claim(step.line, `step ${s}`);
  for (const fact of view.facts) claim(fact.line, `fact ${fact.key}`);
  for (const fact of view.yields) claim(fact.line, `yield ${fact.key}`);
  for (const [t, trial] of view.trials.entries()) {
    for (const line of [trial.line, ...trial.readings.map((reading) => reading.line)])
      claim(line, `trial ${t}`);
  }

  const placed = new Map<SheetPlace, SheetFinding[]>();
  for (const finding of view.findings) {
    const place = placeOfLine.get(finding.line) ?? blockAround(view, placeOfLine, finding.line) ?? 'heading';
    const here = placed.get(place);
    if (here) here.push(finding);
    else placed.set(place, [finding]);
  }
  return placed;
}

/**
 * What a preferment or a soaker says of itself (what it draws, how long it ferments) is no row of its block: a line between
 * the lines that are shown of it belongs to it, up to the next thing that is shown.
 */
function blockAround(
  view: SheetView,
  placeOfLine: ReadonlyMap<number, SheetPlace>,
  line: number,
): SheetPlace | undefined {
  const shown = [...placeOfLine.keys()];
  const before = placeOfLine.get(Math.max(...shown.filter((one) => one < line)));
  const [, b] = /^(?:row|block) (\d+)/.exec(before ?? '') ?? [];
  const block = b === undefined ? undefined : view.blocks[Number(b)];
  if (block === undefined || (block.kind !== 'before' && block.kind !== 'apart')) return undefined;
  // The header of the steps is shown nowhere.
  const isStepsHeader = placeOfLine.get(line + 1) === 'step 0';
  return block.line >= 0 && block.line < line && !isStepsHeader ? `block ${Number(b)}` : undefined;
}
