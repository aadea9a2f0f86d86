import { createService, type Service, type SheetDocument, type SheetOptions } from '../../core/index.ts';
import { openPanel, type PanelPage } from '../client/panel-page.ts';
import { launchChromium } from '../editors/code-server.ts';

/**
 * Measures the batch sheet from a key to its drawing: the sheet is worked out, crosses as JSON and is drawn by the panel's
 * own page in Chromium. The way through the editor's processes is not in it. Prints a table.
 *
 *   node test/bench/panel.ts
 */
const uri = 'file:///quay-lane/long.dough';
const strokes = 60;
/** Two frames later what was changed has been drawn. */
const painted = 'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))';
const browser = await launchChromium();
try {
  console.log('\nBatch sheet, milliseconds.');
  for (const lines of [100, 500]) {
    const text = formulaOf(lines);
    const service = createService();
    service.setText(uri, text);
    const sheet = () => JSON.parse(JSON.stringify(service.sheet(uri, 0, {}))) as SheetDocument;
    sheet();
    const panel = await openPanel(browser);
    const began = performance.now();
    await panel.show(sheet());
    await panel.page.evaluate(painted);
    const opened = performance.now() - began;
    const times: number[] = [];
    for (let count = 0; count < strokes; count++) {
      const from = performance.now();
      service.setText(uri, text.replace('salt  2%', `salt  2.${1 + (count % 90)}%`));
      await panel.show(sheet());
      await panel.page.evaluate(painted);
      times.push(performance.now() - from);
    }
    times.sort((one, other) => one - other);
    print(`${lines} lines: first sheet drawn in an empty panel`, opened, '< 300');
    print(`${lines} lines: key to drawn, p50`, times[strokes / 2]!, '< 100');
    print(`${lines} lines: key to drawn, p95`, times[Math.floor(strokes * 0.95)]!, '< 100');
    const steps = await whatIfSteps(service, panel);
    print(`${lines} lines: step of what if, with the map, p50`, steps[strokes / 2]!, '< 100');
    print(`${lines} lines: step of what if, with the map, p95`, steps[Math.floor(strokes * 0.95)]!, '< 100');
    await panel.page.close();
  }
} finally {
  await browser.close();
}

/** How long a step of minutes and water takes to be drawn, before beside after and the map with it, milliseconds in order. */
async function whatIfSteps(service: Service, panel: PanelPage): Promise<number[]> {
  const times: number[] = [];
  for (let step = 0; step < strokes; step++) {
    const from = performance.now();
    const asked: SheetOptions = {
      whatIf: { lines: [{ index: 3, minutes: 3.5 + step / 10 }], water: 0.66 + step / 1000 },
      map: { against: 'water' },
    };
    const sheet = JSON.parse(JSON.stringify(service.sheet(uri, 0, asked))) as SheetDocument;
    await panel.show(sheet, { asked });
    await panel.page.evaluate(painted);
    times.push(performance.now() - from);
  }
  return times.sort((one, other) => one - other);
}

function print(name: string, milliseconds: number, aim: string): void {
  console.log(`${name.padEnd(50)}${milliseconds.toFixed(1).padStart(8)}   ${aim}`);
}

/** One formula of so many lines: several preferments, a programme, a process, and trials for the rest. */
function formulaOf(lines: number): string {
  const parts = Array.from({ length: 3 }, (_, index) => [
    `preferment sponge ${index + 1}:`,
    '  draws 8% of flour',
    '  bread flour  100%',
    '  water  80%',
    '  instant yeast  0.1%',
    '  ferment 10 h at 18 °C',
  ]).flat();
  const head = [
    'formula Long Quay:',
    '  yield 24 pieces of 880 g',
    '  dough temperature 25 °C',
    '  bread flour  90%',
    '  wholemeal wheat  balance',
    '  water  to 69% hydration',
    '  salt  2%',
    '  fresh yeast  0.9%',
    ...parts,
    'mix in spiral:',
    '  load flour, water, sponge 1, sponge 2, sponge 3',
    '  speed 1 for 3 min',
    '  rest 20 min',
    '  add salt, fresh yeast',
    '  speed 1 for 4 min',
    '  speed 2 for 3 min',
    'process:',
    '  bulk 1 h 30 min at 25 °C, fold at 45 min',
    '  divide',
    '  proof 55 min at 28 °C',
    '  bake 34 min at 230 °C',
  ];
  for (let trial = 0; head.length < lines; trial++)
    head.push(
      `trial 2026-0${1 + (trial % 9)}-${10 + Math.floor(trial / 9)}:`,
      '  room 21 °C',
      '  at 3 min  22.5 °C',
      '  end  24.6 °C',
      '  note as ever',
    );
  return `${head.join('\n')}\n`;
}
