import type { SheetFinding, SheetView } from '../../server/protocol.ts';

/** A place of the sheet that a finding can stand at. */
export type SheetPlace =
  | `row ${number} ${number}`
  | `block ${number}`
  | `phase ${number}`
  | `step ${number}`
  | `fact ${string}`
  | 'water'
  | 'mixing'
  | 'heading';

export type PlacedFindings = ReadonlyMap<SheetPlace, readonly SheetFinding[]>;

/**
 * Gives every finding the one place it concerns, by its line: the thing weighed first, then the block, the mixing, the
 * steps and the facts. A line that shows nowhere on the sheet is told under the heading.
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

  const placed = new Map<SheetPlace, SheetFinding[]>();
  for (const finding of view.findings) {
    const place = placeOfLine.get(finding.line) ?? 'heading';
    const here = placed.get(place);
    if (here) here.push(finding);
    else placed.set(place, [finding]);
  }
  return placed;
}
