import { type Message, message, type PlanView, planPage, type Speaker } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import type { PlanOutput } from './json-outputs.ts';
import { writtenPages } from './page-formats.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import { type FileFormat, formatOf, isData, isTable, writeOut } from './write-out.ts';

export interface PlanOptions {
  readonly plan?: string;
  /** A revision of git to read the plan and its formulas from. */
  readonly at?: string;
  readonly format?: FileFormat | 'text';
  readonly out?: string;
}

/** Writes the production run of a plan: 0, 1 where something of it could not be planned or will be late, 2 when it could not be read. */
export async function plan(path: string, options: PlanOptions): Promise<ExitCode> {
  const input = await readInput([path], {
    forPrograms: isTable(formatOf(options)),
    at: options.at,
  });
  const all = input.asked.flatMap(({ uri }) => input.service.plans(uri));
  const chosen = options.plan === undefined ? all : all.filter((one) => one.plan === options.plan);
  if (chosen.length === 0) {
    if (!input.failed) complain(path, say(missing(all, options.plan)));
    return 2;
  }
  const shown = chosen.map((one) => withPaths(one, input.shown));
  const text = written(shown, formatOf(options) ?? 'text', input.service.speaker());
  if (!(await writeOut(text, options.out, { isData: isData(formatOf(options)) }))) return 2;
  if (input.failed) return 2;
  return shown.every(({ complete, lateMinutes }) => complete && lateMinutes === undefined) ? 0 : 1;
}

function missing(all: readonly PlanView[], name: string | undefined): Message {
  if (name === undefined || all.length === 0) return message('command-files.no-plan');
  return message('command-files.no-plan-named', { name, names: all.map(({ plan: one }) => one) });
}

/** Files by the paths that a reader knows, lines counted from one as people do. */
function withPaths(view: PlanView, shown: (uri: string) => string): PlanView {
  const doughs = view.doughs.map((dough) => ({
    ...dough,
    uri: shown(dough.uri),
    lines: dough.lines.map((line) => line + 1),
  }));
  return { ...view, uri: shown(view.uri), line: view.line + 1, doughs };
}

function written(views: readonly PlanView[], format: FileFormat | 'text', speaker: Speaker): string {
  if (format === 'json') {
    const told: PlanOutput = views.map(({ uri, complete: _, doughs, ...rest }) => ({
      file: uri,
      ...rest,
      doughs: doughs.map(({ uri: file, ...dough }) => ({ file, ...dough })),
    }));
    return `${JSON.stringify(told, null, 2)}\n`;
  }
  return writtenPages(
    views.map((view) => planPage(view, speaker)),
    format,
  );
}
