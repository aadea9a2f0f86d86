import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { noRun, type ToExperiment } from '../../client/experiment/messages.ts';
import { createService, experimentBench, experimentPage } from '../../core/index.ts';
import type { ExperimentPageOptions } from '../../server/protocol.ts';
import { projectFolder } from '../editors/places.ts';

export type ShownExperiment = Extract<ToExperiment, { type: 'experiment' }>;

/** The experiment of the demo bakery as its page is sent it. */
export function demoExperiment(
  sheet: ExperimentPageOptions = {},
  change: (text: string) => string = (text) => text,
): ShownExperiment {
  const service = createService();
  const examples = join(projectFolder, 'examples');
  for (const name of ['bakery.dough', 'flours.dough', 'bench.dough'])
    if (readdirSync(examples).includes(name)) {
      const text = readFileSync(join(examples, name), 'utf8');
      service.setText(`file:///${name}`, name === 'bench.dough' ? change(text) : text);
    }
  const [view] = service.experiments('file:///bench.dough');
  const speaker = service.speaker();
  return {
    ...{ type: 'experiment', sheet, run: noRun, print: 'Save as a Page to Print…' },
    page: experimentPage(view!, speaker, sheet),
    bench: experimentBench(view!, speaker),
  };
}
