const seen = new Map<string, string>();

/**
 * One spelling for each file: percent escapes as few as a URI allows in its path, the drive letter small. Editors and
 * the disk spell the same file differently, and two spellings would look like two files that define the same names.
 * Only `file:` is touched; other schemes come from the editor alone.
 */
export function canonicalUri(uri: string): string {
  const known = seen.get(uri);
  if (known !== undefined) return known;
  const canonical = respell(uri);
  if (seen.size > 20_000) seen.clear();
  seen.set(uri, canonical);
  return canonical;
}

/** Whether a file or folder lies in a folder, at any depth. */
export function isBelow(uri: string, folder: string): boolean {
  return uri.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

function respell(uri: string): string {
  const parts = /^file:\/\/([^/?#]*)([^?#]*)/i.exec(uri);
  if (!parts) return uri;
  const path = parts[2]!.split('/').map(respellSegment).join('/');
  const withoutSlash = path.length > 1 && path.endsWith('/') ? path.slice(0, -1) : path;
  const drive = /^\/([A-Za-z])%3A/.exec(withoutSlash);
  const host = parts[1]!.toLowerCase();
  return `file://${host === 'localhost' ? '' : host}${drive ? `/${drive[1]!.toLowerCase()}${withoutSlash.slice(2)}` : withoutSlash}`;
}

function respellSegment(segment: string): string {
  let plain = segment;
  try {
    plain = decodeURIComponent(segment);
  } catch {
    // A stray percent sign: it stands for itself.
  }
  return encodeURIComponent(plain).replace(
    /[!'()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
}
