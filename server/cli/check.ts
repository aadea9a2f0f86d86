import type { Level } from '../../core/index.ts';
import { newFindings, readBaseline, writeBaseline } from './baseline.ts';
import type { ExitCode } from './exit-code.ts';
import { type AskedFile, type Input, readInput } from './input.ts';
import { type Format, type ToldFinding, writeReport } from './report/report.ts';

export interface CheckOptions {
  readonly format: Format;
  readonly level: 'error' | 'warning' | 'info';
  readonly maxFindings?: number;
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly watch?: boolean;
}

/** Tells the findings of files: 0 when there are none at or above the level, 1 when there are, 2 when a file could not be read. */
export async function check(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  if (!options.watch) return checkOnce(paths, options);
  const { runWatching } = await import('./watch.ts');
  return runWatching(paths, () => checkOnce(paths, options));
}

async function checkOnce(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const known = options.baseline === undefined ? undefined : await readBaseline(options.baseline);
  if (known !== undefined && 'message' in known) return complain(known.message);
  const input = await readInput(paths);
  // The core's own cap is for an editor; here the caller sets one.
  input.service.setSettings({ maxFindings: Number.MAX_SAFE_INTEGER });
  let found = input.asked.flatMap((file) => findingsOf(input, file, options.level));
  if (options.writeBaseline !== undefined) {
    try {
      await writeBaseline(options.writeBaseline, found);
    } catch (error) {
      return complain(`${options.writeBaseline}: this cannot be written: ${(error as Error).message}`);
    }
    process.stderr.write(`${found.length} findings are in ${options.writeBaseline} now.\n`);
    return input.failed ? 2 : 0;
  }
  if (known !== undefined) found = newFindings(options.baseline!, known, found);
  const report = {
    findings: found.slice(0, options.maxFindings ?? found.length),
    found: found.length,
    files: input.asked.map(({ shown }) => shown),
    troubles: input.troubles,
    shown: input.shown,
  };
  process.stdout.write(await writeReport(options.format, report));
  if (input.failed) return 2;
  return found.length > 0 ? 1 : 0;
}

const seriousness: Readonly<Record<Level, number>> = { error: 3, warning: 2, info: 1, hint: 0 };

function findingsOf(input: Input, { uri, shown }: AskedFile, level: Level): ToldFinding[] {
  const findings = input.service
    .findings(uri)
    .filter((finding) => seriousness[finding.level] >= seriousness[level])
    .toSorted((one, other) => one.place.line - other.place.line || one.place.start - other.place.start);
  if (findings.length === 0) return [];
  const lines = input.service.lines(uri);
  return findings.map((finding) => ({
    ...finding,
    file: shown,
    uri,
    source: lines[finding.place.line] ?? '',
  }));
}

function complain(message: string): ExitCode {
  process.stderr.write(`doughwright: ${message}\n`);
  return 2;
}
