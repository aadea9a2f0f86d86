import type { Report } from './report.ts';

export const formats = ['text', 'json', 'sarif', 'junit', 'annotations'] as const;
export type Format = (typeof formats)[number];

/** Whether programs read a format, and people only what those make of it. Notes of a build are read as they are. */
export function isForPrograms(format: Format): boolean {
  return format === 'json' || format === 'sarif' || format === 'junit';
}

/** Writes a report in a format. Each writer is loaded only when it is asked for. */
export async function writeReport(format: Format, report: Report): Promise<string> {
  switch (format) {
    case 'text':
      return (await import('./text.ts')).asText(report);
    case 'json':
      return (await import('./json.ts')).asJson(report);
    case 'sarif':
      return (await import('./sarif.ts')).asSarif(report);
    case 'junit':
      return (await import('./junit.ts')).asJunit(report);
    case 'annotations':
      return (await import('./annotations.ts')).asAnnotations(report);
  }
}
