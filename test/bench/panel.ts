import { type FromPage, noWork, type ToPage } from '../../client/preview/messages.ts';
import { createService, type Service, type SheetDocument, type SheetOptions } from '../../core/index.ts';
import { openWebview, type Webview } from '../client/panel-page.ts';
import { launchChromium } from '../editors/code-server.ts';

/**
 * Measures the batch sheet from a key to its drawing: the sheet is worked out, made JSON and read again, and drawn by the
 * panel's own page in Chromium, two frames waited for included. The way from here into the page is not in it: the tools of this
 * measurement take several times as long for it as an editor does. Prints a table.
 *
 *   node test/bench/panel.ts
 */
const uri = 'file:///quay-lane/long.dough';
const strokes = 60;
let sequence = 0;
type Panel = Webview<FromPage, ToPage>;
const browser = await launchChromium();
try {
  console.log('\nBatch sheet, milliseconds.');
  for (const lines of [100, 500]) {
    const text = formulaOf(lines);
    const service = createService();
    service.setText(uri, text);
    service.sheet(uri, 0, {});
    const panel = await openWebview<FromPage, ToPage>(browser, 'client/preview/page.ts');
    print(`${lines} lines: first sheet drawn in an empty panel`, await shown(service, panel, {}), '< 300');
    const keys: number[] = [];
    for (let count = 0; count < strokes; count++) {
      const from = performance.now();
      service.setText(uri, text.replace('salt  2%', `salt  2.${1 + (count % 90)}%`));
      keys.push(performance.now() - from + (await shown(service, panel, {})));
    }
    printBoth(`${lines} lines: key to drawn`, keys);
    const steps: number[] = [];
    for (let step = 0; step < strokes; step++)
      steps.push(
        await shown(service, panel, {
          whatIf: { lines: [{ index: 3, minutes: 3.5 + step / 10 }], water: 0.66 + step / 1000 },
          map: { against: 'water' },
        }),
      );
    printBoth(`${lines} lines: step of what if, with the map`, steps);
    await panel.page.close();
  }
} finally {
  await browser.close();
}

/** Works out a sheet and has it drawn; how long both took, milliseconds. */
async function shown(service: Service, panel: Panel, asked: SheetOptions): Promise<number> {
  const from = performance.now();
  const sheet = service.sheet(uri, 0, asked) as SheetDocument;
  const message: ToPage = { type: 'sheet', sequence: ++sequence, sheet, asked, work: noWork };
  const text = JSON.stringify(message);
  const worked = performance.now() - from;
  await panel.page.evaluate(`globalThis.handed = ${JSON.stringify(text)}`);
  // Two frames later what was changed has been drawn.
  const drawn = await panel.page.evaluate<number>(`(async () => {
    const from = performance.now();
    window.postMessage(JSON.parse(handed));
    await new Promise((done) => setTimeout(done));
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    return performance.now() - from;
  })()`);
  return worked + drawn;
}

function printBoth(name: string, times: number[]): void {
  times.sort((one, other) => one - other);
  print(`${name}, p50`, times[times.length / 2]!, '< 100');
  print(`${name}, p95`, times[Math.floor(times.length * 0.95)]!, '< 100');
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
