import { posix, win32 } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWithin, leadsOut, shownFrom, slashed, uriReference, wayTo } from '../../server/host/paths.ts';
import { canonicalUri, isBelow } from '../../server/host/uris.ts';

describe('paths on Windows', () => {
  it.each([
    ['C:\\Quay\\breads\\tin.dough', 'C:\\Quay', 'breads/tin.dough'],
    ['c:\\quay\\Breads\\tin.dough', 'C:\\Quay', 'Breads/tin.dough'],
    ['C:\\Quay', 'C:\\Quay', ''],
    ['C:\\tin.dough', 'C:\\Quay\\breads', '../../tin.dough'],
    ['D:\\tin.dough', 'C:\\Quay', 'D:/tin.dough'],
    ['\\\\mill\\flour\\a.dough', '\\\\mill\\flour', 'a.dough'],
    ['\\\\mill\\flour\\a.dough', 'C:\\Quay', '//mill/flour/a.dough'],
  ])('%s from %s is %s', (path, folder, way) => {
    expect(wayTo(path, folder, win32)).toBe(way);
    expect(isWithin(path, folder, win32)).toBe(way !== '' && !leadsOut(way, win32));
  });

  it('lie below a folder whatever the case of its drive and names, and not beside it', () => {
    expect(isWithin('c:\\QUAY\\a.dough', 'C:\\Quay', win32)).toBe(true);
    expect(isWithin('C:\\Quayside\\a.dough', 'C:\\Quay', win32)).toBe(false);
    expect(isWithin('C:\\Quay\\..rye\\a.dough', 'C:\\Quay', win32)).toBe(true);
    expect(['..', '../a', '..\\a', 'D:\\a', 'D:/a'].every((way) => leadsOut(way, win32))).toBe(true);
    expect(['..a', 'a/..b', ''].some((way) => leadsOut(way, win32))).toBe(false);
  });

  it('are shown with slashes: from here where they lie below, else whole', () => {
    expect(shownFrom('C:\\Quay', 'C:\\Quay\\breads\\tin.dough', win32)).toBe('breads/tin.dough');
    expect(shownFrom('C:\\Quay', 'C:\\Quay', win32)).toBe('.');
    expect(shownFrom('C:\\Quay', 'C:\\Mill\\a.dough', win32)).toBe('C:/Mill/a.dough');
    expect(shownFrom('C:\\Quay', 'D:\\a.dough', win32)).toBe('D:/a.dough');
  });

  it('are references that lead back to them', () => {
    expect(uriReference('C:\\Quay\\rye & co\\50%.dough', 'C:\\Quay', win32)).toBe(
      'rye%20%26%20co/50%25.dough',
    );
    expect(uriReference('D:\\a b.dough', 'C:\\Quay', win32)).toBe('file:///D%3A/a%20b.dough');
    expect(uriReference('C:\\a.dough', undefined, win32)).toBe('file:///C%3A/a.dough');
    expect(uriReference('breads\\tin.dough', undefined, win32)).toBe('breads/tin.dough');
  });
});

describe('paths elsewhere', () => {
  it('keep a backslash, which is a letter there', () => {
    expect(wayTo('/quay/rye\\white.dough', '/quay', posix)).toBe('rye\\white.dough');
    expect(isWithin('/quay/..\\a.dough', '/quay', posix)).toBe(true);
    expect(uriReference('/quay/rye\\white.dough', '/quay', posix)).toBe('rye%5Cwhite.dough');
    expect(slashed('a\\b', posix)).toBe('a\\b');
  });

  it('lead out where they begin with two points of their own', () => {
    expect(shownFrom('/quay', '/mill/a.dough', posix)).toBe('/mill/a.dough');
    expect(shownFrom('/quay', '/quay/..a.dough', posix)).toBe('..a.dough');
    expect(uriReference('/mill/a.dough', '/quay', posix)).toBe('file:///mill/a.dough');
  });
});

describe('the URI of a file on Windows', () => {
  it.each([
    ['C:\\Quay\\tin.dough', 'file:///c%3A/Quay/tin.dough'],
    ['c:\\Quay\\tin.dough', 'file:///c%3A/Quay/tin.dough'],
    ['D:\\Röggli & 50%\\a b.dough', 'file:///d%3A/R%C3%B6ggli%20%26%2050%25/a%20b.dough'],
    ['\\\\Mill\\flour\\a.dough', 'file://mill/flour/a.dough'],
  ])('of %s is %s, as editors and the disk spell it', (path, uri) => {
    expect(canonicalUri(pathToFileURL(path, { windows: true }).href)).toBe(uri);
  });

  it.each([
    'file:///c%3A/Quay/tin.dough',
    'file:///C%3a/Quay/tin.dough',
    'file:///C:/Quay/tin.dough',
    'FILE:///c:/Quay/tin.dough',
    'file://localhost/c:/Quay/tin.dough',
  ])('%s is one and the same file', (spelling) => {
    expect(canonicalUri(spelling)).toBe('file:///c%3A/Quay/tin.dough');
    expect(isBelow(canonicalUri(spelling), canonicalUri('file:///C:/'))).toBe(true);
    expect(isBelow(canonicalUri(spelling), canonicalUri('file:///C:/quay side'))).toBe(false);
  });

  it('leads back to the path, but for the case of its drive', () => {
    // What Windows takes for no name: its separators, its signs for devices and patterns, control signs, points at the end.
    const name = fc
      .string({ unit: 'grapheme', minLength: 1 })
      .filter((one) => !/[<>:"/\\|?*\p{Cc}]|[. ]$/u.test(one));
    fc.assert(
      fc.property(fc.constantFrom('C', 'd'), fc.array(name, { minLength: 1 }), (drive, names) => {
        const path = `${drive}:\\${names.join('\\')}`;
        const uri = canonicalUri(pathToFileURL(path, { windows: true }).href);
        expect(fileURLToPath(uri, { windows: true })).toBe(`${drive.toLowerCase()}:\\${names.join('\\')}`);
        expect(canonicalUri(uri)).toBe(uri);
        expect(wayTo(path, `${drive}:\\`, win32)).toBe(names.join('/'));
      }),
    );
  });
});
