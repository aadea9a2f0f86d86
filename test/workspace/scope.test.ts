import { describe, expect, it } from 'vitest';
import { createService, type Service } from '../../core/index.ts';

const root = 'file:///quay-lane/';

function serviceWith(files: Readonly<Record<string, string>>, roots: readonly string[] = [root]): Service {
  const service = createService();
  service.setRoots(roots);
  for (const [name, text] of Object.entries(files)) service.setText(root + name, text);
  return service;
}

const flour = (name: string, protein: number): string =>
  `flour ${name}:\n  grain wheat\n  milling white\n  protein ${protein}%\n`;
const formula = (name: string, of: string): string =>
  `formula ${name}:\n  yield 1 kg\n  ${of}  100%\n  water  60%\n`;
const codes = (service: Service, name: string): string[] =>
  service.findings(root + name).map((one) => one.code);
/** The protein of the flour on a formula's third line, as the hover tells it. */
const proteinOf = (service: Service, name: string): string | undefined =>
  /protein ([\d.]+%) at 14% moisture/.exec(service.hover(root + name, 2, 4)?.markdown ?? '')?.[1];
/** The protein a hover tells for a flour of so much protein and nothing else said. */
function told(protein: number): string {
  const service = serviceWith({ 'x.dough': flour('x flour', protein) + formula('X', 'x flour') });
  const text = service.hover(`${root}x.dough`, 6, 4)?.markdown ?? '';
  return /protein ([\d.]+%) at 14% moisture/.exec(text)![1]!;
}

describe('where a name is looked for', () => {
  it('first in the file’s own folder, whichever file of it', () => {
    const service = serviceWith({
      'flours.dough': flour('mill white', 10),
      'breads/flours.dough': flour('mill white', 13),
      'breads/a.dough': formula('A', 'mill white'),
    });
    expect(proteinOf(service, 'breads/a.dough')).toBe(told(13));
  });

  it('then in each folder above, the nearest first', () => {
    const service = serviceWith({
      'flours.dough': flour('mill white', 10),
      'breads/flours.dough': flour('mill white', 13),
      'breads/rye/a.dough': formula('A', 'mill white'),
    });
    expect(proteinOf(service, 'breads/rye/a.dough')).toBe(told(13));
    service.remove(`${root}breads/flours.dough`);
    expect(proteinOf(service, 'breads/rye/a.dough')).toBe(told(10));
  });

  it('then in the rest of the workspace', () => {
    const service = serviceWith({
      'pastry/flours.dough': flour('mill white', 9),
      'breads/a.dough': formula('A', 'mill white'),
    });
    expect(proteinOf(service, 'breads/a.dough')).toBe(told(9));
  });

  it('and last in the catalogue', () => {
    const service = serviceWith({ 'a.dough': formula('A', 'bread flour') });
    expect(codes(service, 'a.dough')).not.toContain('unknown-ingredient');
    service.setText(`${root}flours.dough`, flour('bread flour', 15));
    expect(Number.parseFloat(proteinOf(service, 'a.dough')!)).toBeGreaterThan(14.5);
  });

  it('a folder whose name only begins alike is not above', () => {
    const service = serviceWith({
      'bread/flours.dough': flour('mill white', 9),
      'breads/flours.dough': flour('mill white', 13),
      'breads/a.dough': formula('A', 'mill white'),
    });
    expect(proteinOf(service, 'breads/a.dough')).toBe(told(13));
  });

  it('above the root is the rest of the workspace, not nearer than any other folder', () => {
    const files = {
      'flours.dough': flour('mill white', 10),
      'breads/rye/a.dough': formula('A', 'mill white'),
      'pastry/flours.dough': flour('mill white', 9),
    };
    const service = serviceWith(files, [`${root}breads`]);
    expect(codes(service, 'breads/rye/a.dough')).toContain('several-definitions');
    expect(codes(serviceWith(files), 'breads/rye/a.dough')).not.toContain('several-definitions');
  });

  it('without regard to case, hyphens, apostrophes and the way letters are composed', () => {
    const service = serviceWith({
      'flours.dough': flour('Mill\u2011Baker\u2019s Cr\u00E8me', 10),
      'a.dough': formula('A', 'mill-baker\u0027s cre\u0300me'),
    });
    expect(codes(service, 'a.dough')).not.toContain('unknown-ingredient');
    expect(proteinOf(service, 'a.dough')).toBe(told(10));
  });
});

