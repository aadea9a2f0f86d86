import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalUri, isBelow } from '../../server/host/uris.ts';

describe('canonical URIs', () => {
  it.each([
    ['file:///C%3A/Quay/a.dough', 'file:///c%3A/Quay/a.dough'],
    ['file:///c:/Quay/a.dough', 'file:///c%3A/Quay/a.dough'],
    ['file://localhost/a%20b.dough', 'file:///a%20b.dough'],
    ['file:///a(b)!.dough', 'file:///a%28b%29%21.dough'],
    ['file:///100%.dough', 'file:///100%25.dough'],
    ['file:///quay/', 'file:///quay'],
    ['untitled:Untitled-1', 'untitled:Untitled-1'],
    ['git:/quay/a.dough?%7B%7D', 'git:/quay/a.dough?%7B%7D'],
  ])('%s is %s', (uri, canonical) => {
    expect(canonicalUri(uri)).toBe(canonical);
  });

  it('are the same however a path is escaped, and stay as they are', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', minLength: 1 }), { minLength: 1 }), (names) => {
        const path = `/${names.map((name) => name.replace(/[/\\\0]/g, '-')).join('/')}/x`;
        const byNode = canonicalUri(pathToFileURL(path).href);
        expect(canonicalUri(byNode)).toBe(byNode);
        expect(
          canonicalUri(
            `file://${new URL(pathToFileURL(path)).pathname
              .split('/')
              .map((part) => encodeURIComponent(decodeURIComponent(part)))
              .join('/')}`,
          ),
        ).toBe(byNode);
      }),
    );
  });

  it('know what lies below a folder', () => {
    expect(isBelow('file:///quay/a.dough', 'file:///quay')).toBe(true);
    expect(isBelow('file:///quayside/a.dough', 'file:///quay')).toBe(false);
    expect(isBelow('file:///a.dough', 'file:///')).toBe(true);
  });
});
