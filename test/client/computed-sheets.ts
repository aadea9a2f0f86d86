import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createService, type Settings, type SheetOptions } from '../../core/index.ts';
import type { SheetDocument } from '../../server/protocol.ts';
import { projectFolder } from '../editors/places.ts';

/** A sheet of the demo bakery as the core works it out. */
export function computedSheet(
  formula: string,
  asked: SheetOptions = {},
  settings: Partial<Settings> = {},
): SheetDocument {
  const service = createService();
  service.setSettings(settings);
  const examples = join(projectFolder, 'examples');
  for (const name of readdirSync(examples, { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.dough'))
      service.setText(`file:///${name}`, readFileSync(join(examples, name), 'utf8'));
  const entry = service.overview().find(({ name }) => name === formula)!;
  return service.sheet(entry.uri, entry.line, asked)!;
}

/** A plain bread of four ingredients with its work; further lines of the formula may take the place of its yield. */
export function fourIngredients(
  said = 'yield 24 pieces of 880 g',
  { fastMinutes = 7, roomCelsius = 21, tapCelsius = 12 } = {},
): SheetDocument {
  const text = [
    `bakery:\n  room ${roomCelsius} °C\n  flour ${roomCelsius - 1} °C\n  tap water ${tapCelsius} °C`,
    `formula Quay Plain:\n  ${said}\n  dough temperature 25 °C`,
    '  strong white 100%\n  water 68%\n  salt 2%\n  fresh yeast 1.2%',
    `mix in spiral:\n  load all\n  speed 1 for 4 min\n  speed 2 for ${fastMinutes} min`,
    'process:\n  bulk 90 min at 25 °C, fold at 45 min\n  divide\n  rest 20 min\n  shape',
    '  proof 60 min at 28 °C\n  score\n  bake 34 min at 240 °C\n  cool 60 min\n',
  ].join('\n');
  const service = createService();
  service.setText('file:///quay-lane/plain.dough', text);
  return service.sheet('file:///quay-lane/plain.dough', 4, {})!;
}

/** Everything at once: forty ingredients, long names, names from right to left and with marks, three preferments. */
export function crowdedComputedSheet(): SheetDocument {
  const long = Array.from({ length: 32 }, (_, index) =>
    `number ${index + 1} of the long-named seeds from the upper shelf of the store`.slice(0, 60),
  );
  const names = [...long, 'x'.repeat(60), 'קמח לבן 550', 'دقيق القمح الكامل', 'salt & <pepper>'];
  const preferment = (name: string) =>
    `preferment ${name}:\n  draws 10% of flour\n  strong white 100%\n  water 100%\n  fresh yeast 0.1%\n  ferment 12 h at 18 °C\n`;
  const text = [
    'formula A loaf with everything on the shelf of the Quay Lane bakery:',
    '  yield 400 kg\n  strong white 100%\n  water 70%\n  salt 2%\n  fresh yeast 1%',
    ...names.map((name, index) => `  "${name}" ${(index % 5) + 0.5}%`),
    preferment('night poolish'),
    preferment('מחמצת לילה'),
    preferment('the third of the preferments with a name of sixty letters'),
    'mix in spiral:\n  load flour, water, "night poolish"\n  speed 1 for 4 min\n  rest 20 min',
    ...names.slice(0, 8).map((name) => `  add "${name}"\n  speed 1 for 1 min`),
    '  speed 2 for 6 min\nprocess:\n  bulk 2 h at 25 °C, fold at 1 h\n  התפחה 1 h\n  bake 40 min at 240 °C\n',
    'trial 2026-05-01, קר מדי:\n  at 4 min 21 °C, pick-up\n  end 24 °C',
  ].join('\n');
  const service = createService();
  service.setText('file:///crowded.dough', text);
  return service.sheet('file:///crowded.dough', 0, {})!;
}
