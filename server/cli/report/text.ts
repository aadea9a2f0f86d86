import { inColumns, message } from '../../../core/index.ts';
import { say } from '../speaker.ts';
import { levelStyles, styled } from '../style.ts';
import { noOrders, visible } from '../terminal.ts';
import type { Report, ReportedFinding } from './report.ts';

/** The findings for people: each with its line and what of it is meant. */
export function asText(report: Report): string {
  const lines = report.findings.flatMap((finding) => [
    headline(finding),
    ...excerpt(finding),
    ...finding.related.map(
      ({ uri, place, message }) =>
        `  ${report.shown(uri)}:${place.line + 1}:${place.start + 1}: ${visible(message)}`,
    ),
  ]);
  const more = report.found - report.findings.length;
  if (more > 0) lines.push(say(message('command-check.more', { count: more })));
  if (report.found > 0) lines.push(summary(report));
  return noOrders(lines.map((line) => `${line}\n`).join(''));
}

/** How much there is of which level, and in how many of the files. */
function summary({ counts, files }: Report): string {
  const parts = [
    counts.error > 0 ? message('command-check.errors', { count: counts.error }) : undefined,
    counts.warning > 0 ? message('command-check.warnings', { count: counts.warning }) : undefined,
    counts.less > 0 ? message('command-check.more-information', { count: counts.less }) : undefined,
  ].filter((one) => one !== undefined);
  return say(message('command-check.summary', { parts, count: counts.files, otherCount: files.length }));
}

function headline({ file, place, level, message, code }: ReportedFinding): string {
  const where = `${file}:${place.line + 1}:${place.start + 1}`;
  return `${where}: ${styled(levelStyles[level], level)}: ${visible(message)} ${styled('gray', `[${code}]`)}`;
}

/** As much of a line as is shown of a very long one. */
const widest = 120;

function excerpt({ place, source, level }: ReportedFinding): string[] {
  if (source.trim() === '') return [];
  const from = place.start < widest - 20 ? 0 : place.start - 40;
  const shown = source.slice(from, from + widest);
  const end = Math.min(place.end - from, shown.length);
  const start = Math.min(place.start - from, end);
  const number = String(place.line + 1);
  const margin = ' '.repeat(number.length);
  const bar = styled('gray', '│');
  const cut = from > 0 ? '…' : '';
  const tail = from + widest < source.length ? '…' : '';
  // A tab stands under a tab, so that the mark stands under what it means at any width of tabs.
  const before = cut.replace('…', ' ') + inColumns(shown.slice(0, start), ' ');
  const marks = inColumns(shown.slice(start, end), '^') || '^';
  return [
    `  ${styled('gray', number)} ${bar} ${cut}${visible(shown)}${tail}`,
    `  ${margin} ${bar} ${before}${styled(levelStyles[level], marks)}`,
  ];
}
