import { describe, expect, it } from 'vitest';
import { changesOf, isLater, releaseDay, releasedChanges, withVersion } from './edits.ts';

const changes = `# Changes

## Unreleased

### The notation

- \`prove\` is known.
  It has two lines.

## 0.1.10, 2026-01-02

- First.

## 0.1.0
`;

describe('a version', () => {
  it.each([
    ['0.2.0', '0.1.9', true],
    ['0.10.0', '0.9.9', true],
    ['1.0.0', '0.99.99', true],
    ['0.1.0', '0.1.0', false],
    ['0.1.9', '0.2.0', false],
  ])('%s behind %s: %s', (version, other, later) => {
    expect(isLater(version, other)).toBe(later);
  });

  it.each(['1', '1.2', 'v1.2.3', '1.2.3-beta', '01.2.3', ''])('is not %j', (version) => {
    expect(() => isLater(version, '0.1.0')).toThrow(/three numbers/);
  });
});

describe('the list of changes', () => {
  it('gets a version and a day where it said Unreleased, and an empty Unreleased above; the rest stays', () => {
    const released = releasedChanges(changes, '0.2.0', '2026-03-14');
    expect(released).toBe(changes.replace('## Unreleased\n', '## Unreleased\n\n## 0.2.0, 2026-03-14\n'));
    expect(changesOf(released, 'Unreleased')).toBe('');
    expect(changesOf(released, '0.2.0')).toBe('### The notation\n\n- `prove` is known.\n  It has two lines.');
    expect(releaseDay(released, '0.2.0')).toBe('2026-03-14');
    expect(() => releasedChanges(released, '0.3.0', '2026-03-15')).toThrow(/says nothing under Unreleased/);
  });

  it('knows no day of a version that it has not or that has none, nor of one that begins alike', () => {
    expect(['0.1.10', '0.1.1', '0.1.0', '0.1x10'].map((one) => releaseDay(changes, one))).toEqual([
      '2026-01-02',
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('is refused with a version that is in it, and without a place for one', () => {
    expect(() => releasedChanges(changes, '0.1.10', '2026-03-14')).toThrow(/has 0\.1\.10 already/);
    expect(() => releasedChanges(changes, '0.1.0', '2026-03-14')).toThrow(/has 0\.1\.0 already/);
    expect(() => releasedChanges('# Changes\n', '0.2.0', '2026-03-14')).toThrow(/no line ## Unreleased/);
  });
});

describe('a manifest', () => {
  it('gets another version in its own places and nowhere else', () => {
    const lock = {
      name: 'doughwright',
      version: '0.1.0',
      packages: { '': { version: '0.1.0' }, 'node_modules/scale': { version: '0.1.0' } },
    };
    const text = withVersion('package-lock.json', `${JSON.stringify(lock, null, 2)}\n`, '0.2.0');
    expect(JSON.parse(text)).toEqual({
      ...lock,
      version: '0.2.0',
      packages: { '': { version: '0.2.0' }, 'node_modules/scale': { version: '0.1.0' } },
    });
    expect(() => withVersion('package.json', '{ "version": "0.1.0" }', '0.2.0')).toThrow(/not laid out/);
  });
});
