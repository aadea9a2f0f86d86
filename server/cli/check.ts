import { stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { type Message, message, rules } from '../../core/index.ts';
import { rootAbove } from '../host/disk.ts';
import { newFindings, readBaseline, writeBaseline } from './baseline.ts';
import { checkInParallel } from './check-parallel.ts';
import type { ExitCode } from './exit-code.ts';
import { readTexts } from './input.ts';
import { readNamedInput } from './named-input.ts';
import { projectSettings } from './project.ts';
import { countsOf, type ReportedFinding } from './report/report.ts';
import { type Format, isForPrograms, writeReport } from './report/write-report.ts';
import type { RuleLevels } from './rule-levels.ts';
import { noRule } from './rules.ts';
import { cureOf } from './shown-path.ts';
import { language, say, shownToPeople } from './speaker.ts';
import type { Staged } from './staged.ts';
import { complain, complainOf } from './terminal.ts';
import { notWritten, refusalOf } from './write-out.ts';

export interface CheckOptions {
  readonly format: Format;
  readonly level: 'error' | 'warning' | 'info';
  readonly rule?: RuleLevels;
  readonly maxFindings?: number;
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly watch?: boolean;
  readonly force?: boolean;
  /** What is about to be committed, and what uses it, in place of the paths. */
  readonly staged?: boolean;
  /** What is other than at a revision of git, and what uses it, in place of the paths. */
  readonly since?: string;
  /** Where the text stands that comes on standard input, in place of a path. */
  readonly stdinName?: string;
  /** Mends slips of writing first, in the files. */
  readonly fix?: boolean;
}

/** More files than these are counted. */
const mostNamed = 3;

/** Tells the findings of files: 0 when there are none at or above the level, 1 when there are, 2 when a file could not be read. */
export async function check(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const strange = Object.keys(options.rule ?? {}).find((code) => !rules.some((rule) => rule.code === code));
  if (strange !== undefined) return refuse('--rule', say(noRule(strange)));
  if (options.staged) {
    const { readStaged } = await import('./staged.ts');
    const staged = await readStaged();
    if ('message' in staged) return refuse(say(staged.message));
    return checkOnce([], { ...options, ...moreStrictly(staged, options) }, staged);
  }
  if (options.since !== undefined) {
    const { filesSince } = await import('./changed-files.ts');
    const changed = await filesSince(options.since);
    if ('message' in changed) return refuse(say(changed.message));
    return checkOnce(changed.paths, { ...options, ...moreStrictly(changed, options) });
  }
  if (paths.includes('-') !== (options.stdinName !== undefined) || (paths.length > 1 && paths.includes('-')))
    return refuse(say(message('command-check.stdin', { option: '--stdin-name' })));
  if (!options.watch) return checkOnce(paths, options);
  const { runWatching } = await import('./watch.ts');
  return runWatching(paths, () => checkOnce(paths, options));
}

const namesMissing: RuleLevels = {
  'unknown-ingredient': 'error',
  'unknown-mixer': 'error',
  'unknown-formula': 'error',
};

/** Usually a warning, for a name may be written before it is defined; one that this very change takes away is missing. */
function moreStrictly(
  { takesAway }: { readonly takesAway: boolean },
  { rule }: CheckOptions,
): Pick<CheckOptions, 'rule'> {
  return takesAway ? { rule: { ...namesMissing, ...rule } } : {};
}

/** What was found in what is staged may be mended on disk already, and only be missing in the index. */
async function tellOtherOnDisk(staged: Staged, found: readonly ReportedFinding[]): Promise<void> {
  if (found.length === 0) return;
  const isName = found.some(({ code }) => Object.hasOwn(namesMissing, code));
  const files = await staged.otherOnDisk(isName ? undefined : new Set(found.map(({ uri }) => uri)));
  if (files.length === 0) return;
  const shown = files.slice(0, mostNamed);
  const more = files.length - shown.length;
  const named = more > 0 ? [...shown, say(message('comparison-page.more', { count: more }))] : shown;
  const facts = { files: named, count: files.length, command: 'git add' };
  complain(say(message('command-check.not-as-staged', facts)));
}

async function checkOnce(
  paths: readonly string[],
  options: CheckOptions,
  staged?: Staged,
): Promise<ExitCode> {
  const known = options.baseline === undefined ? undefined : await readBaseline(options.baseline);
  if (known !== undefined && 'message' in known) return refuse(options.baseline ?? '', say(known.message));
  if (options.writeBaseline !== undefined) {
    const refusal = await baselineRefusal(options.writeBaseline, options.force === true);
    if (refusal !== undefined) return refuse(options.writeBaseline, say(refusal));
  }
  const read = options.stdinName === undefined ? undefined : await readNamedInput(options.stdinName);
  if (read !== undefined && 'why' in read) return refuse(options.stdinName ?? '', say(cureOf(read.why)));
  if (options.fix) {
    const { fixSlips } = await import('./fix.ts');
    if (!(await fixSlips(paths, options.rule ?? {}))) return 2;
  }
  const input = staged ?? read ?? (await readTexts(paths));
  let found = await checkInParallel({
    texts: input.texts,
    roots: input.roots,
    asked: input.asked,
    level: options.level,
    rules: { ...projectSettings().rules, ...options.rule },
    usual: projectSettings().usual,
    shownIn: shownToPeople(),
    language: language(),
    forPrograms: isForPrograms(options.format),
    fixes: options.format === 'sarif',
  });
  if (options.writeBaseline !== undefined) {
    try {
      await writeBaseline(options.writeBaseline, found);
    } catch (error) {
      return refuse(options.writeBaseline, say(notWritten(error)));
    }
    const facts = { count: found.length, file: options.writeBaseline };
    complainOf(`${say(message('command-check.baseline', facts))}\n`);
    return input.failed ? 2 : 0;
  }
  if (known !== undefined) found = newFindings(options.baseline ?? '', known, found);
  const report = {
    findings: found.slice(0, options.maxFindings ?? found.length),
    found: found.length,
    counts: countsOf(found),
    files: input.asked.map(({ shown }) => shown),
    troubles: input.troubles,
    ...(options.format === 'sarif' ? await repositoryAround() : {}),
    shown: input.shown,
  };
  process.stdout.write(await writeReport(options.format, report));
  if (staged !== undefined) await tellOtherOnDisk(staged, found);
  if (input.failed) return 2;
  return found.length > 0 ? 1 : 0;
}

async function repositoryAround(): Promise<{ readonly repository?: string }> {
  const root = await rootAbove(resolve('.'));
  return (await stat(join(root, '.git')).catch(() => undefined)) === undefined ? {} : { repository: root };
}

/** Why a file is not written over with a baseline; nothing where it may be. */
async function baselineRefusal(file: string, force: boolean): Promise<Message | undefined> {
  const refusal = await refusalOf(file, {});
  if (refusal !== undefined || force) return refusal;
  const about = await stat(file).catch(() => undefined);
  return about?.isFile() && 'message' in (await readBaseline(file))
    ? message('command-check.not-over')
    : undefined;
}

function refuse(...words: readonly string[]): ExitCode {
  complain(...words);
  return 2;
}
