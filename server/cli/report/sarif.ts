import type { Log, PhysicalLocation, Region, ReportingDescriptor, Result } from 'sarif';
import { type Level, type Place, rules } from '../../../core/index.ts';
import { version } from '../../../package.json';
import { uriReference } from '../../host/paths.ts';
import { distinctFingerprints, type Report, type ReportedFinding } from './report.ts';

/** The findings in SARIF 2.1.0, the OASIS standard for what static analysis finds. Columns are UTF-16 units. */
export function asSarif(report: Report): string {
  const told = new Set(report.findings.map(({ code }) => code));
  const described = rules.filter(({ code }) => told.has(code));
  const prints = distinctFingerprints(report.findings);
  const place = placesFrom(report.repository);
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
              locations: [{ physicalLocation: { artifactLocation: { uri: place(path) } } }],
            })),
          },
        ],
        results: report.findings.map((finding, at) =>
          result(report, finding, { ruleIndex: index.get(finding.code), print: prints[at]!, place }),
        ),
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

interface Around {
  readonly ruleIndex: number | undefined;
  readonly print: string;
  /** The URI of a path that is shown. */
  readonly place: (path: string) => string;
}

function result(
  report: Report,
  finding: ReportedFinding,
  { ruleIndex, print, place: placed }: Around,
): Result {
  const { code, level, message, place, related, file, source, fixes } = finding;
  return {
    ruleId: code,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: levels[level],
    message: { text: message },
    locations: [
      { physicalLocation: location(placed(file), { ...region(place), snippet: { text: source } }) },
    ],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((one, id) => ({
            id,
            physicalLocation: location(placed(report.shown(one.uri)), region(one.place)),
            message: { text: one.message },
          })),
        }),
    ...(fixes.length === 0
      ? {}
      : {
          fixes: fixes.map(({ title, edits }) => ({
            description: { text: title },
            artifactChanges: edits.map((edit) => ({
              artifactLocation: { uri: placed(report.shown(edit.uri)) },
              replacements: edit.edits.map((one) => ({
                deletedRegion: { ...region(one), endLine: (one.endLine ?? one.line) + 1 },
                insertedContent: { text: one.insert },
              })),
            })),
          })),
        }),
    partialFingerprints: { 'doughwrightFinding/v1': print },
  };
}

function location(uri: string, where: Region): PhysicalLocation {
  return { artifactLocation: { uri }, region: where };
}

function region({ line, start, end }: Place): Region {
  return { startLine: line + 1, startColumn: start + 1, endColumn: end + 1 };
}

/** Paths as URI references from the root of the repository, which is where a host looks for them; else from the current folder. */
function placesFrom(repository: string | undefined): (path: string) => string {
  return (path) => uriReference(path, repository);
}
