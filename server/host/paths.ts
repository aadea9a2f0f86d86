import * as own from 'node:path';

/** What is asked of paths here; `node:path` has it for the system that runs this, and for others by name. */
export type PathStyle = Pick<typeof own, 'relative' | 'resolve' | 'isAbsolute' | 'sep'>;

/** The same path with slashes, as URIs, git and every text that leaves us have it. */
export function slashed(path: string, { sep }: PathStyle = own): string {
  return path.replaceAll(sep, '/');
}

/** The way from a folder to a path, with slashes; it begins with `../` for what lies outside, and is whole on another drive. */
export function wayTo(path: string, folder: string, style: PathStyle = own): string {
  return slashed(style.relative(folder, path), style);
}

/** Whether a way, as `wayTo` has it or with the separators of the system, leads out of its folder. */
export function leadsOut(way: string, { isAbsolute, sep }: PathStyle = own): boolean {
  return way === '..' || way.startsWith('../') || way.startsWith(`..${sep}`) || isAbsolute(way);
}

/** Whether a path lies below a folder; both without links. */
export function isWithin(path: string, folder: string, style: PathStyle = own): boolean {
  const way = style.relative(folder, path);
  return way !== '' && !leadsOut(way, style);
}

/** A path as it is shown to somebody in a folder: from there where it lies below, else whole; with slashes. */
export function shownFrom(folder: string, path: string, style: PathStyle = own): string {
  const way = style.relative(folder, path) || '.';
  return slashed(leadsOut(way, style) ? path : way, style);
}

/**
 * A path as a reference by RFC 3986, section 4.2: from a folder where it lies below, else a whole `file:` URI. Without a folder
 * it is meant from the current one.
 */
export function uriReference(path: string, folder: string | undefined, style: PathStyle = own): string {
  const way = folder === undefined ? path : style.relative(folder, style.resolve(path));
  const shown = leadsOut(way, style) ? style.resolve(path) : way;
  const escaped = slashed(shown, style).split('/').map(encodeURIComponent).join('/');
  return style.isAbsolute(shown) ? `file://${escaped.startsWith('/') ? '' : '/'}${escaped}` : escaped;
}
