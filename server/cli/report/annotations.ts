import type { Level } from '../../../core/index.ts';
import type { Report, ReportedFinding } from './report.ts';

/** The findings as the commands by which a build's log puts notes beside the lines of a pull request. */
export function asAnnotations({ findings, troubles }: Report): string {
  return [
    ...findings.map(annotation),
    ...troubles.map(({ path, message }) => `::error file=${property(path)}::${data(message)}`),
  ]
    .map((line) => `${line}\n`)
    .join('');
}

const commands: Readonly<Record<Level, string>> = {
  error: 'error',
  warning: 'warning',
  info: 'notice',
  hint: 'notice',
};

function annotation({ level, file, place, code, message }: ReportedFinding): string {
  const { line, start, end } = place;
  const where = `file=${property(file)},line=${line + 1},col=${start + 1},endColumn=${end + 1}`;
  return `::${commands[level]} ${where},title=${property(code)}::${data(message)}`;
}

const data = (text: string): string =>
  text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
