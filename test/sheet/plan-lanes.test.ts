import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService, pageAsHtml, planPage } from '../../core/index.ts';
import { projectFolder } from '../editors/places.ts';

function demo() {
  const service = createService();
  const examples = join(projectFolder, 'examples');
  for (const name of readdirSync(examples, { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.dough'))
      service.setText(`file:///${name}`, readFileSync(join(examples, name), 'utf8'));
  return service;
}

describe('the lanes of a plan', () => {
  const service = demo();
  const [view] = service.plans('file:///plan.dough');

  it('hold every batch in its mixer, on the bench and in the oven, one after the other in time', () => {
    const batches = view!.doughs.flatMap((dough) => dough.batches);
    // The oven heats and changes its heat by itself: empty bars.
    const count = (kind: string) =>
      view!.lanes
        .filter((lane) => lane.kind === kind)
        .flatMap(({ bars }) => bars)
        .filter(({ empty }) => empty !== true).length;
    // Two are there, and no two things that state their time are to be done at once.
    expect(view!.lanes.filter(({ kind }) => kind === 'person')).toHaveLength(1);
    expect(count('mixer')).toBe(batches.length);
    expect(count('oven')).toBe(batches.filter(({ ovenStart }) => ovenStart !== undefined).length);
    expect(count('parts')).toBe(view!.parts.length);
    for (const { bars } of view!.lanes)
      for (const bar of bars) expect(bar.endMinutes).toBeGreaterThanOrEqual(bar.startMinutes);
    // One mixer and one oven do one thing at a time.
    for (const { kind, bars } of view!.lanes.filter((lane) => lane.kind === 'mixer' || lane.kind === 'oven'))
      for (const [index, bar] of bars.entries())
        expect(bars[index + 1]?.startMinutes ?? Number.POSITIVE_INFINITY, kind).toBeGreaterThanOrEqual(
          bar.endMinutes - 1e-6,
        );
  });

  it('begin and end a bar when the tables say so', () => {
    const tables = view!.doughs.flatMap((dough) =>
      dough.batches.map((batch) => [batch.mixStart, batch.mixEnd]),
    );
    const lanes = view!.lanes.filter(({ kind }) => kind === 'mixer');
    expect(lanes.flatMap(({ bars }) => bars.map(({ start, end }) => [start, end])).sort()).toEqual(
      tables.sort(),
    );
  });

  it('are drawn on the printed page, with what is late told in words', () => {
    service.setText(
      'file:///late.dough',
      'plan Too Late:\n  ready 06:30\n  begin 06:00\n  Ferry Loaf  40 pieces\n',
    );
    const [late] = service.plans('file:///late.dough');
    const page = planPage(late!, service.speaker());
    expect(page.drawing?.description).toContain('Late: Ferry Loaf.');
    expect(pageAsHtml(page)).toContain('! Ferry Loaf');
  });
});
