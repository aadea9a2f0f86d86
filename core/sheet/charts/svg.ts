/** Attributes of an element; what is undefined is left out. Numbers are written with at most two places. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element of a drawing. Its children are drawings already; texts come in by `escaped`. */
export function tag(name: string, attributes: Attributes = {}, ...children: readonly string[]): string {
  let written = '';
  for (const key in attributes) {
    const value = attributes[key];
    if (value === undefined) continue;
    written += ` ${key}="${typeof value === 'number' ? coordinate(value) : escaped(value)}"`;
  }
  const inside = children.join('');
  return inside === '' ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`;
}

/** A text as XML may hold it: marks of the language written out, and characters that XML has no place for left out. */
export function escaped(text: string): string {
  if (!needsEscaping.test(text)) return text;
  return text
    .replace(notInXml, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}

const needsEscaping = /[^ !#-%'-;=?-~°–−·\u00a0-\u024f]/;

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML 1.0 (section 2.2) has no place for
const notInXml = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu;

/** A coordinate with at most two places. */
export function coordinate(value: number): string {
  return String(Math.round(value * 100) / 100 || 0);
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Points as `points` and `d` take them. */
export function pointsOf(points: readonly Point[]): string {
  return points.map(({ x, y }) => `${coordinate(x)},${coordinate(y)}`).join(' ');
}

/** A straight line; `dashes` as SVG writes them. */
export function line(from: Point, to: Point, more: Attributes = {}): string {
  return tag('line', { x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...stroked, ...more });
}

/** What has no fill and the colour of the text for its outline. */
export const stroked: Attributes = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1 };

export const textSize = 15;

/** One line of text; `y` is its baseline. Left to right whatever its letters are, so that `x` stays its edge. */
export function label(
  text: string,
  { x, y }: Point,
  anchor: 'start' | 'middle' | 'end' = 'start',
  more: Attributes = {},
): string {
  return tag(
    'text',
    {
      x,
      y,
      'font-size': textSize,
      fill: 'currentColor',
      ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
      ...more,
    },
    escaped(text),
  );
}

/** A whole drawing, with its name and its description for who cannot see it. */
export function drawing(
  { title, description }: { readonly title: string; readonly description: string },
  size: { readonly width: number; readonly height: number },
  kind: string,
  ...parts: readonly string[]
): string {
  return tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      role: 'img',
      viewBox: `0 0 ${coordinate(size.width)} ${coordinate(size.height)}`,
      width: size.width,
      height: size.height,
      'font-family': 'sans-serif',
      class: `drawing drawing-of-${kind}`,
    },
    tag('title', {}, escaped(title)),
    tag('desc', {}, escaped(description)),
    ...parts,
  );
}

/** The commands of a path, its coordinates with at most two places. */
export function path(commands: TemplateStringsArray, ...at: readonly number[]): string {
  return commands.reduce((all, part, index) => all + coordinate(at[index - 1]!) + part);
}