describe('several of one name', () => {
  it('at one level are an error at the reference, with each of them as a related place', () => {
    const service = serviceWith({
      'one.dough': flour('mill white', 10),
      'two.dough': `# above\n${flour('mill white', 12)}`,
      'a.dough': formula('A', 'mill white'),
    });
    const found = service.findings(`${root}a.dough`).filter((one) => one.code === 'several-definitions');
    expect(found).toHaveLength(1);
    expect(found[0]!.level).toBe('error');
    expect(found[0]!.place).toMatchObject({ line: 2, start: 2 });
    expect(found[0]!.related.map(({ uri, place }) => [uri, place.line])).toEqual([
      [`${root}one.dough`, 0],
      [`${root}two.dough`, 1],
    ]);
  });

  it('at two levels are none: the nearer wins', () => {
    const service = serviceWith({
      'one.dough': flour('mill white', 10),
      'breads/two.dough': flour('mill white', 12),
      'breads/a.dough': formula('A', 'mill white'),
    });
    expect(codes(service, 'breads/a.dough')).not.toContain('several-definitions');
  });

  it('are told again where the other one has moved to', () => {
    const service = serviceWith({
      'one.dough': flour('mill white', 10),
      'two.dough': flour('mill white', 12),
      'a.dough': formula('A', 'mill white'),
    });
    const related = () =>
      service.findings(`${root}a.dough`).find((one) => one.code === 'several-definitions')!.related[1]!.place
        .line;
    expect(related()).toBe(0);
    service.setText(`${root}two.dough`, `#\n#\n#\n${flour('mill white', 12)}`);
    expect(related()).toBe(3);
  });
});

describe('overrides', () => {
  it('a definition of a catalogue name overrides property by property', () => {
    const service = serviceWith({
      'flours.dough': 'flour bread flour:\n  protein 15%\n',
      'a.dough': formula('A', 'bread flour'),
    });
    const before = serviceWith({ 'a.dough': formula('A', 'bread flour') });
    expect(proteinOf(service, 'a.dough')).not.toBe(proteinOf(before, 'a.dough'));
    const hover = (which: Service): string => which.hover(`${root}a.dough`, 2, 4)!.markdown;
    expect(hover(service)).toContain('the rest from bread flour');
  });

  it('a definition overrides the same name further up property by property', () => {
    const service = serviceWith({
      'malt.dough': 'ingredient dark malt:\n  water 20%\n  sugars 60%\n',
      'breads/malt.dough': 'ingredient dark malt:\n  sugars 50%\n',
      'breads/a.dough': 'formula A:\n  yield 1 kg\n  bread flour  100%\n  dark malt  10%\n',
    });
    expect(service.hover(`${root}breads/a.dough`, 3, 4)!.markdown).toContain('(20% of it)');
  });

  it('“like” starts from another', () => {
    const service = serviceWith({
      'a.dough':
        'ingredient farm milk:\n  like whole milk\n  fat 5%\nformula A:\n  yield 1 kg\n  bread flour  100%\n  farm milk  50%\n',
    });
    const water = /\(([\d.]+)% of it\)/.exec(service.hover(`${root}a.dough`, 6, 4)!.markdown)?.[1];
    expect(Number(water)).toBeGreaterThan(80);
  });

  it('“like” in a circle is survived', () => {
    const service = serviceWith({
      'a.dough':
        'ingredient one:\n  like two\ningredient two:\n  like one\nformula A:\n  bread flour 100%\n  one 10%\n',
    });
    expect(() => service.findings(`${root}a.dough`)).not.toThrow();
    expect(() => service.hover(`${root}a.dough`, 6, 4)).not.toThrow();
  });
});

describe('the bakery of a folder', () => {
  const bakery = (room: number): string =>
    `bakery Quay Lane:\n  room ${room} °C\n  flour ${room} °C\n  tap water 12 °C\n`;
  const kneaded = `${formula('A', 'bread flour')}mix by hand:\n  load flour, water\n  knead 8 min\n`;
  const water = (service: Service, name: string): number | undefined =>
    service.totals(root + name)[0]?.water?.celsius;

  it('is the nearest one', () => {
    const service = serviceWith({
      'bakery.dough': bakery(16),
      'cellar/bakery.dough': bakery(28),
      'a.dough': kneaded,
      'cellar/a.dough': kneaded,
    });
    expect(water(service, 'cellar/a.dough')!).toBeLessThan(water(service, 'a.dough')!);
  });
});
