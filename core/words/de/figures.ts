import type { figures as english } from '../en/figures.ts';
import type { Translation } from '../message.ts';

/** Was eine Zahl selbst in Worten sagt. */
export const figures: Translation<typeof english> = {
  'figure.less-than': ({ written }) => `weniger als ${written}`,
};
