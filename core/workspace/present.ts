import type { ActionContext, TextRange } from '../features/actions/action.ts';
import type { Examine, Examined, FileChange } from '../features/actions/sound-edits.ts';
import type { Finding } from '../rules/engine/finding.ts';
import type { Rule } from '../rules/engine/rule.ts';
import { wordsOfRule } from '../rules/engine/rule-page.ts';
import { blockAt } from '../syntax/line-place.ts';
import type { SourceFile } from '../syntax/tree.ts';
import type { RulePage } from '../words/rule-page-words.ts';
import type { Speaker } from '../words/speaker.ts';
import { actionContext } from './action-context.ts';
import { findingsInFile, placedInFile } from './file-findings.ts';
import type { LastWhole } from './last-whole.ts';
import type { Settings } from './settings.ts';
import type { View } from './snapshot-view.ts';

/** A block of a file and the line it begins on, counted in the file. */
export type PlacedBlock = SourceFile['blocks'][number];

/** A file of one snapshot, and that snapshot: an answer asks no other, whatever comes meanwhile. */
export interface ReadFile {
  readonly source: SourceFile;
  readonly view: View;
}

/** What every answer of a service begins with: the present snapshot, whoever words it, and what stands where. */
export interface Present {
  view(): View;
  settings(): Settings;
  speaker(): Speaker;
  /** The figures last whole, as they were worded. */
  lastWhole(): LastWhole;
  /** Told of a rule or an action that fails. */
  readonly failed: (what: string) => void;
}

export function readFile(present: Present, uri: string): ReadFile | undefined {
  const view = present.view();
  const found = view.read(uri);
  return found === undefined ? undefined : { source: found.source, view };
}

/** The formula at a line. Comments and blank lines right above one speak of that formula, not of what ends before them. */
export function formulaAt(source: SourceFile, line: number): PlacedBlock | undefined {
  let next = line;
  while (source.lines[next]?.empty) next++;
  const below = source.blocks.find(({ firstLine, block }) => firstLine === next && block.top !== undefined);
  const found = below ?? blockAt(source, line);
  return found?.block.top?.kind === 'formula' ? found : undefined;
}

/** The formula of a name, the nearest to the line where several have it; the one at the line, where none is given or stands in the file. */
export function formulaWanted(
  source: SourceFile,
  line: number,
  name: string | undefined,
): PlacedBlock | undefined {
  const isWanted = ({ block }: PlacedBlock): boolean =>
    block.top?.kind === 'formula' && block.top.header.name?.text === name;
  const at = formulaAt(source, line);
  if (name === undefined || (at !== undefined && isWanted(at))) return at;
  const farFrom = ({ firstLine }: PlacedBlock): number => Math.abs(firstLine - line);
  const [nearest] = source.blocks.filter(isWanted).sort((one, other) => farFrom(one) - farFrom(other));
  return nearest ?? at;
}

/** All findings of a file, worded. */
export function findingsOfFile(present: Present, uri: string): readonly Finding[] {
  const found = readFile(present, uri);
  if (found === undefined) return [];
  const { source, view } = found;
  return findingsInFile(uri, source, (block) => view.findingsOf(uri, block), view, present.speaker());
}

/** Looks at a file of the present snapshot as it is, and as it would be once files are changed. */
export function examining({ source, view }: ReadFile, uri: string): Examine {
  const examined = (of: View): Examined => {
    const read = of.read(uri)?.source ?? source;
    const findings = placedInFile(
      uri,
      read,
      (block) => of.findingsOf(uri, block),
      of,
      Number.MAX_SAFE_INTEGER,
    );
    return { source: read, findings };
  };
  let before: Examined | undefined;
  function examine(): Examined;
  function examine(changes: readonly FileChange[]): Examined | undefined;
  function examine(changes: readonly FileChange[] = []): Examined | undefined {
    const after = changes.reduce((of, [file, changed]) => {
      const text = of.read(file)?.file.text;
      return text === undefined ? of : of.with(file, changed(text));
    }, view);
    if (after !== view) return examined(after);
    if (changes.length > 0) return undefined;
    before ??= examined(view);
    return before;
  }
  return examine;
}

/** What an action at a range may look at. */
export function actionsAround(present: Present, uri: string, range: TextRange): ActionContext | undefined {
  const found = readFile(present, uri);
  return found === undefined
    ? undefined
    : actionContext({
        uri,
        source: found.source,
        range,
        scope: found.view.scopeOf(uri),
        analysisOf: (block) => found.view.analysisOf(uri, block),
        findings: () => findingsOfFile(present, uri),
        examine: examining(found, uri),
        fileOf: (other) => found.view.read(other)?.source,
        failed: present.failed,
      });
}

/** What the page of a rule says in the language of the reader. */
export function pageOf(present: Present, rule: Rule): RulePage {
  return wordsOfRule(rule, present.settings().language);
}
