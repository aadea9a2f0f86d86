import {
  type ExperimentPageOptions,
  type ExperimentView,
  experimentPage,
  type Message,
  message,
  type Speaker,
} from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import type { ExperimentOutput } from './json-outputs.ts';
import { writtenPages } from './page-formats.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import { type FileFormat, formatOf, isData, isTable, writeOut } from './write-out.ts';

export interface ExperimentOptions extends ExperimentPageOptions {
  readonly experiment?: string;
  readonly format?: FileFormat | 'text';
  readonly out?: string;
}

/** Writes the sheet of an experiment: 0, 1 where a dough of it cannot be predicted at every minute, 2 when it could not be read. */
export async function experiment(path: string, options: ExperimentOptions): Promise<ExitCode> {
  const input = await readInput([path], { forPrograms: isTable(formatOf(options)) });
  const all = input.asked.flatMap(({ uri }) => input.service.experiments(uri));
  const wanted = options.experiment;
  const chosen = wanted === undefined ? all : all.filter((one) => one.experiment === wanted);
  if (chosen.length === 0) {
    if (!input.failed) complain(path, say(missing(all, wanted)));
    return 2;
  }
  const shown = chosen.map((one) => withPaths(one, input.shown));
  const text = written(shown, options, input.service.speaker());
  if (!(await writeOut(text, options.out, { isData: isData(formatOf(options)) }))) return 2;
  if (input.failed) return 2;
  return shown.every(({ complete }) => complete) ? 0 : 1;
}

function missing(all: readonly ExperimentView[], name: string | undefined): Message {
  if (name === undefined || all.length === 0) return message('command-files.no-experiment');
  const names = all.map(({ experiment: one }) => one);
  return message('command-files.no-experiment-named', { name, names });
}

/** Files by the paths that a reader knows, lines counted from one as people do. */
function withPaths(view: ExperimentView, shown: (uri: string) => string): ExperimentView {
  const doughs = view.doughs.map((dough) => ({ ...dough, line: dough.line + 1 }));
  return { ...view, uri: shown(view.uri), line: view.line + 1, doughs };
}

function written(views: readonly ExperimentView[], options: ExperimentOptions, speaker: Speaker): string {
  const format = formatOf(options) ?? 'text';
  if (format === 'json') {
    const told: ExperimentOutput = views.map(({ uri, complete: _, ...rest }) => ({ file: uri, ...rest }));
    return `${JSON.stringify(told, null, 2)}\n`;
  }
  return writtenPages(
    views.map((view) => experimentPage(view, speaker, options)),
    format,
  );
}
