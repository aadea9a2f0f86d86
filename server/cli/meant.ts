import { foldName, nearestWord } from '../../core/index.ts';

/** The name that was most likely meant by one that is none of them; `undefined` where none is near enough. */
export function meantOf(name: string, names: Iterable<string>): string | undefined {
  const byFolded = new Map([...names].map((one) => [foldName(one), one]));
  const near = nearestWord(foldName(name), byFolded.keys());
  return near === undefined ? undefined : byFolded.get(near);
}
