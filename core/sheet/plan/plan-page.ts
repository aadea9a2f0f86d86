import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Page, Table } from '../write/tables.ts';
import { planDrawing } from './plan-drawing.ts';
import type { PlanView } from './plan-view.ts';

/** A production run as a page of tables, worded by whoever worded the view. */
export function planPage(view: PlanView, speaker: Speaker): Page {
  const { say } = speaker;
  const drawing = planDrawing(view, speaker);
  return {
    language: speaker.language,
    title: view.plan,
    ...(drawing === undefined ? {} : { drawing }),
    facts: factsOf(view, speaker).map(([label, value]) => [say(label), value]),
    tables: [
      {
        title: say(message('plan.timeline')),
        columns: [{ name: say(message('plan-column.at')) }, { name: say(message('plan-column.work')) }],
        rows: view.timeline.map(({ at, words }) => [at, words]),
      },
      batchesTable(view, speaker),
      partsTable(view, speaker),
      storesTable(view, speaker),
    ],
    tableHead: say(message('csv.table')),
    notes: view.remarks,
  };
}

function factsOf(view: PlanView, speaker: Speaker): [Message, string][] {
  const facts: [Message, string][] = [];
  if (view.ready !== undefined) facts.push([message('plan.ready'), view.ready]);
  if (view.firstWork !== undefined) facts.push([message('plan.first-work'), view.firstWork]);
  if (view.firstMix !== undefined) facts.push([message('plan.first-dough'), view.firstMix]);
  if (view.lateMinutes !== undefined)
    facts.push([message('plan.late-by'), speaker.duration(view.lateMinutes * 60)]);
  if (view.people !== undefined) facts.push([message('plan.people'), String(view.people)]);
  if (view.hands !== undefined) {
    const { most: number, at: written, isLeast } = view.hands;
    const said = message(isLeast ? 'plan.hands-at-least' : 'plan.hands-from', { number, written });
    facts.push([message('plan.hands'), speaker.say(said)]);
  }
  if (view.cost !== undefined)
    facts.push([message('plan.stores-cost'), speaker.money(view.cost.amount, view.cost.currency)]);
  if (view.costAtLeast !== undefined) {
    const written = speaker.money(view.costAtLeast.amount, view.costAtLeast.currency);
    facts.push([message('plan.stores-cost'), speaker.say(message('plan.and-more', { written }))]);
  }
  return facts;
}

function batchesTable(view: PlanView, { say, mass, number }: Speaker): Table {
  return {
    title: say(message('plan.batches')),
    columns: [
      { name: say(message('plan-column.dough')) },
      { name: say(message('plan-column.batch')), figures: true },
      { name: say(message('plan-column.pieces')), figures: true },
      { name: say(message('plan-column.dough-weight')), figures: true },
      { name: say(message('plan-column.mixer')) },
      { name: say(message('plan-column.mixed')) },
      { name: say(message('plan-column.oven')) },
      { name: say(message('plan-column.ready')) },
    ],
    rows: view.doughs.flatMap((dough) =>
      dough.batches.map((batch) => [
        dough.formula,
        say(message('plan.of', { number: batch.number, count: batch.of })),
        batch.pieces === undefined ? '' : number(batch.pieces, 2),
        mass(batch.doughGrams),
        dough.mixer ?? '',
        batch.mixStart,
        batch.ovenStart ?? '',
        batch.ready,
      ]),
    ),
  };
}

function partsTable(view: PlanView, { say, mass, duration }: Speaker): Table {
  return {
    title: say(message('plan.before-doughs')),
    columns: [
      { name: say(message('plan-column.part')) },
      { name: say(message('plan-column.weight')), figures: true },
      { name: say(message('plan-column.made')) },
      { name: say(message('plan-column.stands')) },
      { name: say(message('plan-column.needed')) },
      { name: say(message('plan-column.for')) },
    ],
    rows: view.parts.map((part) => [
      part.name,
      mass(part.grams),
      part.start,
      part.standsMinutes > 0 ? duration(part.standsMinutes * 60) : '',
      part.needed,
      part.for.join(', '),
    ]),
  };
}

function storesTable(view: PlanView, { say, mass, money }: Speaker): Table {
  const currency = (view.cost ?? view.costAtLeast)?.currency;
  return {
    title: say(message('plan.stores')),
    columns: [
      { name: say(message('plan-column.ingredient')) },
      { name: say(message('plan-column.weight')), figures: true },
      { name: say(message('plan-column.cost')), figures: true },
    ],
    rows: view.stores.map(({ name, grams, cost }) => [
      name,
      mass(grams),
      cost === undefined || currency === undefined ? '' : money(cost, currency),
    ]),
  };
}
