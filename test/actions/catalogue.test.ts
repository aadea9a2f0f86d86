import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { actions } from '../../core/features/actions/action-catalogue.ts';
import { serviceOf } from '../features/archive.ts';
import { edited, editsOf } from './apply.ts';

const here = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const fixtures = readdirSync(here('test/fixtures/actions')).map((name) =>
  readFileSync(here(`test/fixtures/actions/${name}`), 'utf8'),
);

describe('the catalogue of actions', () => {
  it('gives every action an id of its own, in kebab case, and a name of its own', () => {
    const ids = actions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(actions.map(({ name }) => name)).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });
});

describe.each(actions)('$id', (action) => {
  it('is offered in its example, and changes it', () => {
    const asked = serviceOf({
      title: action.id,
      files: [{ head: 'file example.dough', body: action.example }],
      questions: [],
    });
    const { service, uri, line, column, endLine, endColumn, texts } = asked;
    const range = { line, start: column, endLine, end: endColumn };
    const offered = service.actions(uri, range, [action.kind]).filter(({ id }) => id === action.id);
    expect(offered.length).toBeGreaterThan(0);
    for (const { title, argument } of offered) {
      expect(title).not.toMatch(/undefined|NaN|\[object|\n/);
      expect(title.length, title).toBeLessThan(70);
      const edits = service.actionEdits(uri, range, action.id, argument);
      expect(edits, title).toBeDefined();
      const text = texts.get(uri)!;
      expect(edited(text, editsOf(edits, uri)), title).not.toBe(text);
    }
  });

  it('has cases among the fixtures', () => {
    expect(fixtures.filter((one) => one.includes(`after ${action.id}`)).length).toBeGreaterThan(0);
  });

  it('is in the guide', () => {
    expect(existsSync(here('docs/guide/actions.md'))).toBe(true);
    expect(readFileSync(here('docs/guide/actions.md'), 'utf8')).toContain(`### ${action.name}\n`);
  });
});
