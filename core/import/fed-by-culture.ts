import { trimmed } from '../text/figures.ts';
import { message } from '../words/message.ts';
import type { WrittenPart } from './basis.ts';
import type { Notes } from './notes.ts';
import { quantityOf } from './numbers.ts';
import type { TableLine, TablePart } from './parts.ts';
import type { ReadRow } from './table-rows.ts';
import { isCultureName } from './table-words.ts';

/**
 * A preferment whose line of ripe starter is said as what it is: ripe culture, in percent of the flour that is fed. The rows that
 * were said so go into `fed`.
 */
export function fedByCulture(
  part: TablePart,
  { inPercent }: WrittenPart,
  isFlour: (name: string) => boolean,
  { notes, fed }: { readonly notes: Notes; readonly fed: Set<ReadRow> },
): TablePart {
  const rows = part.lines.flatMap((line) => ('row' in line ? [line.row] : []));
  const flours = rows.filter(({ name }) => isFlour(name));
  const isWeighed = flours.length > 0 && flours.every(({ weight }) => weight?.quantity.kind === 'mass');
  const flour = flours.reduce((sum, { weight }) => sum + (weight?.value ?? 0), 0);
  const lines = part.lines.map((line): TableLine => {
    if (!('row' in line) || !isCultureName(line.row.name)) return line;
    const { number, name, percent, weight } = line.row;
    const share =
      inPercent && percent !== undefined
        ? percent.value
        : isWeighed && flour > 0 && weight?.quantity.kind === 'mass'
          ? (weight.value / flour) * 100
          : undefined;
    const written = share === undefined ? undefined : trimmed(share, 2);
    const quantity = written === undefined ? undefined : quantityOf(written, '%');
    if (written === undefined || quantity === undefined || share === undefined) return line;
    notes.say(message('import.culture', { number, name, part: part.name }));
    fed.add(line.row);
    const amount = { text: `${written}%`, quantity, value: share };
    const { weight: _, ...rest } = line.row;
    return { row: { ...rest, name: 'ripe culture', percent: amount, weight: amount } };
  });
  return { ...part, lines };
}
