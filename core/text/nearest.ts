/**
 * The word of `candidates` that `word` was most likely meant to be, or `undefined` when none is near enough.
 * Near is one slip in a word of up to four letters, two up to eight, three above; a slip is a letter missing, added,
 * changed, or two neighbours swapped.
 */
export function nearestWord(word: string, candidates: Iterable<string>): string | undefined {
  const most = word.length <= 4 ? 1 : word.length <= 8 ? 2 : 3;
  let best: string | undefined;
  let bestSlips = most + 1;
  for (const candidate of candidates) {
    if (candidate === word) return candidate;
    if (Math.abs(candidate.length - word.length) >= bestSlips) continue;
    const slips = slipsBetween(word, candidate);
    if (slips < bestSlips) {
      best = candidate;
      bestSlips = slips;
    }
  }
  return best;
}

/** Three rows of a table, made once: names are looked for among hundreds. */
let rows: [Uint16Array, Uint16Array, Uint16Array] = [
  new Uint16Array(64),
  new Uint16Array(64),
  new Uint16Array(64),
];

/** Optimal string alignment distance: edits and swaps of neighbours. */
function slipsBetween(from: string, to: string): number {
  const wide = to.length + 1;
  if (wide > rows[0].length) rows = [new Uint16Array(wide), new Uint16Array(wide), new Uint16Array(wide)];
  let [twoBack, before, row] = rows;
  for (let j = 0; j < wide; j++) before[j] = j;
  for (let i = 1; i <= from.length; i++) {
    row[0] = i;
    for (let j = 1; j < wide; j++) {
      const same = from[i - 1] === to[j - 1];
      let cost = Math.min(row[j - 1]! + 1, before[j]! + 1, before[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        cost = Math.min(cost, twoBack[j - 2]! + 1);
      }
      row[j] = cost;
    }
    [twoBack, before, row] = [before, row, twoBack];
  }
  return before[to.length]!;
}
