import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What is wrong with the file that a project keeps its settings in. */
export const project = {
  'project.not-json': () =>
    'from here on this cannot be read as JSON, so nothing of the file holds; look for a quotation mark, a comma or a brace that is missing.',
  'project.no-setting': ({ setting, names }: Args<'setting' | 'names'>, say: Speaker) =>
    `a project has no setting “${setting}”; there is ${say.list(names)}.`,
  'project.no-section': ({ setting }: Args<'setting'>) => `“${setting}” takes members between braces: { … }.`,
  'project.twice': ({ setting }: Args<'setting'>) =>
    `“${setting}” stands here a second time; the first one holds.`,
  'project.several': ({ files }: Args<'files'>, say: Speaker) =>
    `these belong to several projects, ${say.list(files)}; name them in calls of their own.`,
};
