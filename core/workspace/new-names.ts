import type { Renaming } from '../compare/comparison.ts';
import type { FileSummary } from '../compare/file-summary.ts';
import type { SideTexts } from '../compare/possible-changes.ts';
import { renamesBetween, underNewNames } from '../compare/renames.ts';
import { withEdits } from '../text/edits.ts';
import { finish } from '../text/steps.ts';
import type { Service } from './service.ts';

/** One side of a comparison, as far as new names are looked for in it. */
export interface NamingSide {
  /** The files asked for, by the names that their summaries have. */
  readonly files: readonly string[];
  /** Texts by such names. */
  readonly texts: SideTexts;
  readonly summary: (file: string) => FileSummary | undefined;
  /** Who knows these files, and by what; absent where there is none. */
  readonly known?: { readonly service: Service; readonly uris: ReadonlyMap<string, string> };
}

/** A flour that gets another name may give its formula the very lines that another formula has; then names are looked for again. */
const mostRounds = 4;

/**
 * The side before as it would be if what got another name between the two had been called so already, by the same renaming
 * that an editor does: where that cannot be done, or another thing came to bear the name, all stays as it was written.
 * `newService` makes an empty workspace.
 */
export function underNewNamesOf<Side extends NamingSide>(
  before: Side,
  after: NamingSide,
  newService: () => Service,
): Side {
  const { known } = before;
  if (known === undefined) return before;
  const { service, uris } = known;
  const asWritten = service.snapshot;
  const renamings: Renaming[] = [];
  for (let round = 0; round < mostRounds; round++) {
    const found = renamesBetween(textsIn(service, before, uris), after.texts);
    // What stands outside of what was asked for is not told, so that it would be told nowhere.
    const told = found.filter(
      ({ file, fileNow }) => before.files.includes(file) && after.files.includes(fileNow),
    );
    const done = told.filter((one) => isRenamed(service, one, uris));
    renamings.push(...done);
    if (done.length === 0) break;
  }
  const anew = service.snapshot;
  service.turnTo(asWritten);
  if (renamings.length === 0) return before;
  // Two states asked in turn of one service would each be worked out anew for every file.
  const other = newService();
  other.setSettings(asWritten.settings);
  for (const [uri, { text }] of anew.texts.entries()) other.setText(uri, text);
  other.setRoots(anew.roots);
  return {
    ...before,
    summary: (file): FileSummary | undefined => {
      const was = before.summary(file);
      const uri = uris.get(file);
      const renamed = was === undefined || uri === undefined ? undefined : other.summary(uri, file);
      return was === undefined || renamed === undefined ? was : underNewNames(was, renamed, renamings);
    },
  };
}

/** The texts of the side as its service has them now. */
function textsIn(
  service: Service,
  { texts }: NamingSide,
  uris: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  return new Map(
    [...texts].map(([file, text]) => {
      const uri = uris.get(file);
      return [file, uri === undefined ? text : (service.snapshot.texts.get(uri)?.text ?? text)];
    }),
  );
}

/** Renames in the service, where nothing stands against it; answers whether it did. */
function isRenamed(
  service: Service,
  { file, line, column, to }: Renaming,
  uris: ReadonlyMap<string, string>,
): boolean {
  const uri = uris.get(file);
  if (uri === undefined) return false;
  const edits = finish(service.rename(uri, line, column, to));
  if ('refused' in edits || edits.length === 0) return false;
  for (const one of edits) {
    const text = service.snapshot.texts.get(one.uri)?.text;
    if (text !== undefined) service.setText(one.uri, withEdits(text, one.edits));
  }
  return true;
}
