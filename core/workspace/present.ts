import type { ActionContext, TextRange } from '../features/actions/action.ts';
import type { Finding } from '../rules/engine/finding.ts';
import type { Rule } from '../rules/engine/rule.ts';
import { wordsOfRule } from '../rules/engine/rule-page.ts';
import { blockAt } from '../syntax/line-place.ts';
import type { SourceFile } from '../syntax/tree.ts';
import type { RulePage } from '../words/rule-page-words.ts';
import type { Speaker } from '../words/speaker.ts';
import { actionContext } from './action-context.ts';
import { findingsInFile } from './file-findings.ts';
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

/** The formula of a name, where one is given and stands in the file; else the one at the line. */
export function formulaWanted(
  source: SourceFile,
  line: number,
  name: string | undefined,
): PlacedBlock | undefined {
  const isWanted = ({ block }: PlacedBlock): boolean =>
    block.top?.kind === 'formula' && block.top.header.name?.text === name;
  return (name === undefined ? undefined : source.blocks.find(isWanted)) ?? formulaAt(source, line);
}

/** All findings of a file, worded. */
export function findingsOfFile(present: Present, uri: string): readonly Finding[] {
  const found = readFile(present, uri);
  if (found === undefined) return [];
  const { source, view } = found;
  return findingsInFile(uri, source, (block) => view.findingsOf(uri, block), view, present.speaker());
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
        fileOf: (other) => found.view.read(other)?.source,
        failed: present.failed,
      });
}

/** What the page of a rule says in the language of the reader. */
export function pageOf(present: Present, rule: Rule): RulePage {
  return wordsOfRule(rule, present.settings().language);
}
