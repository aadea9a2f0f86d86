import {
  compareSummaries,
  comparisonPage,
  createService,
  type FileSummary,
  isLackingNames,
  message,
  underNewNamesOf,
  withNamesCounted,
} from '../../core/index.ts';
import { readDough } from '../host/disk.ts';
import { git } from '../host/git.ts';
import { askedOf, revisionSide } from './compare.ts';
import { none, nowhere, type ReadSide, refuse, summaryAmong } from './compare-sides.ts';
import { comparisonText } from './compare-text.ts';
import type { ExitCode } from './exit-code.ts';
import { cureOf } from './shown-path.ts';
import { say, speaker } from './speaker.ts';
import { noOrders, visibleData, visibleLine } from './terminal.ts';

/**
 * As git's external diff: `path old-file old-hex old-mode new-file new-hex new-mode`, behind it the new path of a file
 * renamed; of a path in conflict the path alone. Each state is read in its place among the files on disk, that of the last commit
 * among the files of that commit where it names what those on disk no longer define. Always 0, for git
 * takes anything else for a failure and shows nothing more.
 */
export async function compareForGit(words: readonly string[]): Promise<ExitCode> {
  const [path, old, , , now, , , renamed] = words;
  if (path === undefined || (old !== undefined && now === undefined))
    return refuse({ message: message('command-git.for-git') });
  if (old === undefined || now === undefined) {
    const facts = { file: visibleLine(path), command: 'git add' };
    process.stdout.write(noOrders(`${say(message('command-git.in-conflict', facts))}\n\n`));
    return 0;
  }
  const newPath = renamed ?? path;
  const sides: ReadSide[] = [];
  for (const [state, place, other] of [
    [old, path, newPath],
    [now, newPath, path],
  ] as const) {
    const file = state === nowhere ? undefined : await readDough(state);
    if (file !== undefined && file.text === undefined) {
      process.stdout.write(noOrders(`${visibleLine(path)}: ${say(cureOf(file.why))}\n\n`));
      return 0;
    }
    sides.push(
      file === undefined ? none : await summaryAmong({ place, text: file.text, shown: place, other }),
    );
  }
  const [among, after] = sides as [ReadSide, ReadSide];
  const before = await amongItsOwn(among, path, words[2]);
  const former = underNewNamesOf(before, after, () => createService({ lean: true }));
  const [was, is] = [former, after].map((side) => side.files.flatMap((name) => side.summary(name) ?? [])) as [
    FileSummary[],
    FileSummary[],
  ];
  const compared = visibleData(withNamesCounted(compareSummaries(was, is, speaker())));
  const told = comparisonText(comparisonPage(compared, speaker()), speaker());
  process.stdout.write(noOrders(`${visibleLine(newPath)}\n${told}\n`));
  return 0;
}

/** The state before among the files of the last commit, where it is that of this commit and has names that mean nothing on disk. */
async function amongItsOwn(side: ReadSide, path: string, id: string | undefined): Promise<ReadSide> {
  const isStrange = side.files.flatMap((file) => side.summary(file)?.formulas ?? []).some(isLackingNames);
  if (!isStrange) return side;
  const last = await git('.', ['rev-parse', '--verify', '--quiet', `HEAD:./${path}`]);
  if (!last.ok || last.out.toString().trim() !== id) return side;
  const asked = await askedOf([path]);
  const own = 'message' in asked ? asked : await revisionSide(asked, 'HEAD');
  return 'message' in own || own.files.length === 0 ? side : own;
}
