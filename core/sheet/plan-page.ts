import { duration, mass } from '../text/figures.ts';
import { markingSpeaker } from '../words/in-marks.ts';
import type { PlanView } from './plan-view.ts';
import type { Page } from './tables.ts';

const { money } = markingSpeaker;

/** A production run as a page of tables. */
export function planPage(view: PlanView): Page {
  const facts: [string, string][] = [];
  if (view.ready !== undefined) facts.push(['ready', view.ready]);
  if (view.firstWork !== undefined) facts.push(['first work', view.firstWork]);
  if (view.firstMix !== undefined) facts.push(['first dough', view.firstMix]);
  if (view.lateMinutes !== undefined) facts.push(['late by', duration(view.lateMinutes * 60)]);
  if (view.cost !== undefined) facts.push(['stores cost', money(view.cost.amount, view.cost.currency)]);
  if (view.costAtLeast !== undefined)
    facts.push(['stores cost', `${money(view.costAtLeast.amount, view.costAtLeast.currency)} and more`]);
  const currency = (view.cost ?? view.costAtLeast)?.currency;
  return {
    title: view.plan,
    facts,
    tables: [
      {
        title: 'Timeline',
        columns: [{ name: 'at' }, { name: 'work' }],
        rows: view.timeline.map(({ at, words }) => [at, words]),
      },
      {
        title: 'Batches',
        columns: [
          { name: 'dough' },
          { name: 'batch', figures: true },
          { name: 'pieces', figures: true },
          { name: 'dough weight', figures: true },
          { name: 'mixer' },
          { name: 'mixed' },
          { name: 'oven' },
          { name: 'ready' },
        ],
        rows: view.doughs.flatMap((dough) =>
          dough.batches.map((batch) => [
            dough.formula,
            `${batch.number} of ${batch.of}`,
            batch.pieces === undefined ? '' : String(batch.pieces),
            mass(batch.doughGrams),
            dough.mixer ?? '',
            batch.mixStart,
            batch.ovenStart ?? '',
            batch.ready,
          ]),
        ),
      },
      {
        title: 'Before the doughs',
        columns: [
          { name: 'part' },
          { name: 'weight', figures: true },
          { name: 'made' },
          { name: 'stands' },
          { name: 'needed' },
          { name: 'for' },
        ],
        rows: view.parts.map((part) => [
          part.name,
          mass(part.grams),
          part.start,
          part.standsMinutes > 0 ? duration(part.standsMinutes * 60) : '',
          part.needed,
          part.for.join(', '),
        ]),
      },
      {
        title: 'Stores',
        columns: [{ name: 'ingredient' }, { name: 'weight', figures: true }, { name: 'cost', figures: true }],
        rows: view.stores.map(({ name, grams, cost }) => [
          name,
          mass(grams),
          cost === undefined || currency === undefined ? '' : money(cost, currency),
        ]),
      },
    ],
    notes: view.remarks,
  };
}
