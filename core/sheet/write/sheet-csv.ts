import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { asCsv, asTabbed } from '../build/csv-records.ts';
import { phaseWords, rowNotes, type Told, toldOf } from '../build/sheet-words.ts';
import type { SheetFigure, SheetView } from '../build/view.ts';

const columns = [
  'formula',
  'part',
  'when',
  'name',
  'weigh',
  'unit',
  'grams',
  'in-all',
  'in-all-unit',
  'scale-reads',
  'scale-reads-unit',
  'of-flour',
  'minutes',
  'dough-temperature',
  'stage',
  'note',
] as const;

type Fields = Partial<Record<(typeof columns)[number], string>>;

/**
 * Sheets as one table, a record for each weighed line, line of the mixing, moment, yield and cost. `grams` and
 * `minutes` are plain numbers for computing; what a scale shows stands beside them as it is weighed.
 */
export function sheetsAsCsv(views: readonly SheetView[], speaker: Speaker): string {
  return asCsv([headsOf(speaker), ...views.flatMap((view) => records(view, speaker))]);
}

/** The same for a spreadsheet to take from the clipboard, without the columns that would be empty. */
export function sheetsAsTabbed(views: readonly SheetView[], speaker: Speaker): string {
  const all = views.flatMap((view) => records(view, speaker));
  const used = columns.flatMap((_, index) => (all.some((record) => record[index] !== '') ? [index] : []));
  return asTabbed([headsOf(speaker), ...all].map((record) => used.map((index) => record[index]!)));
}

function headsOf(speaker: Speaker): string[] {
  return columns.map((column) => speaker.say(message(`csv.${column}`)));
}

function records(view: SheetView, speaker: Speaker): string[][] {
  const told = toldOf(view, speaker);
  const fields = [...weighed(told), ...mixed(told), ...timed(told), ...outcome(told)];
  return fields.map((one) => columns.map((name) => (name === 'formula' ? view.formula : (one[name] ?? ''))));
}

function weighed({ view, findings }: Told): Fields[] {
  return view.blocks.flatMap((block, b) =>
    block.rows.map((row, r): Fields => {
      const [weigh, all, reads] = [row.weigh, row.all, row.scaleReads];
      return {
        part: block.title,
        when: block.clock?.words ?? block.when,
        name: row.name,
        weigh: weigh?.figure ?? '',
        unit: weigh?.unit ?? '',
        grams: grams(weigh),
        'in-all': all?.figure ?? '',
        'in-all-unit': all?.unit ?? '',
        'scale-reads': reads?.figure ?? '',
        'scale-reads-unit': reads?.unit ?? '',
        'of-flour': row.percent ?? '',
        note: [...rowNotes(row), ...findings(`row ${b} ${r}`)].join('; '),
      };
    }),
  );
}

function mixed({ view, findings, speaker, word }: Told): Fields[] {
  return (view.mixing?.phases ?? []).map((phase, p) => ({
    part: word('sheet.mixing'),
    name: phaseWords(phase, speaker),
    minutes: trimmed(phase.minutes, 3),
    'dough-temperature': phase.celsius ?? '',
    stage: phase.stage ?? '',
    note: findings(`phase ${p}`).join('; '),
  }));
}

function timed({ moments, when, findings, word }: Told): Fields[] {
  return moments.map((moment, m) => ({
    part: word('sheet.clock'),
    when: when(moment),
    name: moment.text,
    minutes: moment.seconds === undefined ? '' : trimmed(moment.seconds / 60, 3),
    note: findings(`moment ${m}`).join('; '),
  }));
}

function outcome({ view, findings, word }: Told): Fields[] {
  return [
    ...view.yields.map(({ key, label, value, note }) => ({
      part: word('sheet.yield'),
      name: label,
      note: [value, note, ...findings(`yield ${key}`)].filter((one) => one !== undefined).join('; '),
    })),
    ...(view.cost?.rows ?? []).map(({ name, value, missing }) => ({
      part: word('sheet.cost'),
      name,
      note: missing ?? value,
    })),
  ];
}

function grams(figure: SheetFigure | undefined): string {
  return figure === undefined ? '' : trimmed(figure.grams, 3);
}
