import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv, type ValidateFunction } from 'ajv';
import { describe, expect, it, vi } from 'vitest';
import { repositoryIn } from '../cli/repository.ts';
import { doughwright } from '../cli/run.ts';
import { folderWith } from '../server/places.ts';
import { project } from './imports.ts';
import { generatedSchemas } from './schemas.ts';

vi.setConfig({ testTimeout: 120_000 });

const examples = join(project, 'examples');
const read = (name: string): object => JSON.parse(readFileSync(join(project, name), 'utf8')) as object;

/** The schema with every object closed: nothing may be written that it does not describe. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (schema === null || typeof schema !== 'object') return schema;
  const inside = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  const isObject = 'properties' in schema && !('additionalProperties' in schema);
  return isObject ? { ...inside, additionalProperties: false } : inside;
}

function validator(name: string): ValidateFunction {
  // Members of which one excludes others stand in several objects of one schema: those cannot each be closed.
  const schema = read(`docs/schemas/${name}.json`);
  const isJoined = JSON.stringify(schema).includes('"allOf"');
  return new Ajv({ strict: false, allErrors: true }).compile((isJoined ? schema : closed(schema)) as object);
}

/** What a schema has against an output: a line for each, and none where it fits. */
function against(name: string, output: unknown): string[] {
  const validate = validator(name);
  return validate(output)
    ? []
    : (validate.errors ?? []).map(
        (one) => `${one.instancePath} ${one.message} ${JSON.stringify(one.params)}`,
      );
}

const bread = readFileSync(join(examples, 'formulas/ferry-loaf.dough'), 'utf8');

