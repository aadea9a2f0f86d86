import { fileURLToPath } from 'node:url';
import { createService, type Message, message, withEdits } from '../../core/index.ts';
import { readBytes, realFile } from '../host/disk.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import { cureOf } from './shown-path.ts';
import { say } from './speaker.ts';
import { complain, tell } from './terminal.ts';
import { replaceFile, writeTrouble } from './write-out.ts';

/**
 * Brings files into the canonical form and names those it changed: 0, or 2 when one could not be read or written. With
 * `check` nothing is written, and the answer is 1 when anything would be.
 */
export async function format(
  paths: readonly string[],
  options: { readonly check?: boolean },
): Promise<ExitCode> {
  const { asked, failed } = await readInput(paths, { around: false });
  const service = createService();
  let trouble = failed;
  let changed = 0;
  for (const { uri, shown } of asked) {
    try {
      // Read again, letter by letter: what is no UTF-8 must not be written back as something else.
      const { bytes, why } = await readBytes(fileURLToPath(uri));
      if (bytes === undefined) throw new NotWritten(cureOf(why));
      const text = decode(bytes);
      if (text === undefined) continue;
      service.setText(uri, text);
      const edits = service.format(uri);
      service.remove(uri);
      if (edits.length === 0) continue;
      if (!options.check) {
        const target = await realFile(fileURLToPath(uri));
        if (target === undefined) throw new NotWritten(message('command-files.link-out'));
        await replaceFile(target, withEdits(text, edits));
      }
      changed++;
      tell(`${shown}\n`);
    } catch (error) {
      trouble = true;
      complain(shown, say(reason(error)));
    }
  }
  if (trouble) return 2;
  return options.check && changed > 0 ? 1 : 0;
}

/** A file that is left as it is, for a reason of its own. */
class NotWritten extends Error {
  readonly why: Message;

  constructor(why: Message) {
    super(why.code);
    this.why = why;
  }
}

/** The text letter by letter; `undefined` where it is no UTF-8, which was told when it was read first. */
function decode(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function reason(error: unknown): Message {
  if (error instanceof NotWritten) return error.why;
  return message('command-files.left-as-was', { reason: writeTrouble(error, true) });
}
