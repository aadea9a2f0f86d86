import type { CheckOutput } from '../json-outputs.ts';
import type { Report } from './report.ts';

/** The findings as a list of objects; lines and columns count from one. */
export function asJson({ findings, shown }: Report): string {
  const told: CheckOutput = findings.map(({ file, code, level, message, place, related }) => ({
    file,
    line: place.line + 1,
    column: place.start + 1,
    endColumn: place.end + 1,
    level,
    code,
    message,
    ...(related.length > 0 && {
      related: related.map((other) => ({
        file: shown(other.uri),
        line: other.place.line + 1,
        column: other.place.start + 1,
        message: other.message,
      })),
    }),
  }));
  return `${JSON.stringify(told, null, 2)}\n`;
}
