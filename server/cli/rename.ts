import { fileURLToPath } from 'node:url';
import {
  type FileEdit,
  finish,
  foldName,
  message,
  type Refused,
  type Service,
  withEdits,
} from '../../core/index.ts';
import { realFile } from '../host/disk.ts';
import type { ExitCode } from './exit-code.ts';
import { type Input, readInput } from './input.ts';
import { meantOf } from './meant.ts';
import { say } from './speaker.ts';
import { complain, tell } from './terminal.ts';
import { replaceFile, writeTrouble } from './write-out.ts';

/** A name where it is defined. */
interface Place {
  readonly name: string;
  readonly uri: string;
  readonly line: number;
  readonly column: number;
}

/**
 * Gives a formula, a flour, an ingredient, a mixer or a part another name wherever it is named, as the editor does. Without `write` it
 * tells the lines that would change: 0 where nothing stands against it, 1 where nothing is called so, 2 where it cannot be done.
 */
export async function rename(
  old: string,
  wanted: string,
  path: string,
  options: { readonly write?: boolean },
): Promise<ExitCode> {
  const input = await readInput([path]);
  if (input.failed) return 2;
  const { service } = input;
  const places = input.asked.flatMap(({ uri }) => definedIn(service, uri, old));
  const [place, ...more] = places;
  if (place === undefined) {
    const otherName = meantOf(
      old,
      input.asked.flatMap(({ uri }) => definedIn(service, uri).map((one) => one.name)),
    );
    complain(
      path,
      say(
        otherName === undefined
          ? message('command-rename.none', { name: old })
          : message('command-rename.none-meant', { name: old, otherName }),
      ),
    );
    return 1;
  }
  if (more.length > 0) {
    const files = places.map(({ uri, line }) => `${input.shown(uri)}:${line + 1}`);
    complain(say(message('command-rename.several', { name: old, files })));
    return 2;
  }
  const edits: readonly FileEdit[] | Refused = finish(
    service.rename(place.uri, place.line, place.column, wanted),
  );
  if ('refused' in edits) {
    complain(`${input.shown(place.uri)}:${place.line + 1}`, edits.refused);
    return 2;
  }
  for (const line of changedLines(input, edits)) tell(`${line}\n`);
  if (!options.write) {
    complain(say(message('command-rename.not-written', { option: '--write' })));
    return 0;
  }
  return (await written(input, edits)) ? 0 : 2;
}

const defining: ReadonlySet<string> = new Set(['formula', 'flour', 'ingredient', 'mixer', 'part']);

/** Where a file defines something of a name: sections at the top, and parts of formulas. */
function definedIn(service: Service, uri: string, name?: string): Place[] {
  const folded = name === undefined ? undefined : foldName(name);
  const found: Place[] = [];
  const look = (nodes: ReturnType<Service['symbols']>): void => {
    for (const { name: own, kind, place, children } of nodes) {
      // The name is the last word of its header.
      if (defining.has(kind) && (folded === undefined || foldName(own) === folded))
        found.push({ name: own, uri, line: place.line, column: place.end - 1 });
      look(children);
    }
  };
  look(service.symbols(uri));
  return found;
}

/** Each line that changes, as it is and as it shall be. */
function* changedLines({ service, shown }: Input, files: readonly FileEdit[]): Iterable<string> {
  for (const { uri, edits } of files) {
    const before = service.lines(uri);
    const after = withEdits(before.join('\n'), edits).split('\n');
    for (const [index, line] of before.entries()) {
      if (line === after[index]) continue;
      yield `${shown(uri)}:${index + 1}`;
      yield `- ${line}`;
      yield `+ ${after[index] ?? ''}`;
    }
  }
}

/** Writes the files one after another; what could not be written is told, and the others are written. */
async function written({ service, shown }: Input, files: readonly FileEdit[]): Promise<boolean> {
  let isWhole = true;
  for (const { uri, edits } of files) {
    try {
      const target = await realFile(fileURLToPath(uri));
      const text = service.snapshot.texts.get(uri)?.text;
      if (target === undefined || text === undefined) {
        complain(shown(uri), say(message('command-files.link-out')));
        isWhole = false;
        continue;
      }
      await replaceFile(target, withEdits(text, edits));
    } catch (error) {
      isWhole = false;
      complain(shown(uri), say(message('command-files.left-as-was', { reason: writeTrouble(error, true) })));
    }
  }
  return isWhole;
}
