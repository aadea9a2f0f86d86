/** What an SVG of ours may hold: shapes and words. Whatever else stood in it is left out. */
const allowed: ReadonlySet<string> = new Set([
  ...['svg', 'g', 'path', 'rect', 'line', 'polyline', 'polygon', 'circle', 'ellipse', 'text', 'tspan'],
  ...['title', 'desc', 'defs', 'pattern', 'clipPath', 'linearGradient', 'stop'],
]);

/**
 * A drawing read as data, never set as markup. Names inside it get an ending of their own, for a page that holds two
 * drawings must not hold one name twice.
 */
export function drawing(svg: string, ending: string): Node | undefined {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root.localName !== 'svg') return undefined;
  for (const part of [root, ...root.querySelectorAll('*')]) {
    if (!allowed.has(part.localName)) part.remove();
    for (const { name, value } of [...part.attributes]) {
      if (/^on|^style$|href$/i.test(name)) part.removeAttribute(name);
      else if (name === 'id') part.setAttribute(name, `${value}-${ending}`);
      else if (name.startsWith('aria-') && name.endsWith('by'))
        part.setAttribute(
          name,
          value
            .split(' ')
            .map((id) => `${id}-${ending}`)
            .join(' '),
        );
      else if (value.includes('url(#'))
        part.setAttribute(name, value.replace(/url\(#([^)]+)\)/g, `url(#$1-${ending})`));
    }
  }
  return document.importNode(root, true);
}
