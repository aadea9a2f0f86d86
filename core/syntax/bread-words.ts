/** Words that breads are counted in, in a yield: one of them, and several. Common practice, no source. */
const pairs =
  'loaf loaves|roll rolls|bun buns|bread breads|unit units|ball balls|tin tins|baguette baguettes|boule boules|batard batards|bâtard bâtards|' +
  'bagel bagels|pizza pizzas|muffin muffins|pretzel pretzels|croissant croissants|brioche brioches|doughnut doughnuts|donut donuts|' +
  'pitta pittas|pita pitas|naan naans|flatbread flatbreads|tortilla tortillas|focaccia focaccias|ciabatta ciabattas|stick sticks|cake cakes|' +
  'knot knots|crumpet crumpets|teacake teacakes|bap baps|cob cobs|bloomer bloomers|sub subs|piece pieces';

/** The singular and the plural of each word, by either. */
const words: ReadonlyMap<string, readonly [one: string, many: string]> = new Map(
  pairs.split('|').flatMap((pair) => {
    const [one = '', many = ''] = pair.split(' ');
    return [one, many].map((word) => [word, [one, many]] as const);
  }),
);

/** Whether breads are counted in a word, in whatever case. */
export function countsBreads(word: string): boolean {
  return words.has(word.toLowerCase());
}

/** The word of a count in the number that fits, `loaf` for one of `loaves`; a word that counts no bread stays as it is. */
export function wordFor(count: number, word: string): string {
  const [one, many] = words.get(word.toLowerCase()) ?? [word, word];
  return count === 1 ? one : many;
}

const counted = /(\d{1,6}(?:\.\d{1,6})?)[ \t\u00A0\u202F]*(\p{L}+)(?![\p{L}\p{N}\p{M}])/uy;

/** `2 loaves` at a column of a text: its number, its word and where it ends. */
export function breadsAt(
  text: string,
  start: number,
): { readonly number: string; readonly unit: string; readonly end: number } | undefined {
  counted.lastIndex = start;
  const [whole = '', number = '', unit = ''] = counted.exec(text) ?? [];
  return countsBreads(unit) ? { number, unit, end: start + whole.length } : undefined;
}
