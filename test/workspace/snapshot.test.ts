import { expect, it } from 'vitest';
import { createService, finish } from '../../core/index.ts';
import { emptySnapshot, withRoots, withSettings, withText } from '../../core/workspace/snapshot.ts';
import { Cache } from '../../core/workspace/snapshot-view.ts';

const root = 'file:///quay-lane/';
const bread = `${root}bread.dough`;
const flour = `${root}flour.dough`;
const breadText =
  'formula White:\n  yield 1 kg\n  dough temperature 25 °C\n  mill white  100%\n  water  60%\n  salt  2%\n  mix in spiral:\n    speed 1 for 4 min\n    speed 2 for 4 min\n';
const flourText = 'flour mill white:\n  grain wheat\n  protein 12%\n';

const first = withText(withText(withRoots(emptySnapshot, [root]), bread, breadText), flour, flourText);

/** The formula's facts that hang on another file, and on its own text. */
function facts(cache: Cache, snapshot: typeof first) {
  const view = cache.at(snapshot);
  const { source } = view.read(bread)!;
  const { block } = source.blocks[0]!;
  const analysis = view.analysisOf(bread, block)!;
  return {
    protein: view.scopeOf(bread).find('ingredient', 'mill white')[0]?.[0]?.block.lines.at(-1)?.text,
    water: analysis.solved?.overall.find(({ key }) => key === 'water')?.grams,
    findings: view.findingsOf(bread, block).findings.map(({ code }) => code),
  };
}

it('answers of an earlier snapshot, however many came after it', () => {
  const cache = new Cache();
  const before = facts(cache, first);
  const changed = withText(first, flour, flourText.replace('12%', '9%'));
  const wetter = withText(changed, bread, breadText.replace('60%', '70%'));
  const gone = withText(wetter, flour, undefined);
  const there = [first, changed, wetter, gone];
  const fresh = there.map((one) => facts(new Cache(), one));
  for (const index of [3, 0, 2, 1, 0, 3, 1, 2, 0]) expect(facts(cache, there[index]!)).toEqual(fresh[index]);
  expect(facts(cache, first)).toEqual(before);
  expect(new Set(fresh.map((one) => JSON.stringify(one))).size).toBe(4);
});

it('the same change is no change, and nothing of a snapshot is changed by its next', () => {
  expect(withText(first, bread, breadText)).toBe(first);
  const settings = withSettings(first, { maxFindings: 3 });
  expect(settings.revision).toBeGreaterThan(first.revision);
  expect(first.settings.maxFindings).not.toBe(3);
  expect([...first.texts.keys()]).toEqual([bread, flour]);
  expect(withText(first, flour, undefined).texts.size).toBe(1);
  expect(first.texts.size).toBe(2);
});

it('a long answer is of the snapshot it was asked of, whatever is typed meanwhile', () => {
  const service = createService();
  service.setRoots([root]);
  service.setText(bread, breadText);
  service.setText(flour, flourText);
  const steps = service.references(bread, 3, 4, true);
  steps.next();
  service.setText(bread, `\n\n${breadText}`);
  service.remove(flour);
  const found = finish(steps);
  expect(found.map(({ uri, place }) => [uri, place.line])).toEqual([
    [bread, 3],
    [flour, 0],
  ]);
});

it('what depends on usual conditions and roots is another after they are', () => {
  const service = createService();
  service.setText(bread, breadText);
  service.setText(flour, flourText);
  const water = () => JSON.stringify(service.totals(bread)[0]?.heat);
  service.setRoots([root]);
  const mild = water();
  service.setSettings({ usual: { roomCelsius: 33, flourCelsius: 30, tapCelsius: 26 } });
  const hot = water();
  service.setSettings({ usual: {} });
  expect(water()).toBe(mild);
  expect(mild).toBeDefined();
  expect(hot).not.toBe(mild);
});