describe('the published schemas', () => {
  it('are what the types of the outputs say; npm run generate writes them anew', () => {
    const made = generatedSchemas();
    for (const [name, text] of made) {
      expect(existsSync(join(project, name)), name).toBe(true);
      expect(readFileSync(join(project, name), 'utf8'), name).toBe(text);
    }
    const there = readdirSync(join(project, 'docs/schemas')).filter((name) => name.endsWith('.json'));
    expect(there.sort()).toEqual([...made.keys()].map((name) => name.slice('docs/schemas/'.length)).sort());
  });

  it('are valid schemas with a name, a version and a description', () => {
    for (const name of readdirSync(join(project, 'docs/schemas'))) {
      if (!name.endsWith('.json')) continue;
      const schema = read(`docs/schemas/${name}`) as { $id: string; description: string };
      expect(new Ajv({ strict: false }).validateSchema(schema), name).toBe(true);
      expect(schema.$id).toBe(`urn:doughwright:schema:${name.replace(/-(\d+)\.json$/, ':$1')}`);
      expect(schema.description.length, name).toBeGreaterThan(10);
    }
  });

  it('are there for every command that writes JSON, and the guide names them all', async () => {
    const { stdout } = await doughwright(examples, 'completion', 'fish');
    const writing = stdout
      .split('\n')
      .filter((line) => /-l json\b/.test(line) || /-l format .*-a '[^']*\bjson\b/.test(line))
      .map((line) => /__fish_seen_subcommand_from ([a-z-]+)/.exec(line)![1]!);
    expect(writing.length).toBeGreaterThan(10);
    const names = [...generatedSchemas().keys()].map((name) => name.slice('docs/schemas/'.length));
    expect(writing.filter((one) => !names.some((name) => name.startsWith(`${one}-`)))).toEqual([]);
    for (const page of ['docs/guide/command-line.md', 'docs/de/guide/command-line.md'])
      expect(
        names.filter((name) => !readFileSync(join(project, page), 'utf8').includes(`\`${name}\``)),
      ).toEqual([]);
  });

  it('find a member that is not described, has another type, or lacks', () => {
    const finding = { file: 'a', line: 1, column: 1, endColumn: 2, level: 'error', code: 'x', message: 'y' };
    expect(against('check-1', [finding])).toEqual([]);
    expect(against('check-1', [{ ...finding, line: '1' }])).toHaveLength(1);
    expect(against('check-1', [{ ...finding, colour: 'red' }])).toHaveLength(1);
    expect(against('check-1', [{ ...finding, level: 'loud' }])).toHaveLength(1);
    expect(against('check-1', [{ ...finding, code: undefined }])).toHaveLength(1);
  });

  it.each<[string, readonly string[]]>([
    ['check-1', ['check', '--level', 'info', '--format', 'json', '.']],
    ['totals-1', ['totals', '--json', '.']],
    ['sheet-2', ['sheet', '--format', 'json', 'formulas']],
    ['plan-1', ['plan', '--format', 'json', 'plan.dough']],
    ['experiment-1', ['experiment', '--format', 'json', 'bench.dough']],
    ['overlay-1', ['overlay', '--format', 'json', 'bench.dough', '--formula', 'Bench White', 'Bench Wet']],
    ['export-1', ['export', '--format', 'json', '.']],
    ['rules-1', ['rules', '--json']],
    ['rules-1', ['rules', '--json', '--language', 'de']],
    ['map-1', ['map', '--format', 'json', 'formulas/ferry-loaf.dough']],
    ['totals-1', ['totals', '--json', '--language', 'de', 'formulas']],
  ])('%s describes what %j writes of the examples, and all of it', async (name, args) => {
    const { stdout, stderr } = await doughwright(examples, ...args);
    expect(stderr).not.toMatch(/fault of this program/);
    const output = JSON.parse(stdout) as readonly unknown[];
    expect(output.length).toBeGreaterThan(0);
    expect(against(name, output)).toEqual([]);
  });

  it('describe findings with other places, comparisons, histories and blends', async () => {
    const shared = ['bakery.dough', 'flours.dough', 'mixers.dough', 'stores.dough'].map(
      (name) => [name, readFileSync(join(examples, name), 'utf8')] as const,
    );
    const folder = repositoryIn(
      folderWith({ ...Object.fromEntries(shared), 'ferry.dough': bread, 'again.dough': bread }),
    );
    folder.git('init', '--quiet', '--initial-branch=main');
    folder.commit('Start');
    const check = await doughwright(folder.path, 'check', '--level', 'info', '--format', 'json');
    expect(check.stdout).toContain('"related"');
    expect(against('check-1', JSON.parse(check.stdout))).toEqual([]);
    folder.remove('again.dough');
    folder.write(
      'ferry.dough',
      `${bread.replace(/salt( +)2%/, 'salt$11.8%')}\ntrial 2026-05-02, schema:\n  water 18 °C\n  end 25 °C\n`,
    );
    const compared = await doughwright(folder.path, 'compare', '--since', 'HEAD', '--format', 'json');
    expect(compared.stdout).toContain('"changed"');
    expect(against('compare-1', JSON.parse(compared.stdout))).toEqual([]);
    folder.commit('Less salt');
    const history = await doughwright(
      folder.path,
      'history',
      'Ferry Loaf',
      'ferry.dough',
      '--format',
      'json',
    );
    expect(history.stdout).toContain('"measuredCelsius"');
    expect(against('history-1', JSON.parse(history.stdout))).toEqual([]);
    const blend = await doughwright(
      folder.path,
      'blend',
      '--nearest',
      '--protein',
      '12',
      '--json',
      'strong white',
      'cake flour',
    );
    expect([blend.code, blend.stderr]).toEqual([0, '']);
    expect(against('blend-1', JSON.parse(blend.stdout))).toEqual([]);
  });

  it('describe the project file as it is read: what the one takes the other takes', async () => {
    const whole = {
      rules: { 'no-salt': 'off' },
      ...{ language: 'de', units: { mass: 'ounces', temperature: 'fahrenheit' }, decimalSign: 'comma' },
      ...{ usual: { roomCelsius: 24, flourCelsius: 22, tapCelsius: 12 }, label: { regime: 'EU' } },
    };
    const bad = [
      { rules: { 'no-slat': 'off' } },
      { rules: { 'no-salt': 'loud' } },
      { language: 'editor' },
      { units: { mass: 'stones' } },
      { usual: { roomCelsius: 300 } },
      { label: { regime: 'bakery' } },
      { colour: 1 },
    ];
    expect(against('project-1', whole)).toEqual([]);
    const folder = folderWith({ 'ferry.dough': bread });
    for (const [project, isGood] of [[whole, true] as const, ...bad.map((one) => [one, false] as const)]) {
      expect([project, against('project-1', project).length === 0]).toEqual([project, isGood]);
      folder.write('doughwright.json', JSON.stringify(project));
      const { stderr } = await doughwright(folder.path, 'rules', 'no-salt');
      expect([project, stderr === '']).toEqual([project, isGood]);
    }
  });
});
