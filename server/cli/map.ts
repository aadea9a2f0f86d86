import { extname } from 'node:path';
import {
  foldName,
  type MapAxis,
  type MapFormat,
  type MapView,
  type Message,
  message,
  writeMaps,
} from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import { type FileFormat, formatOf, isData, isTable, writeOut } from './write-out.ts';

export interface MapCommandOptions {
  readonly formula?: string;
  readonly against?: MapAxis;
  readonly flour?: string;
  readonly minutes?: number;
  readonly format?: MapFormat;
  readonly out?: string;
}

/** Writes the map of the gap of formulas: 0, 1 where one of them has none, 2 when nothing could be read or written. */
export async function map(path: string, options: MapCommandOptions): Promise<ExitCode> {
  const format = mapFormatOf(options);
  const input = await readInput([path], { forPrograms: isTable(format) });
  const { flour, minutes } = options;
  const against = options.against ?? (flour === undefined ? undefined : 'flour');
  const asked = {
    ...(against === undefined ? {} : { against }),
    ...(flour === undefined ? {} : { flour }),
    ...(minutes === undefined ? {} : { lastMinute: minutes }),
  };
  const all = input.asked.flatMap(({ uri }) =>
    input.service
      .symbols(uri)
      .filter(({ kind }) => kind === 'formula')
      .flatMap(({ name, place }) => ({ name, uri, line: place.line })),
  );
  const wanted = options.formula === undefined ? undefined : foldName(options.formula);
  const chosen = all.filter(({ name }) => wanted === undefined || foldName(name) === wanted);
  if (chosen.length === 0) {
    const names = all.map(({ name }) => name);
    if (!input.failed) complain(path, say(missing(names, options.formula)));
    return 2;
  }
  if (format === 'svg' && chosen.length > 1) {
    complain(path, say(message('map.one-drawing', { names: chosen.map(({ name }) => name) })));
    return 2;
  }
  const views = chosen
    .flatMap(({ uri, line }) => input.service.map(uri, line, asked) ?? [])
    .map((view): MapView => ({ ...view, uri: input.shown(view.uri) }));
  const none = views.filter(tellNone);
  const isEmpty = none.length === views.length && format === 'svg';
  const told = format === 'text' || format === 'md' ? views.filter((view) => view.none === undefined) : views;
  const text = writeMaps(told, format, input.service.speaker());
  const isFile = format === 'svg' || isData(format);
  if (isEmpty) return 1;
  if (text !== '' && !(await writeOut(text, options.out, { isData: isFile }))) return 2;
  if (input.failed) return 2;
  return none.length === 0 ? 0 : 1;
}

function tellNone({ uri, line, none }: MapView): boolean {
  if (none === undefined) return false;
  complain(`${uri}:${line + 1}`, none);
  return true;
}

/** The format asked for, else the one that the name of the file to be written ends with. */
function mapFormatOf({ format, out }: MapCommandOptions): MapFormat {
  if (format !== undefined) return format;
  if (extname(out ?? '').toLowerCase() === '.svg') return 'svg';
  const named: MapFormat | FileFormat | undefined = formatOf({ ...(out === undefined ? {} : { out }) });
  return named === undefined || named === 'html' ? 'text' : named;
}

function missing(there: readonly string[], name: string | undefined): Message {
  if (name === undefined || there.length === 0) return message('command-files.no-formula');
  return message('command-files.no-formula-named', { name, names: there });
}
