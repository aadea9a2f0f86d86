/** Names of our own invention, for formulas that exist nowhere else. */
const places = [
  'Harbour',
  'Lantern',
  'Slipway',
  'Mooring',
  'Capstan',
  'Tideline',
  'Rope Walk',
  'Gull Rock',
  'Old Crane',
  'Net Loft',
];
const shapes = ['Tin', 'Round', 'Plait', 'Baton', 'Crown', 'Slab'];

/**
 * A text of the notation with as many lines as asked for: whole formulas of some twenty lines, each another, and notes
 * for what is left. The same number of lines gives the same text.
 */
export function formulaText(lineCount: number): string {
  const lines: string[] = [];
  for (let number = 0; lines.length + formulaLines(0).length <= lineCount; number++)
    lines.push(...formulaLines(number));
  while (lines.length < lineCount) lines.push(`  note baked on day ${lines.length}`);
  return `${lines.join('\n')}\n`;
}

function formulaLines(number: number): string[] {
  const name = `${places[number % places.length]} ${shapes[number % shapes.length]} ${number + 1}`;
  return [
    `formula ${name}:`,
    `  yield ${12 + (number % 30)} pieces of ${450 + 10 * (number % 40)} g`,
    '  loss 1.5%',
    '  dough temperature 25 °C',
    '  strong white       85%',
    '  wholemeal wheat    balance',
    `  water              to ${62 + (number % 10)}% hydration`,
    '  salt               2%',
    '  fresh yeast        0.9%',
    '  butter             4%, at 8 °C',
    'preferment evening poolish:',
    '  draws 22% of flour',
    '  strong white       100%',
    '  water              100%',
    '  instant yeast      0.08%',
    '  ferment 12 h at 18 °C',
    'mix by hand:',
    '  load flour, water, evening poolish, salt, fresh yeast, butter',
    '  knead for 12 min',
    '',
  ];
}

/** One stroke of a key: a replacement within one line. */
export interface Keystroke {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly insert: string;
}

/**
 * Strokes spread over the text, in pairs of one and its undoing, so that the text is as it was after each pair. Half of
 * the pairs change a number, half break a line and mend it.
 */
export function keystrokes(text: string, count: number): Keystroke[] {
  const lines = text.split('\n');
  const spots = lines.flatMap((line, at) => {
    const column = line.search(/\d%/);
    return column < 0 ? [] : [{ line: at, column }];
  });
  return Array.from({ length: Math.floor(count / 2) }, (_, pair) => {
    // Steps of the golden ratio spread evenly, whatever the number of spots.
    const { line, column } = spots[Math.floor(((pair * 0.618033988749895) % 1) * spots.length)]!;
    const stroke =
      pair % 2 === 0
        ? { line, start: column, end: column, insert: '1' }
        : { line, start: column, end: column, insert: '"' };
    return [stroke, { line, start: column, end: column + 1, insert: '' }];
  }).flat();
}
