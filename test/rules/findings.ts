import { analyse } from '../../core/analysis/analyse.ts';
import { formulaOf } from '../../core/model/formula-model.ts';
import { wholeBlock } from '../../core/model/variant.ts';
import { type BlockFinding, checkBlock } from '../../core/rules/engine/check.ts';
import type { RuleContext, RuleFix } from '../../core/rules/engine/rule.ts';
import { emptySnapshot, withRoots, withText } from '../../core/workspace/snapshot.ts';
import { Cache, type View } from '../../core/workspace/snapshot-view.ts';

/** One file of a small workspace, by its path below the root. */
export interface GivenFile {
  readonly path: string;
  readonly text: string;
}

/** A finding with its line counted in the file. */
export interface FileFinding extends BlockFinding {
  readonly path: string;
  readonly firstLine: number;
  readonly fileLine: number;
}

const root = 'file:///quay/';

export function workspaceOf(given: readonly GivenFile[]): View {
  const texts = given.reduce(
    (now, { path, text }) => withText(now, root + path, text),
    withRoots(emptySnapshot, [root]),
  );
  return new Cache().at(texts);
}

/** The contexts of all blocks of a file, as whoever runs the rules makes them. */
export function contextsOf(view: View, path: string): { context: RuleContext; firstLine: number }[] {
  const uri = root + path;
  const scope = view.scopeOf(uri);
  return view.read(uri)!.source.blocks.map(({ block, firstLine }) => {
    const model = formulaOf(wholeBlock(block, scope));
    const analysis = model === undefined ? {} : { analysis: analyse(model, scope) };
    return { context: { uri, block, scope, ...analysis }, firstLine };
  });
}

/** All findings of all files, in order; a rule that fails is an error of the test. */
export function findingsOf(given: readonly GivenFile[]): FileFinding[] {
  const view = workspaceOf(given);
  return given.flatMap(({ path }) =>
    contextsOf(view, path).flatMap(({ context, firstLine }) => {
      const { findings, failures } = checkBlock(context);
      if (failures.length > 0) throw new Error(failures.join('\n'));
      return findings.map((one) => ({ ...one, path, firstLine, fileLine: firstLine + one.line }));
    }),
  );
}

/** A text after a fix of a finding in it. */
export function applied(text: string, firstLine: number, fix: RuleFix): string {
  const starts = [0];
  for (let at = 0; at < text.length; at++) if (text[at] === '\n') starts.push(at + 1);
  const offset = (line: number, column: number): number => starts[firstLine + line]! + column;
  const edits = fix.edits
    .map((edit) => ({
      from: offset(edit.line, edit.start),
      to: offset(edit.endLine ?? edit.line, edit.end),
      insert: edit.insert,
    }))
    .sort((one, other) => other.from - one.from);
  return edits.reduce((now, edit) => now.slice(0, edit.from) + edit.insert + now.slice(edit.to), text);
}

/** The fix that an editor would apply first. */
export function firstFix(finding: BlockFinding): RuleFix | undefined {
  return finding.fixes.find((fix) => fix.preferred === true) ?? finding.fixes[0];
}
