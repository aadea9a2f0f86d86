import type { Finding, Level } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { type AskedFile, type Input, readInput } from './input.ts';
import { levelStyles, styled } from './style.ts';

export interface CheckOptions {
  readonly format: 'text' | 'json';
  readonly level: 'error' | 'warning' | 'info';
  readonly maxFindings?: number;
}

interface Told {
  readonly file: AskedFile;
  readonly finding: Finding;
}

/** Tells the findings of files: 0 when there are none at or above the level, 1 when there are, 2 when a file could not be read. */
export async function check(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const input = await readInput(paths);
  // The core's own cap is for an editor; here the caller sets one.
  input.service.setSettings({ maxFindings: Number.MAX_SAFE_INTEGER });
  const found = input.asked.flatMap((file) => findingsOf(input, file, options.level));
  const told = found.slice(0, options.maxFindings ?? found.length);
  process.stdout.write(options.format === 'json' ? asJson(input, told) : asText(input, told, found.length));
  if (input.failed) return 2;
  return found.length > 0 ? 1 : 0;
}

const seriousness: Readonly<Record<Level, number>> = { error: 3, warning: 2, info: 1, hint: 0 };

function findingsOf(input: Input, file: AskedFile, level: Level): Told[] {
  return input.service
    .findings(file.uri)
    .filter((finding) => seriousness[finding.level] >= seriousness[level])
    .toSorted((one, other) => one.place.line - other.place.line || one.place.start - other.place.start)
    .map((finding) => ({ file, finding }));
}

function asText(input: Input, told: readonly Told[], found: number): string {
  const lines = told.flatMap(({ file, finding }) => [
    `${file.shown}:${finding.place.line + 1}:${finding.place.start + 1}: ` +
      `${styled(levelStyles[finding.level], finding.level)}: ${finding.message} ${styled('gray', `[${finding.code}]`)}`,
    ...finding.related.map(
      ({ uri, place, message }) => `  ${input.shown(uri)}:${place.line + 1}:${place.start + 1}: ${message}`,
    ),
  ]);
  if (told.length < found) lines.push(`and ${found - told.length} more`);
  return lines.map((line) => `${line}\n`).join('');
}

function asJson(input: Input, told: readonly Told[]): string {
  const findings = told.map(({ file, finding: { code, level, message, place, related } }) => ({
    file: file.shown,
    line: place.line + 1,
    column: place.start + 1,
    endColumn: place.end + 1,
    level,
    code,
    message,
    ...(related.length > 0 && {
      related: related.map((other) => ({
        file: input.shown(other.uri),
        line: other.place.line + 1,
        column: other.place.start + 1,
        message: other.message,
      })),
    }),
  }));
  return `${JSON.stringify(findings, null, 2)}\n`;
}
