import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const project = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string): string => readFileSync(join(project, path), 'utf8');

/** A name that the core gives to whoever uses it, and the file that says what it is. */
interface Exported {
  readonly name: string;
  /** What the file calls it. */
  readonly own: string;
  readonly file: string;
}

/** Everything that the door of the core exports, in the order of the alphabet. */
export function exportsOfCore(): Exported[] {
  const door = read('core/index.ts');
  const found = [...door.matchAll(/export (?:type )?\{([^}]*)\} from '\.\/([^']+)'/g)].flatMap(
    ([, names, path]) =>
      names!.split(',').flatMap((one): Exported[] => {
        const [own, name] = one
          .trim()
          .replace(/^type /, '')
          .split(/ as /);
        return own === undefined || own === '' ? [] : [{ name: name ?? own, own, file: `core/${path}` }];
      }),
  );
  const here = [...door.matchAll(/^export const (\w+)/gm)].map(([, name]) => ({
    ...{ name: name!, own: name!, file: 'core/index.ts' },
  }));
  return [...found, ...here].sort((one, other) =>
    one.name.toLowerCase() < other.name.toLowerCase() ? -1 : 1,
  );
}

/** What a file says of one of its names: the comment above it, and the declaration without the body of a function. */
export function declarationOf({ own, file }: Exported): { readonly about: string; readonly code: string } {
  const lines = read(file).split('\n');
  const start = lines.findIndex((line) =>
    new RegExp(`^export (?:abstract )?(?:async )?(?:interface|type|function\\*?|const|class) ${own}\\b`).test(
      line,
    ),
  );
  if (start < 0) return declarationOf({ ...passedOn(lines.join('\n'), file, own) });
  return { about: commentAbove(lines, start), code: codeFrom(lines, start) };
}

/** Where a name comes from that a file only passes on. */
function passedOn(source: string, file: string, own: string): Exported {
  for (const [, names, from] of source.matchAll(/(?:export|import) (?:type )?\{([^}]*)\} from '([^']+)'/g))
    if (names!.split(',').some((one) => one.trim().replace(/^type /, '') === own))
      return { name: own, own, file: join(dirname(file), from!) };
  throw new Error(`${own} is not declared in ${file}`);
}

function commentAbove(lines: readonly string[], start: number): string {
  const above: string[] = [];
  for (let at = start - 1; at >= 0; at--) {
    const line = lines[at]!.trim();
    if (!/^(?:\/?\*|\*\/)/.test(line)) break;
    above.unshift(line.replace(/^\/\*\*? ?|^\* ?| ?\*\/$/g, '').trim());
    if (line.startsWith('/*')) break;
  }
  return above.filter((line) => line !== '' && line !== '/').join(' ');
}

function codeFrom(lines: readonly string[], start: number): string {
  const first = lines[start]!;
  const isWhole = /^export (?:interface|type|class)/.test(first);
  const taken: string[] = [];
  for (let at = start; at < lines.length; at++) {
    const line = lines[at]!;
    taken.push(line);
    // The style of the source ends a declaration at the margin.
    if (at > start && isWhole && /^[^\s/*|&]/.test(line)) break;
    if (isWhole && at === start && /[;}]$/.test(line) && !/\{$/.test(line)) break;
    if (
      isWhole &&
      at > start &&
      line.endsWith(';') &&
      !/^export interface|^export class/.test(first) &&
      depth(taken) === 0
    )
      break;
    if (
      !isWhole &&
      /[{=]>? *$|;$/.test(line) &&
      depth(taken.map((one) => one.replace(/ \{$| =>? ?$/, ''))) === 0
    )
      break;
  }
  const text = taken.join('\n').replace(/^export /, '');
  if (isWhole) return text;
  if (/^const/.test(text)) return text.replace(/ = [\s\S]*$/, '');
  return text.replace(/ \{$/, '');
}

/** How many brackets are open behind some lines. */
function depth(lines: readonly string[]): number {
  const text = lines
    .join('\n')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/'[^'\n]*'/g, '')
    .replace(/=>/g, '');
  return [...text].reduce(
    (open, sign) => open + ('([{<'.includes(sign) ? 1 : ')]}>'.includes(sign) ? -1 : 0),
    0,
  );
}

/** The reference of the library: what the core exports, as its source declares it. */
export function libraryPage(): string {
  const sections = exportsOfCore().map((one) => {
    const { about, code } = declarationOf(one);
    const note = one.own === one.name ? '' : `In its file it is called \`${one.own}\`.\n\n`;
    return `## ${one.name}\n\n${about === '' ? '' : `${about}\n\n`}${note}\`\`\`ts\n${code}\n\`\`\`\n`;
  });
  return [
    '# The library, name by name\n',
    'What `doughwright/core` exports, as its source declares it; [the guide](guide/library.md) says how to begin. This page is generated.\n',
    ...sections,
  ].join('\n');
}
