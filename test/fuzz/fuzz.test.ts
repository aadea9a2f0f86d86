import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { createService, finish, type Service, type SheetOptions } from '../../core/index.ts';
import { failed } from '../rules/failed.ts';
import { weighedOf } from '../sheet/parts.ts';
import { everything, expectSame, placeIn } from './edits.ts';
import { afterEdits, faultsOf, serviceBeside, textOfNeighbour, uri } from './fixes.ts';
import { fuzz } from './fuzz.ts';
import { personsEdits, personsText, somewhere } from './person.ts';
import { EncodedEditor, encodings } from './server.ts';

// Texts as people make them, held against what always holds. See fuzz.ts for how long, and for what becomes of a fault.
describe('whatever a person does', () => {
  fuzz('edits of one file', fc.tuple(personsEdits, somewhere), ([texts, place]) => {
    const service = createService({ failed });
    service.setRoots(['file:///quay-lane/']);
    for (const text of texts) {
      service.setText(uri, text);
      const { line, column } = placeIn(service.lines(uri), place);
      const now = everything(service, uri, line, column);
      const fresh = createService({ failed });
      fresh.setRoots(['file:///quay-lane/']);
      fresh.setText(uri, text);
      expectSame(now, everything(fresh, uri, line, column));
    }
  });

  const names = ['a', 'b', 'deep/c', 'deep/d'].map((name) => `file:///quay-lane/${name}.dough`);
  const steps = fc.array(fc.tuple(fc.constantFrom(...names), fc.option(personsText, { freq: 8 })), {
    minLength: 2,
    maxLength: 8,
  });
  fuzz('edits of many files', fc.tuple(steps, somewhere), ([all, place]) => {
    const service = createService({ failed });
    service.setRoots(['file:///quay-lane/']);
    const held = new Map<string, string>();
    for (const [file, text] of all) {
      if (text === null) {
        service.remove(file);
        held.delete(file);
      } else {
        service.setText(file, text);
        held.set(file, text);
      }
      for (const one of held.keys()) service.findings(one);
    }
    const fresh = createService({ failed });
    fresh.setRoots(['file:///quay-lane/']);
    for (const [file, text] of held) fresh.setText(file, text);
    for (const file of held.keys()) {
      const { line, column } = placeIn(service.lines(file), place);
      expectSame(everything(service, file, line, column), everything(fresh, file, line, column));
    }
  });

  const beside = serviceBeside();
  const set = (text: string): Service => {
    beside.setText(uri, text);
    return beside;
  };

  fuzz('formatter', personsText, (text) => {
    const figures = () => [codes(beside), JSON.stringify(beside.totals(uri)).replace(/"line":\d+/g, '')];
    set(text);
    const before = figures();
    const once = afterEdits(() => text, [{ uri, edits: beside.format(uri) }]).get(uri) ?? text;
    set(once);
    expect(beside.format(uri)).toEqual([]);
    expectSame(figures(), before);
  });

  fuzz('rename', fc.tuple(personsText, somewhere), ([text, place]) => {
    set(text);
    const { line, column } = placeIn(beside.lines(uri), place);
    const start = beside.renameStart(uri, line, column);
    if (start === undefined || 'refused' in start) return;
    const renamed = finish(beside.rename(uri, line, column, 'quite another name'));
    if ('refused' in renamed) return;
    const there = afterEdits((file) => (file === uri ? text : textOfNeighbour(file)), renamed);
    // Of two that are called the same, one gets a name of its own: that is what a baker renames it for.
    const found = () => codes(beside).filter((one) => !one.endsWith('same-name-twice'));
    const had = found();
    for (const [file, now] of there) beside.setText(file, now);
    try {
      expect(found()).toEqual(had);
      const at = renamed.find((one) => one.uri === uri)?.edits.find((one) => one.line === start.place.line);
      if (at === undefined) return;
      const nowAt = beside.lines(uri)[at.line]?.indexOf('quite another name', at.start) ?? -1;
      if (nowAt < 0) return;
      const back = finish(beside.rename(uri, at.line, nowAt + 1, start.text));
      // Of two that were called the same, one has another name now, and may not have its own back.
      if ('refused' in back && (there.get(uri) ?? '').includes(start.text)) return;
      if ('refused' in back) throw new Error(`There, but not back: ${back.refused}`);
      const again = afterEdits((file) => there.get(file) ?? textOfNeighbour(file), back);
      const folded = (of: string) =>
        of
          .normalize('NFC')
          .toLowerCase()
          // An unclosed quote takes in a blank and the colon.
          .replace(/["“”]/g, ' ')
          .replace(/\s+/g, ' ')
          .replace(/ ?: ?/g, ': ')
          .trim()
          // A part that is called by the word of its section stands there as both.
          .replace(/\b(\w+) \1\b/g, '$1');
      for (const [file, now] of again) beside.setText(file, now);
      expect(found()).toEqual(had);
      expect(folded(again.get(uri) ?? '')).toBe(folded(text));
    } finally {
      for (const file of there.keys()) beside.setText(file, file === uri ? text : textOfNeighbour(file));
    }
  });

  const mending = serviceBeside();
  fuzz('fixes and actions', personsText, (text) => {
    for (const { what, said, after } of faultsOf(mending, text))
      throw new Error(`${what}, ${said}\n${after}`);
  });

  fuzz(
    'import and export',
    fc.tuple(personsText, fc.constantFrom(',', ';', '\t', '  ', ' | ')),
    ([text, sign]) => {
      const service = createService({ failed });
      const table = text
        .split('\n')
        .map((line) => line.trim().replace(/ {2,}/g, sign))
        .join('\n');
      const made = service.importTable(uri, table);
      expect(made.notes.length).toBeGreaterThan(0);
      if (made.text === '') return;
      service.setText(uri, made.text);
      expect(service.format(uri)).toEqual([]);
      expect(service.totals(uri).length).toBe(new Set(made.formulas).size);
    },
  );

  const asked: fc.Arbitrary<SheetOptions> = fc.record(
    {
      size: fc.oneof(
        fc.record({ by: fc.constant('pieces' as const), pieces: fc.integer({ min: 1, max: 300 }) }),
        fc.record({
          by: fc.constantFrom('dough' as const, 'flour' as const),
          grams: fc.integer({ min: 200, max: 90_000 }),
        }),
      ),
      whatIf: fc.record(
        {
          water: fc.integer({ min: 40, max: 95 }).map((percent) => percent / 100),
          lines: fc.array(fc.record({ index: fc.nat(4), minutes: fc.integer({ min: 1, max: 30 }) }), {
            maxLength: 2,
          }),
        },
        { requiredKeys: [] },
      ),
    },
    { requiredKeys: [] },
  );
  fuzz('panel edits', fc.tuple(personsText, asked, somewhere), ([text, options, place]) => {
    set(text);
    const { line } = placeIn(beside.lines(uri), place);
    const shown = beside.sheet(uri, line, options);
    const edits = beside.panelEdits(uri, line, { kind: 'keep', asked: options });
    if (shown === undefined || 'refused' in edits) return;
    const weighed = weighedOf(shown);
    const changed = afterEdits((file) => (file === uri ? text : textOfNeighbour(file)), edits);
    for (const [file, now] of changed) beside.setText(file, now);
    const above = edits
      .flatMap((one) => (one.uri === uri ? one.edits : []))
      .filter((one) => one.line < shown.line || (one.line === shown.line && one.start === 0));
    const moved = above.reduce(
      (sum, one) => sum + one.insert.split(/\r\n|\r|\n/).length - 1 - ((one.endLine ?? one.line) - one.line),
      0,
    );
    const kept = beside.sheet(uri, shown.line + moved, {});
    for (const file of changed.keys()) beside.setText(file, file === uri ? text : textOfNeighbour(file));
    expect(kept === undefined ? undefined : weighedOf(kept)).toEqual(weighed);
  });

  const editors: EncodedEditor[] = [];
  beforeAll(async () => {
    for (const encoding of encodings) editors.push(await EncodedEditor.start(encoding));
  });
  afterAll(() => Promise.all(editors.map((one) => one.stop())));

  let files = 0;
  fuzz('server in three encodings', personsEdits, async (texts) => {
    // A lone surrogate cannot be sent.
    if (texts.some((text) => /[\uD800-\uDFFF]/u.test(text))) return;
    const last = texts.at(-1) ?? '';
    const service = createService({ failed });
    for (const editor of editors) {
      const file = `untitled:Untitled-${++files}`;
      service.setText(file, last);
      const lines = service.lines(file);
      const expected = service.findings(file).map(({ code, message, place }) => ({
        code,
        message,
        range: editor.range(lines[place.line] ?? '', place),
      }));
      const typed = await editor.typed(file, texts);
      expect(typed).toEqual(await editor.opened(file, last));
      expect(typed).toMatchObject({ found: expected });
      service.remove(file);
    }
  });
});

const codes = (service: Service): string[] =>
  service
    .findings(uri)
    .map(({ code, level }) => `${level} ${code}`)
    .sort();
