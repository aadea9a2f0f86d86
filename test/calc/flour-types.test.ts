import { describe, expect, it } from 'vitest';
import { blendCurve, type FlourData } from '../../core/calc/flour/flour.ts';
import { findCatalogue } from '../../core/catalogue/catalogue.ts';
import { flourTypeOf, flourTypes, mostMoisture, typedFlours } from '../../core/catalogue/flour-types.ts';
import { contextsOf, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

describe('flour types as published', () => {
  // DIN 10355, table at gmf-info.de, mineral g per 100 g dry matter.
  it.each([
    [0.5, 'type 405'],
    [0.51, 'type 550'],
    [0.63, 'type 550'],
    [0.64, 'type 812'],
    [0.9, 'type 812'],
    [0.91, 'type 1050'],
    [1.2, 'type 1050'],
    [1.21, 'type 1600'],
    [1.8, 'type 1600'],
  ])('Germany: %d %% of ash is %s', (ash, name) => {
    expect(flourTypeOf('Germany', 'wheat', ash / 100)?.name).toBe(name);
  });

  // DPR 187/2001 (infofarine.it, laziadona.blogspot.com): most ash, least protein, of the dry matter.
  it.each([
    [0.55, 9, 'type 00'],
    [0.65, 11, 'type 0'],
    [0.95, 12, 'type 2'],
    [1.5, 12, 'integrale'],
  ])('Italy: %d %% of ash and %d %% of protein is %s', (ash, protein, name) => {
    expect(flourTypeOf('Italy', 'wheat', ash / 100, protein / 100)?.name).toBe(name);
  });

  it('Italy: white flour with too little protein for its ash is none', () => {
    expect(flourTypeOf('Italy', 'wheat', 0.0065, 0.1)).toBeUndefined();
  });

  // French type table (cookingtest.club after Wikipedia; paperblog.fr).
  it.each([
    [0.45, 'T45'],
    [0.55, 'T55'],
    [0.7, 'T65'],
    [0.85, 'T80'],
    [1.1, 'T110'],
  ])('France: %d %% of ash is %s', (ash, name) => {
    expect(flourTypeOf('France', 'wheat', ash / 100)?.name).toBe(name);
  });

  // Codex Alimentarius Austriacus (lebensmittelbuch.at).
  it.each([
    ['wheat', 0.45, 'W480'],
    ['wheat', 0.7, 'W700'],
    ['wheat', 1.6, 'W1600'],
    ['rye', 1.0, 'R960'],
    ['rye', 2.5, 'R2500'],
  ] as const)('Austria: %s with %d %% of ash is %s', (grain, ash, name) => {
    expect(flourTypeOf('Austria', grain, ash / 100)?.name).toBe(name);
  });

  // Codex CXS 152-1985, 3.2.1; DPR 187/2001.
  it('moisture has a limit', () => expect(mostMoisture).toEqual({ Codex: 0.155, Italy: 0.145 }));
});

describe('flour types in a formula', () => {
  it('are found by name and alias, and say where each figure is from', () => {
    expect(findCatalogue('tipo 00')?.name).toBe('type 00');
    expect(inWords(findCatalogue('type 550')!.source.publication)).toMatch(
      /DIN 10355.*0\.51% to 0\.63%.*stands in from bread flour/,
    );
    expect(inWords(findCatalogue('rye 1150')!.source.publication)).toContain('from memory');
  });

  it('have ash within their own limits, and parts that make the whole', () => {
    for (const [index, flour] of typedFlours.entries()) {
      const type = flourTypes[index]!;
      const { water, ash, protein, fat, carbohydrate } = flour.composition;
      const ofDry = ash! / (1 - water!);
      expect(ofDry, flour.name).toBeLessThanOrEqual((type.mostAsh ?? 1) + 1e-12);
      expect(ofDry, flour.name).toBeGreaterThanOrEqual((type.leastAsh ?? 0) - 1e-12);
      expect(protein! / (1 - water!), flour.name).toBeGreaterThanOrEqual((type.leastProtein ?? 0) - 1e-12);
      expect(water! + ash! + protein! + fat! + carbohydrate!, flour.name).toBeCloseTo(1, 9);
    }
  });

  it('leave the bands of mixing wider than a stated protein, or a stated curve, does', () => {
    const type = findCatalogue('t45')!.flour!;
    const bandOf = (flour: FlourData) => {
      const curve = blendCurve([{ grams: 1000, flour }]);
      return curve.known
        ? [curve.value.band, curve.value.notes.some(({ code }) => code === 'flour.type-alone')]
        : [];
    };
    expect(bandOf(type)).toEqual([0.3, true]);
    const said = (lines: string): FlourData => {
      const text = `flour T45:\n${lines}\nformula Quay Bun:\n  T45 100%\n  water 60%\n`;
      const files = workspaceOf([{ path: 'a.dough', text }]);
      const tried = contextsOf(files, 'a.dough').find(
        ({ context }) => context.block.top?.kind === 'formula',
      )!;
      return tried.context.analysis!.resolved.ingredients.get('t45')!.flour!;
    };
    expect(bandOf(said('  ash 0.48%\n'))).toEqual([0.3, true]);
    expect(bandOf(said('  protein 12.1%\n'))).toEqual([0.2, false]);
    expect(bandOf(said('  peak 4 min\n  stability 9 min\n'))).toEqual([0.2, false]);
    const other = { ...findCatalogue('bread flour')!.flour! };
    expect(bandOf(other)).toEqual([0.2, false]);
  });
});
