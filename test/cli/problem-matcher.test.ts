import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { taskType } from '../../client/names.ts';
import manifest from '../../package.json' with { type: 'json' };
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const [matcher] = manifest.contributes.problemMatchers;
const { pattern } = matcher!;

/** What an editor reads from the output of a task, line by line, with the very pattern of the manifest. */
function problemsIn(
  output: string,
): { file: string; line: number; column: number; level: string; code: string }[] {
  return output.split(/\r?\n/).flatMap((line) => {
    const match = new RegExp(pattern.regexp).exec(line);
    if (match === null) return [];
    const at = (group: number): string => match[group]!;
    return {
      file: at(pattern.file),
      line: Number(at(pattern.line)),
      column: Number(at(pattern.column)),
      level: at(pattern.severity),
      message: at(pattern.message),
      code: at(pattern.code),
    };
  });
}

describe('the problem matcher of the manifest', () => {
  it('is named as the type of the tasks is', () => {
    expect(manifest.contributes.problemMatchers.map(({ name }) => name)).toEqual([taskType]);
    expect(manifest.contributes.taskDefinitions.map(({ type }) => type)).toEqual([taskType]);
  });

  it('finds in the real output exactly what the check found, and nothing in what stands around it', async () => {
    const twice = 'flour quay mill:\n  grain wheat\n';
    const { path } = folderWith({
      'in a: b/Åse’s brød [1].dough':
        'formula A:\n  strong white 100%\n  water 65\n  salt 12: 3\n  rye: error: x [y] 4\n',
      'b.dough': 'formula B:\n  quay mill 100%\n  watr 60%\n  salt 9%\n',
      'one.dough': twice,
      'two.dough': twice,
    });
    const words = ['check', '--level', 'info', '.', 'missing.dough'];
    const text = await doughwright(path, ...words);
    const json = await doughwright(path, ...words, '--format', 'json');
    const found = (JSON.parse(json.stdout) as Record<string, unknown>[]).map(
      ({ file, line, column, level, message, code }) => ({ file, line, column, level, message, code }),
    );
    expect(found.length).toBeGreaterThan(5);
    expect(new Set(found.map(({ level }) => level)).size).toBeGreaterThan(1);
    expect(text.stdout).toMatch(/^ {2}\S+\.dough:\d+:\d+: /m);
    // A terminal holds both streams.
    expect(problemsIn(text.stderr + text.stdout)).toEqual(found);
  });

  it('finds a file outside of the folder by its whole path', async () => {
    const outside = folderWith({ 'a.dough': 'formula A:\n  rye flour 100%\n  salt 2\n' });
    const { path } = folderWith();
    const { stdout } = await doughwright(path, 'check', '--level', 'error', join(outside.path, 'a.dough'));
    expect(problemsIn(stdout).map(({ file }) => file)).toEqual([join(outside.path, 'a.dough')]);
  });
});
