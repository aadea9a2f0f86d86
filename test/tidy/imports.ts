import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';

export const project = join(import.meta.dirname, '..', '..');

export interface Import {
  /** The file that imports, from the project’s folder. */
  readonly from: string;
  /** The file imported, from the project’s folder, or the name of a package. */
  readonly to: string;
  readonly isPackage: boolean;
  readonly typeOnly: boolean;
  readonly line: number;
}

/** Every file of ours in a folder that ends in one of the endings. */
export function filesIn(folder: string, ...endings: readonly string[]): string[] {
  return readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((name) => !name.includes('node_modules') && endings.some((ending) => name.endsWith(ending)))
    .sort();
}

/** Every import and re-export of a file, static and dynamic. */
export function importsOf(file: string): Import[] {
  const source = readFileSync(join(project, file), 'utf8');
  const pattern =
    /(?:^|[;\n])\s*(?:import|export)\s+(type\s)?(?:[^'";]*?\sfrom\s+)?['"]([^'"]+)['"]|\b(?:import|require)\(\s*['"]([^'"]+)['"]\s*\)/g;
  return [...source.matchAll(pattern)].map((match) => {
    const written = match[2] ?? match[3]!;
    const isPackage = !written.startsWith('.');
    const whole = match[0];
    const braces = /\{([^}]*)\}/.exec(whole)?.[1];
    const names = braces
      ?.split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '');
    const allTypes =
      names !== undefined && names.length > 0 && names.every((name) => name.startsWith('type '));
    return {
      from: file,
      to: isPackage
        ? written
        : relative(project, resolve(join(project, file), '..', written)).replaceAll('\\', '/'),
      isPackage,
      typeOnly: match[1] !== undefined || allTypes,
      line: source.slice(0, match.index).split('\n').length,
    };
  });
}
