import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { comparedReadings, trialsOf } from '../../core/analysis/trials.ts';
import { rulesByCode } from '../../core/rules/engine/rule-catalogue.ts';
import { presentProgramme } from '../../core/rules/trials/kept-programme.ts';
import { formatted } from '../syntax/formatted.ts';
import { inWords } from '../words/told.ts';
import { readCases } from './archive.ts';
import { applied, contextsOf, findingsOf, type GivenFile, workspaceOf } from './findings.ts';

// Whatever changes a programme for the baker leaves what was measured on the old one as it was: the notation's own rule.

const folder = new URL('../fixtures/rules/', import.meta.url);
const trial =
  '\n\ntrial 2031-01-01, of the test:\n  water 18 °C\n  at 30 s  19 °C\n  end  24 °C, developing\n';

/** The programme that the last trial of a file is read under, and what is worked out for its readings. */
function readUnder(files: readonly GivenFile[], path: string): string | undefined {
  for (const { context } of contextsOf(workspaceOf(files), path)) {
    if (context.analysis === undefined) continue;
    const last = trialsOf(context.analysis, context.scope).findLast(
      ({ model }) => model.header.words === 'of the test',
    );
    if (last?.mix.known !== true) continue;
    const { input, mixer } = last.mix.value;
    const ran = input.phases.map((phase) => ('portions' in phase ? phase.kind : { ...phase }));
    return JSON.stringify([mixer.name, ran, comparedReadings(last).map(({ minutes }) => minutes)]);
  }
  return undefined;
}

/** The fixtures of the rules whose last formula stands at the end of its file, with a trial below it. */
const cases = readdirSync(folder)
  .flatMap((name) =>
    readCases(fileURLToPath(new URL(name, folder))).cases.map((one) => ({
      code: name.replace(/\.txt$/, ''),
      title: one.title,
      files: one.files,
    })),
  )
  .flatMap(({ code, title, files }) =>
    files.flatMap(({ path, text }) => {
      if (!/^mix /m.test(text)) return [];
      const tried = files.map((one) =>
        one.path === path ? { path, text: `${text.trimEnd()}${trial}` } : one,
      );
      // What no mixer can have run is kept nowhere: hands have no speeds.
      const isPossible = findingsOf(tried).every((one) => one.code !== 'no-such-speed');
      return isPossible && readUnder(tried, path) !== undefined ? [{ code, title, path, files: tried }] : [];
    }),
  );

/** Whether the last formula of a file, which the trial stands in, is a variant, and the finding stands in another formula. */
function isVariantOf(files: readonly { path: string; text: string }[], path: string, line: number): boolean {
  const lines = files.find((one) => one.path === path)!.text.split('\n');
  const last = lines.findLastIndex((text) => text.startsWith('formula '));
  return line < last && / like /.test(lines[last]!);
}

describe('a fix of any rule', () => {
  it('leaves a trial that kept nothing under the programme it was run on', () => {
    let changed = 0;
    for (const { code, title, path, files } of cases) {
      const before = readUnder(files, path)!;
      for (const finding of findingsOf(files).filter((one) => one.path === path)) {
        if (rulesByCode.get(finding.code)?.mendsSlips === true) continue;
        for (const fix of finding.fixes) {
          const { text } = files.find((one) => one.path === path)!;
          const after = applied(text, finding.firstLine, fix);
          const now = readUnder(
            files.map((one) => (one.path === path ? { path, text: after } : one)),
            path,
          );
          // A trial of a variant is read under the programme of its base, and changes with it as the variant does.
          if (isVariantOf(files, path, finding.firstLine)) continue;
          // A fix that takes the formula apart leaves nothing to read the trial under.
          if (now !== undefined) expect(now, `${code}, ${title}: ${finding.code}, ${fix.title}`).toBe(before);
          if (/trials? kept$/.test(inWords(fix.title))) changed++;
        }
      }
    }
    expect(cases.length).toBeGreaterThan(60);
    expect(changed).toBeGreaterThan(15);
  });
});

const tin =
  'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n';
const longTin = tin.replace('speed 2 for 2 min', 'speed 2 for 20 min');
const lacking = '\ntrial 2026-03-03:\n  room 21 °C\n  water 12 °C\n  end  24 °C\n';

describe('a fix that shortens a programme', () => {
  const shortens = (text: string) =>
    findingsOf([{ path: 'a.dough', text }])
      .flatMap((finding) => finding.fixes.map((fix) => ({ fix, finding })))
      .find(
        ({ fix }) =>
          /speed|min/.test(inWords(fix.title)) && fix.edits.some(({ insert }) => insert.endsWith(' min')),
      )!;

  it('writes the old one into the trials that lack one first, and says so', () => {
    const text = longTin + lacking;
    const { fix, finding } = shortens(text);
    expect(inWords(fix.title)).toMatch(/; trial kept$/);
    const after = applied(text, finding.firstLine, fix);
    expect(after).toContain(
      '  water 12 °C\n  mixed in spiral\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 20 min\n  end  24 °C\n',
    );
    expect(after.split('trial')[0]).not.toContain('20 min');
  });

  it('writes into no trial that keeps its own, and into none that cannot have run it', () => {
    for (const other of [
      lacking.replace('  end', '  mixed in spiral\n  speed 1 for 9 min\n  end'),
      lacking.replace('  end', '  at 50 min  26 °C\n  end'),
      lacking.replace('  end', '  mixed by hand\n  end'),
      lacking.replace('  end  24 °C', '  dough 19.8 kg'),
    ]) {
      const { fix } = shortens(longTin + other);
      expect(fix.title, other).not.toContain('keep');
      expect(fix.edits.every(({ insert }) => insert.endsWith(' min'))).toBe(true);
    }
  });
});

describe('the programme as it is now', () => {
  const written = (text: string): readonly string[] =>
    contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough').flatMap(({ context }) =>
      context.analysis === undefined ? [] : presentProgramme(context.analysis),
    );

  it('is written in canonical form, without notes and comments', () => {
    const odd = tin.replace('speed 1 for 6 min', 'speed  1   6min  # slowly\n  note scrape');
    const lines = written(odd);
    expect(lines).toEqual([
      '  mixed in spiral',
      '  load flour, water, salt',
      '  speed 1 6 min',
      '  speed 2 for 2 min',
    ]);
    const whole = `formula A:\n  bread flour        100%\n\ntrial 2026-03-03:\n${lines.join('\n')}\n`;
    expect(formatted(whole)).toBe(whole);
  });

  it('names its mixer as a trial can read it, and the bakery’s where the formula names none', () => {
    const mixer = (name: string): string => `mixer ${name}:\n  kind spiral\n\n`;
    expect(written(mixer('"20 l hook"') + tin.replace('in spiral', 'in "20 l hook"'))[0]).toBe(
      '  mixed in "20 l hook"',
    );
    expect(written(tin.replace('in spiral', 'by hand').replace(/speed \d for/g, 'knead'))[0]).toBe(
      '  mixed by hand',
    );
  });

  it('is nothing where it is not finished, or its mixer is not known', () => {
    expect(written(tin.replace('6 min', ''))).toEqual([]);
    expect(written(tin.replace('in spiral', 'in nonesuch'))).toEqual([]);
    expect(written(tin.replace(/mix in[\s\S]*/, ''))).toEqual([]);
  });
});
