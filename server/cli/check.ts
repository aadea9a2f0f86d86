import { rules } from '../../core/index.ts';
import { newFindings, readBaseline, writeBaseline } from './baseline.ts';
import { checkInParallel } from './check-parallel.ts';
import type { ExitCode } from './exit-code.ts';
import { readTexts } from './input.ts';
import { type Format, writeReport } from './report/report.ts';
import type { RuleLevels } from './rule-levels.ts';
import { complainOf } from './terminal.ts';
import { writeTrouble } from './write-out.ts';

export interface CheckOptions {
  readonly format: Format;
  readonly level: 'error' | 'warning' | 'info';
  readonly rule?: RuleLevels;
  readonly maxFindings?: number;
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly watch?: boolean;
}

/** Tells the findings of files: 0 when there are none at or above the level, 1 when there are, 2 when a file could not be read. */
export async function check(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const strange = Object.keys(options.rule ?? {}).find((code) => !rules.some((rule) => rule.code === code));
  if (strange !== undefined)
    return complain(`--rule ${strange}: there is no such rule; “doughwright rules” lists them.`);
  if (!options.watch) return checkOnce(paths, options);
  const { runWatching } = await import('./watch.ts');
  return runWatching(paths, () => checkOnce(paths, options));
}

async function checkOnce(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const known = options.baseline === undefined ? undefined : await readBaseline(options.baseline);
  if (known !== undefined && 'message' in known) return complain(known.message);
  const input = await readTexts(paths);
  let found = await checkInParallel({
    texts: input.texts,
    roots: input.roots,
    asked: input.asked,
    level: options.level,
    rules: options.rule ?? {},
    fixes: options.format === 'sarif',
  });
  if (options.writeBaseline !== undefined) {
    try {
      await writeBaseline(options.writeBaseline, found);
    } catch (error) {
      return complain(`${options.writeBaseline}: this cannot be written: ${writeTrouble(error)}`);
    }
    const count = found.length === 1 ? '1 finding is' : `${found.length} findings are`;
    complainOf(`${count} in ${options.writeBaseline} now.\n`);
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

function complain(message: string): ExitCode {
  complainOf(`doughwright: ${message}\n`);
  return 2;
}
