import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesIn, project } from './imports.ts';

const told = [
  ...filesIn('core', '.ts'),
  ...filesIn('server', '.ts'),
  ...filesIn('client', '.ts'),
  ...filesIn('docs', '.md'),
  ...filesIn('examples', '.dough'),
  'README.md',
];

const saying = (words: RegExp): string[] =>
  told.flatMap((file) =>
    readFileSync(join(project, file), 'utf8')
      .split('\n')
      .flatMap((line, index) => (words.test(line) ? [`${file}:${index + 1} ${line.trim()}`] : [])),
  );

describe('what is told', () => {
  // Rye, barley and oats contain gluten (Regulation (EU) 1169/2011, Annex II): they form no gluten network, and no more is said.
  it('says of no grain that it has no gluten', () => {
    expect(
      saying(/\b(no|without|free of) gluten\b(?! network)|\bgluten[- ]free\b|WithoutGluten|makesGluten/i),
    ).toEqual([]);
    expect(saying(/\bforms? no gluten network\b/).length).toBeGreaterThan(3);
  });

  it('says so in no other language either', () => {
    expect(saying(/\bglutenfrei|\b(?:kein|ohne) Gluten\b/i)).toEqual([]);
    expect(saying(/\b(?:kein|bilden kein) Klebergerüst\b/).length).toBeGreaterThan(0);
  });

  it('has three words for how warm a dough is: slightly warm, too warm, much too warm', () => {
    expect(saying(/\b(far too warm|a little warm(?!er))\b/)).toEqual([]);
  });
});
