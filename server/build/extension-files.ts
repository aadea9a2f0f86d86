import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Whether a file, by its path from the project's folder, goes into the extension's package: .vscodeignore takes it in by name. */
export function isInExtension(project: string): (path: string) => boolean {
  const lines = readFileSync(join(project, '.vscodeignore'), 'utf8').split(/\r?\n/);
  const patterns = lines.flatMap((line) => {
    if (!line.startsWith('!')) return [];
    const names = line.slice(1).split('*');
    return new RegExp(`^${names.map((name) => name.replace(/[.\\/]/g, '\\$&')).join('[^/]*')}$`);
  });
  return (path) => patterns.some((pattern) => pattern.test(path));
}
