import type { Speaker } from '../../words/speaker.ts';
import { originWords, type SheetOrigin } from '../build/origin.ts';
import {
  blockTitle,
  conditionWords,
  factWords,
  figureWords,
  hasSum,
  labelsOf,
  labelTitle,
  mixingWords,
  phaseWords,
  rowNotes,
  type Told,
  toldOf,
  trialHeads,
  trialRows,
  trialTitle,
} from '../build/sheet-words.ts';
import type { SheetBlock, SheetView } from '../build/view.ts';
import type { Page, Table } from './tables.ts';

/** A batch sheet as a page of tables in the order of the work, for text and Markdown. */
export function sheetPage(view: SheetView, origin: SheetOrigin, speaker: Speaker): Page {
  const told = toldOf(view, speaker);
  const { word } = told;
  const facts: [string, string][] = [];
  if (view.makes.length > 0) facts.push([word('sheet.makes'), view.makes.join(' · ')]);
  if (view.batches.text !== undefined) facts.push([word('sheet.batches'), view.batches.text]);
  for (const fact of view.facts)
    facts.push([fact.label, [factWords(fact, told), ...told.findings(`fact ${fact.key}`)].join(' – ')]);
  for (const condition of view.conditions) facts.push([condition.label, conditionWords(condition, told)]);
  facts.push([word('sheet.from'), originWords(origin, speaker)]);
  return {
    language: speaker.language,
    title: view.formula,
    facts,
    lead: told.lead,
    tables: [
      ...view.blocks.map((block, b) => blockTable(block, b, told)),
      ...mixingTable(told),
      ...clockTable(told),
      ...outcomeTables(told),
    ],
    tableHead: word('csv.table'),
    notes: view.cautions,
  };
}

const tick = '[ ]';

function blockTable(block: SheetBlock, b: number, told: Told): Table {
  const { word } = told;
  const runs = block.rows.some(({ scaleReads }) => scaleReads !== undefined);
  const all = block.rows.some((row) => row.all !== undefined);
  const notes = block.rows.some((row) => rowNotes(row).length > 0);
  const line = (first: string, name: string, cells: Readonly<Record<string, string>>): string[] => [
    first,
    name,
    cells.weigh ?? '',
    ...(all ? [cells.all ?? ''] : []),
    ...(runs ? [cells.reads ?? ''] : []),
    cells.percent ?? '',
    ...(notes ? [cells.notes ?? ''] : []),
  ];
  const rows = block.rows.map((row) =>
    line(tick, row.name, {
      weigh: figureWords(row.weigh),
      all: figureWords(row.all),
      reads: figureWords(row.scaleReads),
      percent: row.percent ?? '',
      notes: rowNotes(row).join('; '),
    }),
  );
  if (hasSum(block))
    rows.push(
      line('', word('sheet.together'), {
        weigh: figureWords(block.total),
        all: figureWords(block.totalOfAll),
      }),
    );
  const holdsWater =
    told.view.water !== undefined && block.rows.some(({ line: at }) => at === told.view.water?.line);
  return {
    title: blockTitle(block, told.speaker),
    columns: [
      { name: '' },
      { name: word('sheet.ingredient') },
      { name: word('sheet.weigh'), figures: true },
      ...(all ? [{ name: word('sheet.in-all'), figures: true } as const] : []),
      ...(runs ? [{ name: word('sheet.scale-reads'), figures: true } as const] : []),
      { name: word('sheet.of-flour'), figures: true },
      ...(notes ? [{ name: word('sheet.note') }] : []),
    ],
    rows,
    notes: [
      ...(block.note === undefined ? [] : [block.note]),
      ...told.findings(`block ${b}`),
      ...block.rows.flatMap(({ name }, r) =>
        told.findings(`row ${b} ${r}`).map((said) => `${name}: ${said}`),
      ),
      ...(holdsWater && block.kind === 'bowl' ? (told.view.water?.detail ?? []) : []),
    ],
  };
}

function mixingTable(told: Told): Table[] {
  const { word, speaker } = told;
  const { mixing } = told.view;
  if (mixing === undefined) return [];
  return [
    {
      title: [word('sheet.mixing'), mixingWords(mixing, speaker)].join(', '),
      columns: [
        { name: '' },
        { name: word('sheet.work') },
        { name: word('sheet.lasts'), figures: true },
        { name: word('sheet.until'), figures: true },
        { name: word('sheet.dough'), figures: true },
        { name: word('sheet.stage') },
      ],
      rows: mixing.phases.map((phase) => [
        tick,
        phaseWords(phase, speaker),
        told.lasts(phase.minutes * 60),
        told.lasts(phase.endMinute * 60),
        phase.celsius ?? '',
        phase.stage ?? '',
      ]),
      notes: [
        ...told.findings('mixing'),
        ...mixing.phases.flatMap(({ label }, p) =>
          told.findings(`phase ${p}`).map((said) => `${label}: ${said}`),
        ),
        ...mixing.outlook,
      ],
    },
  ];
}

function clockTable(told: Told): Table[] {
  const { moments, word } = told;
  if (moments.length === 0) return [];
  return [
    {
      title: word('sheet.clock'),
      columns: [
        { name: '' },
        { name: word('sheet.at') },
        { name: word('sheet.work') },
        { name: word('sheet.lasts'), figures: true },
      ],
      rows: moments.map((moment) => [
        moment.kind === 'ready' ? '' : tick,
        told.when(moment),
        moment.text,
        told.lasts(moment.seconds),
      ]),
      notes: [
        ...moments.flatMap(({ text }, m) => told.findings(`moment ${m}`).map((said) => `${text}: ${said}`)),
        ...told.view.timeline.notes,
      ],
    },
  ];
}

function outcomeTables(told: Told): Table[] {
  const { word, speaker } = told;
  const { yields, cost, trials, charts } = told.view;
  const tables: Table[] = [
    {
      title: word('sheet.yield'),
      columns: [{ name: '' }, { name: word('sheet.figure'), figures: true }, { name: word('sheet.note') }],
      rows: yields.map(({ label: name, value, note }) => [name, value, note ?? '']),
      notes: yields.flatMap(({ key, label: name }) =>
        told.findings(`yield ${key}`).map((said) => `${name}: ${said}`),
      ),
    },
  ];
  for (const { kind, title, description, table } of charts) {
    if (kind !== 'composition') continue;
    tables.push({
      title,
      columns: table.heads.map((name) => ({ name })),
      rows: table.rows,
      notes: [description],
    });
  }
  if (cost !== undefined)
    tables.push({
      title: word('sheet.cost'),
      columns: [{ name: word('sheet.ingredient') }, { name: word('sheet.cost'), figures: true }],
      rows: cost.rows.map(({ name, value, missing }) => [name, missing ?? value]),
      notes: [cost.text],
    });
  for (const label of labelsOf(told.view))
    tables.push({
      title: labelTitle(label, speaker),
      columns: [{ name: '' }, ...label.nutrition.heads.map((name) => ({ name, figures: true }) as const)],
      rows: label.nutrition.rows.map(({ name, cells }) => [name, ...cells]),
      notes: [
        label.ingredients.map(({ text, allergen }) => (allergen ? text.toUpperCase() : text)).join(''),
        ...label.allergens,
        ...label.notes,
      ],
    });
  for (const [t, trial] of trials.entries())
    tables.push({
      title: trialTitle(trial, speaker),
      columns: trialHeads.map((code) => ({ name: word(code) })),
      rows: trialRows(trial),
      notes: [...told.findings(`trial ${t}`), ...trial.notes],
    });
  return tables;
}
