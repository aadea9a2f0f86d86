import { type Message, message } from '../../words/message.ts';
import type { SheetFinding, SheetView } from './view.ts';

/** A place of a written sheet that a finding can stand at. */
export type SheetPlace =
  | `row ${number} ${number}`
  | `block ${number}`
  | `phase ${number}`
  | `moment ${number}`
  | `fact ${string}`
  | `yield ${string}`
  | `trial ${number}`
  | 'mixing'
  | 'heading';

export type FindingsAt = (place: SheetPlace) => readonly SheetFinding[];

/**
 * Gives every finding the one place it concerns, by its line: the thing weighed first, then a line of the mixing, the
 * mixing, the block, a moment of the clock, the yield, the facts and the trials. What shows nowhere stands below the heading.
 */
export function findingsByPlace(view: SheetView): FindingsAt {
  const placeOfLine = new Map<number, SheetPlace>();
  const claim = (line: number | undefined, place: SheetPlace): void => {
    if (line !== undefined && line !== view.line && !placeOfLine.has(line)) placeOfLine.set(line, place);
  };
  for (const [b, { rows }] of view.blocks.entries())
    for (const [r, { line }] of rows.entries()) claim(line, `row ${b} ${r}`);
  for (const [p, { line }] of (view.mixing?.phases ?? []).entries()) claim(line, `phase ${p}`);
  claim(view.mixing?.line, 'mixing');
  for (const [b, { line }] of view.blocks.entries()) claim(line, `block ${b}`);
  for (const [m, { line }] of view.timeline.moments.entries()) claim(line, `moment ${m}`);
  for (const { key, line } of view.yields) claim(line, `yield ${key}`);
  for (const { key, line } of view.facts) claim(line, `fact ${key}`);
  for (const [t, { line, readings }] of view.trials.entries())
    for (const one of [line, ...readings.map((reading) => reading.line)]) claim(one, `trial ${t}`);
  const placed = new Map<SheetPlace, SheetFinding[]>();
  for (const finding of view.findings) {
    const place = placeOfLine.get(finding.line) ?? blockAround(view, placeOfLine, finding.line) ?? 'heading';
    placed.set(place, [...(placed.get(place) ?? []), finding]);
  }
  return (place) => placed.get(place) ?? [];
}

/** What a part says of itself is no row of its block: a line below one that is shown of the part belongs to it. */
function blockAround(
  view: SheetView,
  placeOfLine: ReadonlyMap<number, SheetPlace>,
  line: number,
): SheetPlace | undefined {
  const before = Math.max(...[...placeOfLine.keys()].filter((one) => one < line));
  const [, b] = /^(?:row|block) (\d+)/.exec(placeOfLine.get(before) ?? '') ?? [];
  const block = b === undefined ? undefined : view.blocks[Number(b)];
  if (block === undefined || (block.kind !== 'before' && block.kind !== 'apart')) return undefined;
  // The header of the steps stands right above the first of them and is shown nowhere.
  const isStepsHeader = placeOfLine.get(line + 1)?.startsWith('moment') === true;
  return block.line < line && !isStepsHeader ? `block ${Number(b)}` : undefined;
}

/** A finding as it stands at its thing; at the heading it names its line. */
export function findingMessage({ level, message: sentence, line }: SheetFinding, named: boolean): Message {
  const title = message(`sheet-level.${level}`);
  return named
    ? message('sheet.finding-at', { title, number: line + 1, sentence })
    : message('sheet.finding', { title, sentence });
}
