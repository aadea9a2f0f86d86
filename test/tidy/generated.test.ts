import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as core from '../../core/index.ts';
import { rules } from '../../core/index.ts';
import { units } from '../../core/syntax/units.ts';
import { holdsIngredients, properties, sectionWords, stepWords } from '../../core/syntax/vocabulary.ts';
import { generated } from './generate.ts';
import { declarationOf, exportsOfCore } from './library-page.ts';

const project = join(import.meta.dirname, '..', '..');

describe('what is generated is fresh; npm run generate writes it anew', () => {
  it.each([...generated()])('%s', (name, text) => {
    expect(readFileSync(join(project, name), 'utf8')).toBe(text);
  });
});

describe('the reference of the library', () => {
  it('has every name that the core exports, each with a whole declaration', () => {
    const names = exportsOfCore();
    expect(names.map(({ name }) => name).sort()).toEqual(
      expect.arrayContaining([...Object.keys(core), 'FormulaTotals', 'Service', 'Finding'].sort()),
    );
    for (const one of names) {
      const { code } = declarationOf(one);
      const bare = code.replace(/\/\*[\s\S]*?\*\/|'[^'\n]*'|=>/g, '');
      const count = (sign: string) => bare.split(sign).length;
      expect([one.name, code.length > one.own.length]).toEqual([one.name, true]);
      for (const [open, close] of ['()', '{}', '[]', '<>'].map((pair) => [...pair] as [string, string]))
        expect([one.name, open, count(open)]).toEqual([one.name, open, count(close)]);
    }
  });
});

describe('the settings of the rules', () => {
  it('name every rule once, with its level', () => {
    const manifest = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8')) as {
      contributes: {
        configuration: { properties: Record<string, { properties?: Record<string, { default: string }> }> }[];
      };
    };
    const settings = manifest.contributes.configuration.flatMap((group) =>
      Object.entries(group.properties['doughwright.rules']?.properties ?? {}),
    );
    expect(settings.map(([code, one]) => [code, one.default])).toEqual(
      rules.map((rule) => [rule.code, rule.level]).sort(([one], [other]) => (one! < other! ? -1 : 1)),
    );
  });
});

describe('the colouring', () => {
  interface Pattern {
    readonly begin?: string;
    readonly match?: string;
    readonly patterns?: readonly Pattern[];
  }
  const grammar = JSON.parse(readFileSync(join(project, 'syntaxes/doughwright.tmLanguage.json'), 'utf8')) as {
    repository: Record<string, Pattern>;
  };
  const headers = grammar.repository.header!.patterns!.map((one) => new RegExp(one.begin!, 'u'));
  const match = (name: string): RegExp => new RegExp(grammar.repository[name]!.match!, 'u');
  const coloured = (line: string): boolean => headers.some((one) => one.test(line));

  it('has no placeholder left and no expression that cannot be read', () => {
    const text = readFileSync(join(project, 'syntaxes/doughwright.tmLanguage.json'), 'utf8');
    expect(text).not.toMatch(/%[A-Z_]+%/);
    const expressions = [...text.matchAll(/"(?:match|begin|end)": ("(?:[^"\\]|\\.)*")/g)];
    expect(expressions.length).toBeGreaterThan(20);
    for (const [, json] of expressions)
      expect(() => new RegExp(JSON.parse(json!) as string, 'u')).not.toThrow();
  });

  it('knows every section by its header', () => {
    for (const word of sectionWords) {
      const header =
        word === 'mix'
          ? 'mix in big spiral:'
          : word === 'trial'
            ? 'trial 2026-03-14:'
            : `${word} Harbour Tin:`;
      expect(coloured(`  ${header}  # why`), header).toBe(true);
      expect(coloured(`x${header}`), header).toBe(false);
    }
    for (const header of [
      'mix by hand:',
      'mix rye in spiral:',
      'mix rye by hand:',
      'process:',
      'trial 2026-03-14, warm:',
    ])
      expect(coloured(header), header).toBe(true);
    for (const line of ['  salt: 2%', 'timetable:', '  flour 100%', '  mix in the seeds'])
      expect(coloured(line), line).toBe(false);
  });

  it('knows every property whole, not only its first word', () => {
    for (const section of sectionWords)
      for (const { word } of properties[section]) {
        if (word === 'note') continue;
        const found = match(holdsIngredients(section) ? 'doughProperty' : 'property').exec(`  ${word} 5`);
        expect(found?.[1], word).toBe(word);
      }
    for (const word of stepWords) expect(match('step').exec(`  ${word} 5 min`)?.[1]).toBe(word);
  });

  it('knows every unit behind a number, whole', () => {
    for (const unit of units.keys()) {
      expect(match('quantity').exec(` 12 ${unit}`)?.[3], unit).toBe(unit);
      expect(match('quantity').exec(` 0,5${unit}`)?.[3], unit).toBe(unit);
    }
    expect(match('price').test(' 18.50 EUR per 25 kg')).toBe(true);
    expect(match('quantity').test(' 7-grain')).toBe(false);
    expect(match('quantity').test(' 500 gx')).toBe(false);
  });
});

describe('the reference page', () => {
  it('holds every section and every property with how it reads', () => {
    const page = readFileSync(join(project, 'docs/guide/reference.md'), 'utf8');
    for (const section of sectionWords) {
      const part = page.split(new RegExp(`^## ${section}$`, 'm'))[1]!.split(/^## /m)[0]!;
      for (const { word, example } of properties[section]) {
        expect(part).toContain(`| ${word}`);
        expect(part).toContain(`\`${example}\``);
      }
    }
  });
});
