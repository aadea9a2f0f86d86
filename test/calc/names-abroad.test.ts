import { describe, expect, test } from 'vitest';
import { catalogueIngredients, catalogueNamesAbroad, findCatalogue } from '../../core/catalogue/catalogue.ts';
import { anyFlourAbroad, looseNamesAbroad, namesAbroad } from '../../core/catalogue/names-abroad.ts';
import { tongues } from '../../core/catalogue/tongue.ts';
import { createService } from '../../core/index.ts';
import { foldName } from '../../core/text/names.ts';

describe('names of other languages', () => {
  const row = (name: string): string | undefined =>
    catalogueIngredients.find((one) => one.name === name || one.aliases.includes(name))?.name;

  test('stand for one ingredient each, which is there, and for none that English calls otherwise', () => {
    const own = new Map(
      catalogueIngredients.flatMap((one) =>
        [one.name, ...one.aliases].map((name) => [foldName(name), one.name] as const),
      ),
    );
    const seen = new Map<string, string>();
    for (const { folded, name } of catalogueNamesAbroad()) {
      const meant = row(name);
      expect(meant, name).toBeDefined();
      expect(own.get(folded) ?? meant, folded).toBe(meant);
      expect(seen.get(folded) ?? meant, folded).toBe(meant);
      expect(findCatalogue(folded)?.name, folded).toBe(meant);
      seen.set(folded, meant!);
    }
    expect(seen.size).toBeGreaterThan(1000);
  });

  test('are there in all four languages for every row of the catalogue', () => {
    const told = new Map<string, Set<string>>();
    for (const { name, tongue } of catalogueNamesAbroad())
      told.set(row(name)!, (told.get(row(name)!) ?? new Set()).add(tongue));
    const lacking = catalogueIngredients.flatMap(({ name }) =>
      tongues.filter((tongue) => !told.get(name)?.has(tongue)).map((tongue) => `${name}: ${tongue}`),
    );
    expect(lacking).toEqual([]);
  });

  test('are written as their bakers write them, none twice in a language', () => {
    for (const table of [namesAbroad, looseNamesAbroad])
      for (const byTongue of Object.values(table))
        for (const words of Object.values(byTongue)) {
          expect(new Set(words.map(foldName)).size).toBe(words.length);
          for (const word of words) expect(word).toMatch(/^\p{L}[\p{L}'’ -]*$/u);
        }
  });

  test('leave flour of whatever kind open', () => {
    for (const word of anyFlourAbroad) expect(findCatalogue(foldName(word)), word).toBeUndefined();
  });

  // DIN 10355 for the German types; the names are common practice, no source.
  test.each([
    ['Wasser', 'water'],
    ['Salz', 'salt'],
    ['Hefe', 'fresh yeast'],
    ['Trockenhefe', 'active dry yeast'],
    ['Weizenmehl 550', 'type 550'],
    ['Weizenmehl Type 550', 'type 550'],
    ['Roggenmehl 1150', 'rye 1150'],
    ['Dinkelmehl 630', 'spelt 630'],
    ['Weizenmehl W700', 'w700'],
    ['Süßrahmbutter', 'butter'],
    ['farine de blé T65', 't65'],
    ['farine de seigle T130', 'rye t130'],
    ['sel', 'salt'],
    ['levure sèche', 'active dry yeast'],
    ['huile d’olive', 'olive oil'],
    ['farina tipo 00', 'type 00'],
    ['lievito di birra', 'fresh yeast'],
    ['harina de fuerza', 'bread flour'],
    ['azúcar', 'sugar'],
    ['Roggenvollkornmehl', 'dark rye'],
    ['harina de trigo T65', 't65'],
    ['Weizenmehl Tipo 00', 'type 00'],
    ['farine de blé type 1050', 'type 1050'],
    ['Sultaninen', 'sultanas'],
    ['Puderzucker', 'icing sugar'],
    ['nueces pecanas', 'pecan'],
    ['zeste de citron', 'lemon zest'],
  ])('%s is %s', (said, name) => {
    expect(findCatalogue(foldName(said))?.name).toBe(name);
  });

  test('make the same dough as the English ones', () => {
    const totals = (lines: readonly string[]) => {
      const service = createService();
      const [flour, water, salt, yeast] = lines;
      service.setText(
        'file:///quay/a.dough',
        `formula Quay Tin:\n  yield 10 pieces of 880 g\n  ${flour} 100%\n  ${water} 65%\n  ${salt} 2%\n  ${yeast} 1%\n`,
      );
      const { hydration, salt: salted } = service.totals('file:///quay/a.dough')[0] as unknown as {
        hydration: number;
        salt: unknown;
      };
      return [hydration, salted, service.findings('file:///quay/a.dough').map(({ code }) => code)];
    };
    const english = totals(['type 550', 'water', 'salt', 'fresh yeast']);
    expect(english[0]).toBeCloseTo(0.65, 6);
    expect(totals(['Weizenmehl 550', 'Wasser', 'Salz', 'Frischhefe'])).toEqual(english);
    // What leaves open which of two is meant says so, as `yeast` does.
    const loose = totals(['Weizenmehl Type 550', 'Leitungswasser', 'Meersalz', 'Hefe']);
    expect(loose.slice(0, 2)).toEqual(english.slice(0, 2));
    expect(loose[2]).toContain('which-kind');
    expect(english[2]).not.toContain('which-kind');
  });

  test('are offered in the language that the formula is written in, and in any on its first line', () => {
    const offered = (lines: readonly string[], begun: string): string[] => {
      const service = createService();
      const text = ['formula Quay Tin:', ...lines.map((line) => `  ${line}`), `  ${begun}`, ''].join('\n');
      service.setText('file:///quay/a.dough', text);
      return service
        .completions('file:///quay/a.dough', lines.length + 1, 2 + begun.length)
        .map(({ label }) => label)
        .filter((label) => label.toLowerCase().startsWith(begun.toLowerCase()));
    };
    expect(offered(['Weizenmehl 550 100%', 'Wasser 65%'], 'Sal')).toContain('Salz');
    expect(offered(['Weizenmehl 550 100%', 'Wasser 65%'], 'Sal')).not.toContain('sale');
    const inEnglish = offered(['bread flour 100%', 'water 65%'], 'sal');
    expect(inEnglish).toContain('salt');
    for (const other of ['Salz', 'sale', 'sal']) expect(inEnglish).not.toContain(other);
    expect(offered(['farine de blé T65 100%', 'eau 65%'], 'lev')).toContain('levure fraîche');
    expect(offered([], 'Weizenmehl 5')).toEqual(['Weizenmehl 550']);
  });
});
