import type { Args } from '../args.ts';

/** What a figure itself says in words. */
export const figures = {
  'figure.less-than': ({ written }: Args<'written'>) => `less than ${written}`,
};
