import type { Definition } from '../model/scope.ts';
import type { BlockFinding, BlockFindings } from '../rules/engine/check.ts';
import type { Finding, Fix, Related } from '../rules/engine/finding.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Settings } from './settings.ts';
import type { View } from './snapshot-view.ts';

/** Where a definition stands now; it may have moved since the finding was made. */
type WhereIs = (definition: Definition) => { readonly uri: string; readonly firstLine: number };

/** The findings of a file in the words of a speaker. */
export function findingsInFile(
  uri: string,
  file: SourceFile,
  findingsOf: (block: Block) => BlockFindings,
  view: View,
  speaker: Speaker,
): Finding[] {
  return wordedFindings(placedInFile(uri, file, findingsOf, view), speaker);
}

/**
 * The findings of a file, block by block, at the levels that are set, counted in the file's lines. Above the most that
 * shown, the rest is counted in one last finding, so that a pasted page of prose does not flood the screen. What is kept of
 * them is which message it is, and its figures.
 */
export function placedInFile(
  uri: string,
  file: SourceFile,
  findingsOf: (block: Block) => BlockFindings,
  view: View,
  most = view.snapshot.settings.maxFindings,
): PlacedFinding[] {
  const { settings } = view.snapshot;
  const whereIs: WhereIs = (definition) =>
    byBlock(view.definitionsOf(definition.uri)).get(definition.block) ?? definition;
  const shown: PlacedFinding[] = [];
  let more = 0;
  const ending = file.endings.find((one) => one !== '') ?? '\n';
  for (const { block, firstLine } of file.blocks) {
    const placed = placedOf({ uri, firstLine, ending }, findingsOf(block), settings, whereIs);
    const room = most - shown.length;
    if (placed.length <= room) shown.push(...placed);
    else {
      shown.push(...placed.slice(0, room));
      more += placed.length - room;
    }
  }
  const last = shown[shown.length - 1];
  if (more > 0 && last !== undefined) {
    shown.push({
      code: 'more-findings',
      level: 'info',
      message: message('more-findings.more', { count: more }),
      place: last.place,
      related: [],
      fixes: [],
    });
  }
  return shown;
}

const indexed = new WeakMap<readonly Definition[], ReadonlyMap<Block, Definition>>();

function byBlock(definitions: readonly Definition[]): ReadonlyMap<Block, Definition> {
  let index = indexed.get(definitions);
  if (index === undefined) {
    // The first of a block counts, so it is set last.
    index = new Map(definitions.toReversed().map((one) => [one.block, one]));
    indexed.set(definitions, index);
  }
  return index;
}

/** Where a block stands, and how the lines of its file end. */
interface Standing {
  readonly uri: string;
  readonly firstLine: number;
  readonly ending: string;
}

interface Placed extends Standing {
  readonly rules: Settings['rules'];
  readonly findings: readonly PlacedFinding[];
}

// A block that has not moved tells the same objects again, so that a keystroke in one formula costs nothing for the
// findings of the others. Findings that point to definitions are placed anew, for those may have moved.
const kept = new WeakMap<BlockFindings, Placed>();

function placedOf(
  standing: Standing,
  block: BlockFindings,
  settings: Settings,
  whereIs: WhereIs,
): readonly PlacedFinding[] {
  const { uri, firstLine, ending } = standing;
  const before = kept.get(block);
  const isSame = before?.uri === uri && before.firstLine === firstLine && before.ending === ending;
  if (isSame && before.rules === settings.rules) return before.findings;
  const findings = block.findings.flatMap((finding) => {
    const level = settings.rules[finding.code] ?? finding.level;
    return level === 'off' ? [] : [inFile(standing, finding, level, whereIs)];
  });
  const points = block.findings.some((finding) =>
    finding.related.some((one) => one.definition !== undefined),
  );
  if (!points) kept.set(block, { ...standing, rules: settings.rules, findings });
  return findings;
}

function inFile(
  { uri, firstLine, ending }: Standing,
  finding: BlockFinding,
  level: Finding['level'],
  whereIs: WhereIs,
): PlacedFinding {
  return {
    code: finding.code,
    level,
    message: finding.message,
    place: { line: firstLine + finding.line, start: finding.span.start, end: finding.span.end },
    related: finding.related.map((one): PlacedRelated => {
      if (one.definition === undefined) {
        return { uri, place: { line: firstLine + one.line, ...one.span }, message: one.message };
      }
      const { uri: where, firstLine: header } = whereIs(one.definition);
      const { start, end } = one.span ?? one.definition.name;
      return { uri: where, place: { line: header + (one.line ?? 0), start, end }, message: one.message };
    }),
    fixes: finding.fixes.map((fix) => ({
      title: fix.title,
      edits: [
        {
          uri,
          edits: fix.edits.map((edit) => ({
            line: firstLine + edit.line,
            start: edit.start,
            end: edit.end,
            insert: edit.insert.replaceAll('\n', ending),
            ...(edit.endLine === undefined ? {} : { endLine: firstLine + edit.endLine }),
          })),
        },
      ],
      ...(fix.preferred === undefined ? {} : { preferred: fix.preferred }),
    })),
    ...(finding.unused === undefined ? {} : { unused: finding.unused }),
  };
}

/** A finding in its file that is not in words yet. */
interface PlacedFinding extends Omit<Finding, 'message' | 'related' | 'fixes'> {
  readonly message: Message;
  readonly related: readonly PlacedRelated[];
  readonly fixes: readonly (Omit<Fix, 'title'> & { readonly title: Message })[];
}

type PlacedRelated = Omit<Related, 'message'> & { readonly message: Message };

// The same finding is the same object again as long as the same speaker words it, so that a keystroke in one formula
// costs nothing for the findings of the others.
const wordedBy = new WeakMap<Speaker, WeakMap<PlacedFinding, Finding>>();

/** Findings in the words of a speaker. */
function wordedFindings(placed: readonly PlacedFinding[], speaker: Speaker): Finding[] {
  const known = wordedBy.get(speaker) ?? new WeakMap<PlacedFinding, Finding>();
  wordedBy.set(speaker, known);
  return placed.map((one) => {
    const made = known.get(one) ?? inWords(one, speaker);
    known.set(one, made);
    return made;
  });
}

function inWords(one: PlacedFinding, speaker: Speaker): Finding {
  const say = (said: Message): string => (typeof said === 'string' ? said : speaker.say(said));
  return {
    ...one,
    message: say(one.message),
    related: one.related.map((related) => ({ ...related, message: say(related.message) })),
    fixes: one.fixes.map((fix) => ({ ...fix, title: say(fix.title) })),
  };
}
