import { type Message, message } from '../../core/index.ts';
import type { Unreadable } from '../host/disk.ts';
import { shownFrom } from '../host/paths.ts';
import { visibleLine } from './terminal.ts';

/** What to do about a file or folder that cannot be read: for one whose name is no UTF-8, nobody can ask by any name. */
export function cureOf(why: Unreadable, path = ''): Message {
  if (why === 'missing' && path.includes('\ufffd')) return message('command-files.strange-name');
  return message(`command-files.${cures[why]}`);
}

const cures = {
  missing: 'missing',
  folder: 'folder',
  'no permission': 'no-permission',
  'too large': 'too-large',
  binary: 'binary',
  broken: 'broken',
} as const satisfies Record<Unreadable, string>;

/** A path as it is shown: from the current folder where it lies below, with slashes. */
export function shownPath(path: string): string {
  return visibleLine(shownFrom('.', path));
}
