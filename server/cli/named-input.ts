import { dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { doughFilesBelow, readDough, rootAbove, type Unreadable } from '../host/disk.ts';
import { largestFileBytes } from '../host/host.ts';
import { canonicalUri } from '../host/uris.ts';
import { shownPath } from './shown-path.ts';
import type { Texts } from './texts.ts';

/**
 * The text that comes on standard input as that of a file, among the other files as they are on disk; the file need not be
 * there. As an editor hands over what is typed and not saved.
 */
export async function readNamedInput(name: string): Promise<Texts | { readonly why: Unreadable }> {
  const text = await readStandardInput();
  if (typeof text !== 'string') return text;
  const path = resolve(name);
  const uri = canonicalUri(pathToFileURL(path).href);
  const around = await readAround(path);
  const shown = shownPath(resolve(name));
  return {
    ...around,
    texts: [...around.texts.filter(([other]) => other !== uri), [uri, text]],
    asked: [{ uri, shown }],
    shown: (other) => (other === uri ? shown : around.shown(other)),
  };
}

/** The files on disk around a place, whether a file is there or not. */
async function readAround(path: string): Promise<Texts> {
  const root = await rootAbove(dirname(path));
  const texts: (readonly [uri: string, text: string])[] = [];
  const shown = new Map<string, string>();
  for await (const file of doughFilesBelow(root)) {
    const { text } = await readDough(file);
    const uri = canonicalUri(pathToFileURL(file).href);
    shown.set(uri, shownPath(file));
    if (text !== undefined) texts.push([uri, text]);
  }
  return {
    texts,
    roots: [canonicalUri(pathToFileURL(root).href)],
    asked: [],
    shown: (uri) => shown.get(uri) ?? uri,
    troubles: [],
    failed: false,
  };
}

async function readStandardInput(): Promise<string | { readonly why: Unreadable }> {
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of process.stdin) {
    pieces.push(piece as Buffer);
    size += (piece as Buffer).length;
    if (size > largestFileBytes) return { why: 'too large' };
  }
  const bytes = Buffer.concat(pieces);
  return bytes.includes(0) ? { why: 'binary' } : bytes.toString('utf8').replace(/^\ufeff/, '');
}
