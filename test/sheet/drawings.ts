import { textSize } from '../../core/sheet/charts/svg.ts';
import { textWidth } from '../../core/sheet/charts/text-fit.ts';

export interface DrawnText {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The texts of a drawing with the room each is given, by its attributes. */
export function drawnTexts(svg: string): DrawnText[] {
  return [...svg.matchAll(/<text ([^>]*)>(.*?)<\/text>/g)].map(([, attributes, inside]) => {
    const text = plain(inside!.replace(/<[^>]*>/g, ''));
    const x = Number(attribute(attributes!, 'x'));
    const y = Number(attribute(attributes!, 'y'));
    const width = textWidth(text) * (/bold/.test(attributes!) ? 1.1 : 1);
    const anchor = attribute(attributes!, 'text-anchor');
    const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
    return { text, left, right: left + width, top: y - 0.75 * textSize, bottom: y + 0.25 * textSize };
  });
}

/** What is wrong with how a drawing is laid out: texts on texts, texts beyond its edges. */
export function layoutFaults(svg: string): string[] {
  const [width, height] = size(svg);
  const texts = drawnTexts(svg);
  const outside = texts
    .filter(
      ({ left, right, top, bottom }) => left < -1 || right > width + 1 || top < -1 || bottom > height + 1,
    )
    .map(({ text }) => `beyond the edge: ${text}`);
  const onto = texts.flatMap((one, index) =>
    texts
      .slice(index + 1)
      .filter(
        (other) =>
          one.left < other.right - 1 &&
          other.left < one.right - 1 &&
          one.top < other.bottom - 1 &&
          other.top < one.bottom - 1,
      )
      .map((other) => `“${one.text}” on “${other.text}”`),
  );
  return [...outside, ...onto];
}

/** What in a drawing is more than shapes and words, or would show in a colour of its own. */
export function strangeParts(svg: string): string[] {
  const strange = svg.match(/<(?:style|script|a|image|use|foreignObject)\b|\b(?:href|style|on\w+)="/g) ?? [];
  const paints = [...svg.matchAll(/\b(?:fill|stroke)="([^"]*)"/g)].map(([, paint]) => paint!);
  const names = new Set([...svg.matchAll(/\bid="([^"]*)"/g)].map(([, id]) => id!));
  return [
    ...strange,
    ...paints.filter((paint) => {
      const name = /^url\(#([^)]*)\)$/.exec(paint)?.[1];
      return name === undefined ? !['none', 'currentColor'].includes(paint) : !names.has(name);
    }),
    ...(svg.match(/="[^"]*(?:NaN|undefined|Infinity)[^"]*"/g) ?? []),
  ];
}

export function size(svg: string): [width: number, height: number] {
  const [, width, height] = /viewBox="0 0 (\S+) (\S+)"/.exec(svg)!;
  return [Number(width), Number(height)];
}

function attribute(attributes: string, name: string): string | undefined {
  return new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
}

function plain(text: string): string {
  return text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&');
}
