import type { Calibration } from '../../calc/calibration/calibration.ts';
import { developmentRate, findSpeed, type MixerData } from '../../calc/mixing/mixer.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import type { SaidProperties } from '../../model/properties.ts';
import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import type { RuleEdit } from '../engine/rule.ts';
import { quantityPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { clauseWithError } from './calibration-words.ts';

/** A factor on the development of some speeds with the band that the stages leave. */
export interface WrittenFactor {
  readonly least: number;
  readonly most: number;
  readonly middle: number;
  readonly speeds: readonly number[];
}

/** What of a section changes: each speed’s own line, the other properties, and new lines for what it does not say yet. */
export function calibrationEdits(
  block: Block,
  said: SaidProperties,
  { data }: Mixer,
  warming: Calibration | undefined,
  factor: WrittenFactor | undefined,
): RuleEdit[] {
  const added: string[] = [];
  const edits: RuleEdit[] = [];
  const clauses = new Map<number, SpeedClauses>();
  for (const one of warming?.parameters ?? []) {
    const clause = clauseWithError(one);
    if (clause === undefined) continue;
    const { quantity } = one;
    if (quantity.kind === 'warms') {
      clauses.set(quantity.speed, { warms: clause });
      continue;
    }
    const line = said.get(quantity.kind)?.[0]?.line;
    if (line !== undefined) edits.push(wholeLine(block, line, clause));
    else added.push(clause);
  }
  for (const number of factor?.speeds ?? []) {
    const develops = developsClause(data, number, factor!);
    if (develops !== undefined) clauses.set(number, { ...clauses.get(number), develops });
  }
  for (const [number, clause] of [...clauses].sort(([one], [other]) => one - other)) {
    const line = said
      .get('speed')
      ?.find(({ statement: { value } }) => value?.form === 'machineSpeed' && value.number === number)?.line;
    if (line !== undefined) edits.push(...speedEdits(block, line, clause));
    else {
      const rpm = data.speeds.find((speed) => speed.number === number)?.rpm;
      const words = [clause.warms, clause.develops].filter((text) => text !== undefined);
      if (rpm !== undefined) added.splice(0, 0, `speed ${number} ${rpm} rpm, ${words.join(', ')}`);
    }
  }
  return added.length === 0 ? edits : [...edits, belowAll(block, added.map(indented))];
}

interface SpeedClauses {
  readonly warms?: string;
  readonly develops?: string;
}

function developsClause(data: MixerData, number: number, factor: WrittenFactor): string | undefined {
  const speed = findSpeed(data, number);
  const rate = speed.known ? developmentRate(data, speed.value) : speed;
  if (!rate.known || data.kind === 'hand') return undefined;
  const within = Math.ceil((100 * rate.value * (factor.most - factor.least)) / 2 - 1e-9) / 100;
  return `develops ${trimmed(rate.value * factor.middle, 2)} times within ${trimmed(within, 2)} times`;
}

/** The clauses of a speed’s line: what is said already is replaced, the rest comes behind. */
function speedEdits(block: Block, line: number, { warms, develops }: SpeedClauses): RuleEdit[] {
  const turns = quantityPlace(block, line, 'turns');
  if (turns === undefined) return [];
  const { end } = wordsOf(block, line);
  const stated = elementAt(block.lines, line).text.slice(turns.end, end);
  const kept = (word: string): string | undefined =>
    stated
      .split(/,(?=\s*(?:warms|develops)\b)/iu)
      .map((text) => text.trim())
      .find((text) => text.toLowerCase().startsWith(word));
  const clauses = [warms ?? kept('warms'), develops ?? kept('develops')].filter((text) => text !== undefined);
  return [{ line, start: turns.end, end, insert: clauses.map((text) => `, ${text}`).join('') }];
}

function wholeLine(block: Block, line: number, written: string): RuleEdit {
  const { statement } = elementAt(block.lines, line);
  const start = statement.kind === 'property' ? statement.keyword.start : 0;
  const end = statement.kind === 'property' ? statement.valueSpan.end : 0;
  return { line, start, end, insert: written };
}

/** A section of its own for hands, below the block: every `mix by hand` then goes by it. */
export function handsSection(block: Block, name: string, { parameters }: Calibration): RuleEdit {
  const written = parameters.flatMap((one) => clauseWithError(one) ?? []);
  return belowAll(block, ['', `mixer ${name}:`, '  kind hand', ...written.map(indented)]);
}

const indented = (text: string): string => `  ${text}`;

/** New lines go below the last line that says something, before the blank ones that part it from the next section. */
function belowAll(block: Block, added: readonly string[]): RuleEdit {
  let line = block.lines.length - 1;
  while (line > 0 && elementAt(block.lines, line).empty) line--;
  const end = elementAt(block.lines, line).text.length;
  return { line, start: end, end, insert: added.map((text) => `\n${text}`).join('') };
}
