/** A name as a title has room for it: one that is longer than `most` letters ends in three points. */
export function shortName(name: string, most = 24): string {
  const letters = [...name];
  return letters.length <= most
    ? name
    : `${letters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}
