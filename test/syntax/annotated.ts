import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Annotated fixtures. A file holds cases that start with `=== title`. A line that starts with `| ` is a line of the
 * input, kept as it is; one that starts with `! ` is an input line with escapes (`\r`, `\t`, `\u{2066}`, `\x00`, and
 * `<<5000*a>>` for five thousand letters). All other lines of a case are what is expected, and stand right under the
 * input line they are about, so that marks point at its columns.
 */
export interface AnnotatedCase {
  readonly title: string;
  readonly input: readonly string[];
  /** The whole case below its title, as it stands in the file. */
  readonly body: string;
}

export interface AnnotatedFile {
  readonly path: string;
  readonly name: string;
  readonly head: string;
  readonly cases: readonly AnnotatedCase[];
}

/** The text that the input lines of a case make; the last line has no line break behind it. */
export function inputOf(one: AnnotatedCase): string {
  return one.input.map(plainOf).join('\n');
}

/** An input line without its mark and with its escapes taken out. */
export function plainOf(marked: string): string {
  const line = marked.slice(2);
  if (!marked.startsWith('!')) return line;
  return line
    .replace(/<<(\d+)\*(.+?)>>/g, (_, count: string, text: string) => text.repeat(Number(count)))
    .replace(
      /\\(?:u\{([0-9A-F]+)\}|x([0-9A-F]{2})|(.))/gi,
      (_, long: string, short: string, plain: string) => {
        if (long ?? short) return String.fromCodePoint(Number.parseInt(long ?? short, 16));
        return { t: '\t', r: '\r' }[plain] ?? plain;
      },
    );
}

export function readAnnotated(folder: string): AnnotatedFile[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.txt'))
    .sort()
    .map((name) => {
      const path = join(folder, name);
      const [head, ...parts] = readFileSync(path, 'utf8').split(/^=== /m);
      const cases = parts.map((part): AnnotatedCase => {
        const end = part.indexOf('\n');
        const lines = part
          .slice(end + 1)
          .trimEnd()
          .split('\n');
        return {
          title: part.slice(0, end),
          input: lines
            .filter((line) => /^[|!]/.test(line))
            .map((line) => (line.length === 1 ? `${line} ` : line)),
          body: lines.join('\n'),
        };
      });
      return { path, name: name.replace('.txt', ''), head: head!, cases };
    });
}

/** Writes a file anew with the bodies given; the titles and inputs stay. */
export function writeAnnotated(file: AnnotatedFile, bodies: readonly string[]): void {
  const parts = file.cases.map((one, index) => `=== ${one.title}\n${bodies[index]}\n`);
  writeFileSync(file.path, `${file.head.trimEnd()}\n\n${parts.join('\n')}`.trimStart());
}
