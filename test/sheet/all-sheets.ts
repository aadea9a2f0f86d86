import { join } from 'node:path';
import { createService, type Service, type SheetDocument } from '../../core/index.ts';
import { readQuestions, rootUri } from '../features/archive.ts';
import { exampleFiles } from '../syntax/texts.ts';

/** Every sheet of the example bakery. */
export function exampleSheets(): SheetDocument[] {
  const service = createService();
  for (const { path, text } of exampleFiles()) service.setText(`${rootUri}${path}`, text);
  return sheetsOf(service);
}

/** Every sheet of the files under test/fixtures/sheet and test/fixtures/written. */
export function fixtureSheets(): SheetDocument[] {
  return ['sheet', 'written'].flatMap((folder) =>
    readQuestions(join(import.meta.dirname, '..', 'fixtures', folder)).flatMap(({ cases }) =>
      cases.flatMap(({ files }) => {
        const service = createService();
        for (const { head, body } of files)
          service.setText(`${rootUri}${head.replace('file ', '').split(' ')[0]}`, body.replaceAll('‸', ''));
        return sheetsOf(service);
      }),
    ),
  );
}

function sheetsOf(service: Service): SheetDocument[] {
  return service
    .overview()
    .filter(({ kind }) => kind === 'formula')
    .flatMap(({ uri, line }) => service.sheet(uri, line, {}) ?? []);
}
