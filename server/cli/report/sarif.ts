import type { Log, PhysicalLocation, Region, ReportingDescriptor, Result } from 'sarif';
import { type Level, type Place, rules } from '../../../core/index.ts';
import { version } from '../../../package.json';
import { fingerprint, type Report, type ToldFinding } from './report.ts';

/** The findings in SARIF 2.1.0, the OASIS standard for what static analysis finds. Columns are UTF-16 units. */
export function asSarif(report: Report): string {
  const told = new Set(report.findings.map(({ code }) => code));
  const described = rules.filter(({ code }) => told.has(code));
  const index = new Map(described.map(({ code }, at) => [code, at]));
  const log: Log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'doughwright',
            version,
            semanticVersion: version,
            rules: described.map(descriptor),
          },
        },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: report.troubles.length === 0,
            toolExecutionNotifications: report.troubles.map(({ path, message }) => ({
              level: 'error',
              message: { text: message },
              locations: [{ physicalLocation: { artifactLocation: { uri: relativeUri(path) } } }],
            })),
          },
        ],
        results: report.findings.map((finding) => result(report, finding, index.get(finding.code))),
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

const levels: Readonly<Record<Level, 'error' | 'warning' | 'note'>> = {
  error: 'error',
  warning: 'warning',
  info: 'note',
  hint: 'note',
};

function descriptor({ code, title, explanation, level }: (typeof rules)[number]): ReportingDescriptor {
  return {
    id: code,
    shortDescription: { text: title },
    help: { text: explanation, markdown: explanation },
    defaultConfiguration: { level: levels[level] },
  };
}

function result(report: Report, finding: ToldFinding, ruleIndex: number | undefined): Result {
  const { code, level, message, place, related, file, source, fixes } = finding;
  return {
    ruleId: code,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: levels[level],
    message: { text: message },
    locations: [{ physicalLocation: location(file, { ...region(place), snippet: { text: source } }) }],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((one, id) => ({
            id,
            physicalLocation: location(report.shown(one.uri), region(one.place)),
            message: { text: one.message },
          })),
        }),
    ...(fixes.length === 0
      ? {}
      : {
          fixes: fixes.map(({ title, edits }) => ({
            description: { text: title },
            artifactChanges: edits.map((edit) => ({
              artifactLocation: { uri: relativeUri(report.shown(edit.uri)) },
              replacements: edit.edits.map((one) => ({
                deletedRegion: { ...region(one), endLine: (one.endLine ?? one.line) + 1 },
                insertedContent: { text: one.insert },
              })),
            })),
          })),
        }),
    partialFingerprints: { 'doughwrightFinding/v1': fingerprint(finding) },
  };
}

function location(file: string, where: Region): PhysicalLocation {
  return { artifactLocation: { uri: relativeUri(file) }, region: where };
}

function region({ line, start, end }: Place): Region {
  return { startLine: line + 1, startColumn: start + 1, endColumn: end + 1 };
}

/** A path as a URI reference from the folder the check ran in. */
function relativeUri(path: string): string {
  const escaped = path.split('/').map(encodeURIComponent).join('/');
  return path.startsWith('/') ? `file://${escaped}` : escaped;
}
