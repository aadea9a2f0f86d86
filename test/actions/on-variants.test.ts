import { describe, expect, it } from 'vitest';
import { actions } from '../../core/features/actions/action-catalogue.ts';
import { createService, type TextRange } from '../../core/index.ts';
import { failed } from '../rules/failed.ts';
import { edited, editsOf } from './apply.ts';

const uri = 'file:///quay-lane/a.dough';

/** What a formula comes to, in percent of flour and rounded as no scale shows it. */
function overallOf(text: string, name: string): readonly string[] {
  const service = createService({ failed });
  service.setText(uri, text);
  const totals = service.totals(uri).find(({ formula }) => formula === name)!;
  return totals.overall.map(({ name: of, fraction }) => `${of} ${(100 * fraction!).toFixed(6)}`).sort();
}

/** A text after each offer of an action at a place, by its argument. */
function afterEach(text: string, range: TextRange, id: string): Map<string, string> {
  const service = createService({ failed });
  service.setText(uri, text);
  const made = new Map<string, string>();
  for (const { argument } of service.actions(uri, range).filter((one) => one.id === id)) {
    const edits = service.actionEdits(uri, range, id, argument);
    if (edits !== undefined) made.set(argument ?? '', edited(text, editsOf(edits, uri)));
  }
  return made;
}

const cursor = (line: number, start: number): TextRange => ({ line, start, endLine: line, end: start });

describe('an action that works on a variant made whole', () => {
  const whole = actions.filter(({ variants }) => variants === 'whole');

  it.each(whole.map((action) => [action.id, action] as const))(
    '%s makes of a variant what it makes of a formula of its own, and leaves the base',
    (id, { example }) => {
      const base = `${example.replaceAll('‸', '').trimEnd()}\n`;
      const above = example.slice(0, example.indexOf('‸')).split('\n');
      const [line, start] = [above.length - 1, above.at(-1)!.length];
      const lines = base.split('\n');
      const name = /^formula (.*):$/m.exec(base)![1]!;
      // The variant has the section, or the line, at the cursor as its own, and takes the rest.
      const header = lines.findLastIndex((text, at) => at <= line && /^\S/.test(text));
      const next = lines.findIndex((text, at) => at > header && /^\S/.test(text));
      const isTop = lines[header]!.startsWith('formula ');
      const own = isTop
        ? [lines[line]!]
        : ['', ...lines.slice(header, next < 0 ? lines.length : next)].map((text) => text.trimEnd());
      const first = lines.length + 1;
      const variant = [...lines, `formula Other like ${name}:`, ...own].join('\n');
      const at = isTop ? first : first + 1 + (line - header);
      const ofBase = afterEach(base, cursor(line, start), id);
      const ofVariant = afterEach(variant, cursor(at, start), id);
      expect(ofBase.size).toBeGreaterThan(0);
      expect(ofVariant.size, variant).toBeGreaterThan(0);
      for (const [argument, text] of ofVariant) {
        expect(text.startsWith(base), text).toBe(true);
        expect(overallOf(text, 'Other'), text).toEqual(overallOf(ofBase.get(argument)!, name));
      }
    },
  );
});
