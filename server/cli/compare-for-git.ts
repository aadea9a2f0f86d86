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
import { type DoughFile, doughOf, readBytes } from '../host/disk.ts';
import { git } from '../host/git.ts';
import { askedOf, revisionSide } from './compare.ts';
import { none, nowhere, type ReadSide, refuse, summaryAmong } from './compare-sides.ts';
import { comparisonText } from './compare-text.ts';
import type { ExitCode } from './exit-code.ts';
import { cureOf } from './shown-path.ts';
import { type Keeping, keepChanges, keepShown } from './shown-texts.ts';
import { say, speaker } from './speaker.ts';
import { noOrders, visibleData, visibleLine } from './terminal.ts';

/**
 * As git's external diff: `path old-file old-hex old-mode new-file new-hex new-mode`, behind it the new path of a file
 * renamed; of a path in conflict the path alone. Each state is read in its place among the files on disk, that of the last commit
 * among the files of that commit where it names what those on disk no longer define. Always 0, for git
 * takes anything else for a failure and shows nothing more.
 */
export async function compareForGit(words: readonly string[], keeping?: Keeping): Promise<ExitCode> {
  const [path, old, , , now, , , renamed] = words;
  if (path === undefined || (old !== undefined && now === undefined))
    return refuse({ message: message('command-git.for-git') });
  if (old === undefined || now === undefined) {
    const facts = { file: visibleLine(path), command: 'git add' };
    process.stdout.write(noOrders(`${say(message('command-git.in-conflict', facts))}\n\n`));
    return 0;
  }
  const newPath = renamed ?? path;
  const [was, is] = await Promise.all(
    [old, now].map(async (place) => (place === nowhere ? undefined : await readBytes(place))),
  );
  const change = { path, newPath, old: doughIn(was), now: doughIn(is), oldId: words[2] };
  const text = await told(change);
  process.stdout.write(text);
  const isWhole = [was, is].every((side) => side === undefined || side.bytes !== undefined);
  if (keeping === undefined || !isWhole) return 0;
  await keepShown(keeping, text);
  if (renamed !== undefined) return 0;
  const asked = { path, ...handed('old', was?.bytes), ...handed('now', is?.bytes) };
  await keepChanges(keeping, asked, (one) =>
    told({
      ...{ path: one.path, newPath: one.path, oldId: one.oldId },
      ...{ old: one.old && doughOf(one.old), now: one.now && doughOf(one.now) },
    }),
  );
  return 0;
}

const doughIn = (read: Awaited<ReturnType<typeof readBytes>> | undefined): DoughFile | undefined =>
  read?.why === undefined ? read && doughOf(read.bytes) : { why: read.why };

const handed = <K extends string>(side: K, bytes: Buffer | undefined) =>
  (bytes === undefined ? {} : { [side]: bytes }) as { readonly [P in K]?: Buffer };

/** A file as it was and is, absent where it was or is not there, and the name of its blob before. */
interface GitChange {
  readonly path: string;
  readonly newPath: string;
  readonly old: DoughFile | undefined;
  readonly now: DoughFile | undefined;
  readonly oldId: string | undefined;
}

/** What changed, as git is to show it. */
async function told({ path, newPath, old, now, oldId }: GitChange): Promise<string> {
  const sides: ReadSide[] = [];
  for (const [file, place, other] of [
    [old, path, newPath],
    [now, newPath, path],
  ] as const) {
    if (file !== undefined && file.text === undefined)
      return noOrders(`${visibleLine(path)}: ${say(cureOf(file.why))}\n\n`);
    sides.push(
      file === undefined ? none : await summaryAmong({ place, text: file.text, shown: place, other }),
    );
  }
  const [among, after] = sides as [ReadSide, ReadSide];
  const before = await amongItsOwn(among, path, oldId);
  const former = underNewNamesOf(before, after, () => createService({ lean: true }));
  const [was, is] = [former, after].map((side) => side.files.flatMap((name) => side.summary(name) ?? [])) as [
    FileSummary[],
    FileSummary[],
  ];
  const compared = visibleData(withNamesCounted(compareSummaries(was, is, speaker())));
  return noOrders(
    `${visibleLine(newPath)}\n${comparisonText(comparisonPage(compared, speaker()), speaker())}\n`,
  );
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
