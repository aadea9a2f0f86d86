import { describe, expect, it } from 'vitest';
import { createService, type Service, type SheetDocument, type SheetOptions } from '../../core/index.ts';
import { withEdits } from '../../core/text/edits.ts';
import { partsOf, weighedOf } from './parts.ts';

// Invented formula and bakery; the arithmetic is baker's percent (common practice, no source).
const uri = 'file:///quay/tin.dough';
const bakeryUri = 'file:///quay/bakery.dough';
const bakery = 'bakery Quay Lane:\n  room 21 °C      # by the door\n  scale step 5 g\n';
const byYield = `formula Harbour Tin:
  yield 20 pieces of 880 g   # for the shop
  bread flour        100%
  water              65%
  salt               2%

mix in spiral:
  load flour, water, salt
  speed 1 for 8 min
`;
const byGrams = byYield
  .replace(/ {2}yield.*\n/, '')
  .replace('100%', '10 kg')
  .replace('65%', '6500 g')
  .replace('salt               2%', 'salt               0.2 kg, at 8 °C');

describe('what is tried is kept in the file', () => {
  it.each<[string, SheetOptions, string]>([
    ['pieces', { size: { by: 'pieces', pieces: 48 } }, 'yield 48 pieces of 880 g   # for the shop'],
    ['dough', { size: { by: 'dough', grams: 8800 } }, 'yield 10 pieces of 880 g'],
    ['flour', { size: { by: 'flour', grams: 10_000 } }, 'yield'],
    ['on hand', { size: { by: 'onHand', ingredient: 'salt', grams: 100 } }, 'yield'],
  ])('%s as the yield, and the sheet then says the same without it', (_, asked, line) => {
    const service = serviceWith(byYield);
    const tried = service.sheet(uri, 0, asked)!;
    keep(service, asked);
    expect(textOf(service, uri)).toContain(line);
    const kept = service.sheet(uri, 0, {})!;
    const rows = (sheet: SheetDocument) => partsOf(sheet).blocks.map((block) => block.rows);
    expect(rows(kept)).toEqual(rows(tried));
    expect(kept.tried).toBe(false);
  });

  it('in the word that the baker counts in', () => {
    const service = serviceWith(byYield.replace('20 pieces', '20 loaves'));
    keep(service, { size: { by: 'pieces', pieces: 48 } });
    expect(textOf(service, uri)).toContain('yield 48 loaves of 880 g   # for the shop');
    keep(service, { size: { by: 'pieces', pieces: 1 } });
    expect(textOf(service, uri)).toContain('yield 1 loaf of 880 g   # for the shop');
  });

  it('a size as every weight, where grams of flour give the scale', () => {
    const service = serviceWith(byGrams);
    keep(service, { size: { by: 'flour', grams: 15_000 } });
    const text = textOf(service, uri);
    expect(text).toContain('bread flour        15 kg');
    expect(text).toContain('water              9.75 kg');
    expect(text).toContain('salt               300 g, at 8 °C');
  });

  it('a size as a new yield, where the file says none', () => {
    const service = serviceWith(byYield.replace(/ {2}yield.*\n/, ''));
    keep(service, { size: { by: 'dough', grams: 5000 } });
    expect(textOf(service, uri)).toMatch(/^formula Harbour Tin:\n {2}yield 5 kg\n {2}bread flour/);
  });

  it('a size beside weights that are no share: kept back, in ml and in pieces', () => {
    const service = serviceWith(
      'formula Tin:\n  yield 10 pieces of 880 g\n  bread flour  100%\n  water  60%\n  milk  500 ml\n  eggs  8 pieces\n  salt  0.1 kg\n  keep back 200 g\n',
    );
    const asked: SheetOptions = { size: { by: 'pieces', pieces: 25 } };
    const tried = service.sheet(uri, 0, asked)!;
    keep(service, asked);
    expect(textOf(service, uri)).toBe(
      'formula Tin:\n  yield 25 pieces of 880 g\n  bread flour  100%\n  water  60%\n  milk  1250 ml\n  eggs  20 pieces\n  salt  250 g\n  keep back 500 g\n',
    );
    expect(weighedOf(service.sheet(uri, 0, {})!)).toEqual(weighedOf(tried));
  });

  it('as a header alone that nothing follows, not even a line break', () => {
    const service = serviceWith('formula A:');
    const asked: SheetOptions = { today: { roomCelsius: 24 } };
    keep(service, asked);
    expect(textOf(service, uri)).toBe('bakery Our Bakery:\n  room 24 °C\n\nformula A:');
  });

  it('in the formula at the line, where another has the same name', () => {
    const service = serviceWith(`${byYield}\n${byYield.replace('20 pieces', '6 pieces')}`);
    const second = service.lines(uri).lastIndexOf('formula Harbour Tin:');
    expect(service.sheet(uri, second, {}, 'Harbour Tin')?.line).toBe(second);
    expect(service.sheet(uri, 0, {}, 'Harbour Tin')?.line).toBe(0);
  });

  it('as pieces that are not whole, where something is weighed by the piece', () => {
    const service = serviceWith(`${byYield}\ntopping crust:\n  sesame  4 g a piece\n`);
    const asked: SheetOptions = { size: { by: 'dough', grams: 12_100 } };
    const tried = service.sheet(uri, 0, asked)!;
    keep(service, asked);
    expect(textOf(service, uri)).toContain('yield 13.75 pieces of 880 g');
    expect(weighedOf(service.sheet(uri, 0, {})!)).toEqual(weighedOf(tried));
  });

  it('the day in the bakery of the folder, beside what stands there', () => {
    const service = serviceWith(byYield, bakery);
    keep(service, { today: { roomCelsius: 24.5, tapCelsius: 9, scaleStepGrams: 2 } });
    expect(textOf(service, bakeryUri)).toBe(
      'bakery Quay Lane:\n  tap water 9 °C\n  room 24.5 °C      # by the door\n  scale step 2 g\n',
    );
    expect(textOf(service, uri)).toBe(byYield);
  });

  it('the day in a bakery of its own, where there is none', () => {
    const service = serviceWith(byYield);
    keep(service, { today: { roomCelsius: 24 } });
    expect(textOf(service, uri)).toBe(`bakery Our Bakery:\n  room 24 °C\n\n${byYield}`);
  });

  it('the mixer in the head of the mixing', () => {
    const service = serviceWith(byYield);
    keep(service, { today: { mixer: 'by hand' } });
    expect(textOf(service, uri)).toContain('\nmix by hand:\n');
    keep(service, { today: { mixer: 'planetary' } });
    expect(textOf(service, uri)).toContain('\nmix in planetary:\n');
  });

  it('the mixer, with the old one in the trials that were run in it and do not say so', () => {
    const trial = '\ntrial 2026-03-03:\n  water 18 °C\n  end  24 °C\n';
    const kept = '\ntrial 2026-03-04:\n  mixed in fork\n  speed 1 for 9 min\n  end  24 °C\n';
    const service = serviceWith(byYield + trial + kept);
    keep(service, { today: { mixer: 'planetary' } });
    expect(textOf(service, uri)).toBe(
      byYield.replace('in spiral', 'in planetary') +
        trial.replace(
          '18 °C\n',
          '18 °C\n  mixed in spiral\n  load flour, water, salt\n  speed 1 for 8 min\n',
        ) +
        kept,
    );
  });

  it('with the line ends of the file', () => {
    const service = serviceWith(byYield.replaceAll('\n', '\r\n'));
    keep(service, { today: { roomCelsius: 24 } });
    expect(textOf(service, uri).replaceAll('\r\n', '')).not.toContain('\n');
  });

  it('another flour with the water for the same feel: what was shown, which is what the action writes', () => {
    const text = `flour hill white:\n  protein 11%\n  absorption 58%\n\nflour port white:\n  protein 13%\n  absorption 63%\n\n${byYield.replace('bread flour        100%', 'hill white         100%').replace('load flour', 'load hill white')}`;
    const service = serviceWith(text);
    const at = text.split('\n').findIndex((line) => line.startsWith('  hill white'));
    const asked: SheetOptions = {
      whatIf: { flour: { from: 'hill white', to: 'port white', sameFeel: true } },
    };
    const shown = service.sheet(uri, at, asked)!;
    // Five points of absorption more of a flour that is all of it: 65 % becomes 70 %.
    expect(shown.whatIf?.water).toMatchObject({ amount: 0.65, tried: 0.7 });
    const action = service.actionEdits(
      uri,
      { line: at, start: 3, endLine: at, end: 3 },
      'same-feel',
      'port white',
    );
    const edits = service.panelEdits(uri, at, { kind: 'keep', asked });
    if ('refused' in edits) throw new Error(edits.refused);
    const kept = withEdits(text, edits[0]!.edits);
    expect(kept).toBe(withEdits(text, action![0]!.edits));
    expect(kept).toContain('  water              70%');
    service.setText(uri, kept);
    expect(weighedOf(service.sheet(uri, at, {})!)).toEqual(weighedOf(shown));
  });

  it('a water that is asked for in place of that of the flour, and a flour that takes as much with its water', () => {
    const text = `flour hill white:\n  absorption 58%\n\nflour port white:\n  absorption 58%\n\n${byYield.replace('bread flour        100%', 'hill white         100%')}`;
    const service = serviceWith(text);
    const flour = { from: 'hill white', to: 'port white', sameFeel: true };
    const at = text.split('\n').findIndex((line) => line.startsWith('formula'));
    const same = service.sheet(uri, at, { whatIf: { flour } })!;
    expect([same.whatIf?.water?.tried, same.notDone]).toEqual([0.65, []]);
    expect(service.sheet(uri, at, { whatIf: { flour, water: 0.61 } })?.whatIf?.water?.tried).toBe(0.61);
  });

  it('or nothing of it, with the sentence that says why', () => {
    const service = serviceWith(byYield);
    const ask = (asked: SheetOptions, formula?: string) => {
      const edits = service.panelEdits(uri, 0, { kind: 'keep', asked }, formula);
      return 'refused' in edits ? edits.refused : undefined;
    };
    expect(ask({ size: { by: 'baked', grams: 9000 } })).toMatch(/bake loss/);
    expect(ask({ today: { roomCelsius: 400 } })).toMatch(/no temperature of a bakery/);
    expect(ask({})).toBe('All of it stands in the file as it is.');
    expect(ask({}, 'Gone')).toBeTypeOf('string');
  });
});

const texts = new WeakMap<Service, Map<string, string>>();

function serviceWith(formula: string, itsBakery?: string): Service {
  const service = createService();
  texts.set(service, new Map());
  put(service, uri, formula);
  if (itsBakery !== undefined) put(service, bakeryUri, itsBakery);
  return service;
}

function put(service: Service, file: string, text: string): void {
  texts.get(service)!.set(file, text);
  service.setText(file, text);
}

function textOf(service: Service, file: string): string {
  return texts.get(service)!.get(file)!;
}

function keep(service: Service, asked: SheetOptions): void {
  const files = service.panelEdits(uri, 0, { kind: 'keep', asked });
  if ('refused' in files) throw new Error(files.refused);
  for (const { uri: file, edits } of files) {
    // Refuses what is out of order or overlaps.
    put(service, file, withEdits(textOf(service, file), edits));
  }
}
