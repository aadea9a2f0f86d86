import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createService, type SheetDocument, type SheetOptions } from '../../core/index.ts';

const folder = join(import.meta.dirname, '..', '..', 'examples');

/** A sheet of the example bakery, as the core works it out. */
export function exampleSheet(formula = 'Ferry Loaf', asked: SheetOptions = {}): SheetDocument {
  const service = createService();
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.dough'))
      service.setText(`file:///quay-lane/${name}`, readFileSync(join(folder, name), 'utf8'));
  service.setRoots(['file:///quay-lane/']);
  const at = service.overview().find(({ kind, name }) => kind === 'formula' && name === formula);
  if (at === undefined) throw new Error(`The examples have no formula “${formula}”.`);
  return service.sheet(at.uri, at.line, asked)!;
}
