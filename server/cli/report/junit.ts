import type { Report, ReportedFinding } from './report.ts';

/**
 * The findings as JUnit XML, which most build servers read: a test suite for each file, a failed case for each finding, one
 * passed case where a file has none. A file that could not be checked is a case in error.
 */
export function asJunit({ files, findings, troubles }: Report): string {
  const byFile = new Map<string, ReportedFinding[]>(files.map((file) => [file, []]));
  for (const finding of findings) byFile.get(finding.file)?.push(finding);
  const suites = [...byFile].map(([file, found]) => {
    const cases =
      found.length === 0 ? [`    <testcase classname="${xml(file)}" name="check"/>`] : found.map(failed);
    return suite(file, cases, found.length, 0);
  });
  const errors = troubles.map(({ path, message }) =>
    suite(
      path,
      [`    <testcase classname="${xml(path)}" name="read"><error message="${xml(message)}"/></testcase>`],
      0,
      1,
    ),
  );
  const tests = findings.length + [...byFile.values()].filter((found) => found.length === 0).length;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="doughwright" tests="${tests + troubles.length}" failures="${findings.length}" errors="${troubles.length}">`,
    ...suites,
    ...errors,
    '</testsuites>',
    '',
  ].join('\n');
}

function suite(name: string, cases: readonly string[], failures: number, errors: number): string {
  const counts = `tests="${cases.length}" failures="${failures}" errors="${errors}"`;
  return [`  <testsuite name="${xml(name)}" ${counts}>`, ...cases, '  </testsuite>'].join('\n');
}

function failed({ file, place, code, level, message, source }: ReportedFinding): string {
  const where = `${file}:${place.line + 1}:${place.start + 1}`;
  return [
    `    <testcase classname="${xml(file)}" name="${xml(`${code} in line ${place.line + 1}`)}">`,
    `      <failure type="${xml(level)}" message="${xml(message)}">${xml(`${where}\n${source}`)}</failure>`,
    '    </testcase>',
  ].join('\n');
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as XML 1.0 may hold it; signs it may not hold at all are replaced. */
function xml(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML has no place for them
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu, '\ufffd')
      .replace(/[&<>"]/g, (sign) => entities[sign]!)
  );
}
