/** What a release changes in the files of the project, as text to text: no file is read or written here. */

const number = /^(0|[1-9]\d*)\.(0|[1-9]\d*)\.(0|[1-9]\d*)$/;

/** A version as its three numbers. Throws for anything else: a gallery of extensions takes no other. */
export function versionNumbers(version: string): readonly [number, number, number] {
  const parts = number.exec(version);
  if (parts === null) throw new Error(`A version is three numbers, as 0.2.0; this is ${version}`);
  return [Number(parts[1]), Number(parts[2]), Number(parts[3])];
}

/** Whether a version comes behind another. */
export function isLater(version: string, other: string): boolean {
  const [one, two] = [versionNumbers(version), versionNumbers(other)];
  const differs = one.findIndex((part, index) => part !== two[index]);
  return differs >= 0 && one[differs]! > two[differs]!;
}

/** The list of changes with what is unreleased under this version and day (YYYY-MM-DD), and an empty Unreleased above it. */
export function releasedChanges(changes: string, version: string, day: string): string {
  const [before, after] = changes.split(/^## Unreleased\n/m);
  if (after === undefined) throw new Error('CHANGELOG.md has no line ## Unreleased.');
  if (releaseDay(changes, version) !== undefined || new RegExp(`^## ${escaped(version)}$`, 'm').test(changes))
    throw new Error(`CHANGELOG.md has ${version} already.`);
  if (!/^- /m.test(after.split(/^## /m)[0]!)) throw new Error('CHANGELOG.md says nothing under Unreleased.');
  return `${before}## Unreleased\n\n## ${version}, ${day}\n${after}`;
}

/** The day (YYYY-MM-DD) that the list of changes gives a version; nothing where it has the version not, or no day. */
export function releaseDay(changes: string, version: string): string | undefined {
  return new RegExp(`^## ${escaped(version)}, (\\d{4}-\\d\\d-\\d\\d)$`, 'm').exec(changes)?.[1];
}

/** What the list of changes says under a version or under `Unreleased`, without the heading. */
export function changesOf(changes: string, heading: string): string {
  const [, ...parts] = changes.split(/^## /m);
  const part = parts.find((one) => one.split(/[,\n]/)[0] === heading) ?? '';
  return part.replace(/^.*\n/, '').trim();
}

/** A package.json or package-lock.json, whose only version of ours stands first, with another version. */
export function withVersion(name: string, json: string, version: string): string {
  const manifest = JSON.parse(json) as { version: string; packages?: Record<string, { version: string }> };
  manifest.version = version;
  const own = manifest.packages?.[''];
  if (own !== undefined) own.version = version;
  const text = `${JSON.stringify(manifest, null, 2)}\n`;
  if (text.split('\n').length !== json.split('\n').length)
    throw new Error(`${name} is not laid out as npm writes it; run npm install once.`);
  return text;
}

function escaped(version: string): string {
  return version.replaceAll('.', '\\.');
}
