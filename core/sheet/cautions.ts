import type { Analysis } from '../analysis/analysis.ts';

/** The usual cautions of the work, once a sheet; they advise and never stand in the way. */
export function cautionsOf(analysis: Analysis): string[] {
  const said: string[] = [];
  const roles = new Set(analysis.solved?.overall.map((line) => line.role) ?? []);
  said.push(
    roles.has('egg')
      ? 'Raw flour and raw egg are not to be tasted.'
      : 'Raw flour and raw dough are not to be tasted.',
  );
  const byHand = analysis.mixes.every((mix) => !mix.known || mix.value.mixer.data.kind === 'hand');
  if (!byHand) said.push('No hands in a running bowl; guards stay shut. Start slow, so that no flour flies.');
  said.push('Oven, trays and steam burn.');
  said.push(
    'Allergens are what the files say. Follow your machine’s manual, local food law and licensed advice.',
  );
  return said;
}
