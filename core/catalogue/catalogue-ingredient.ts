import type { FlourData } from '../calc/flour/flour.ts';
import type { Composition } from '../calc/formula/composition.ts';
import type { Role } from '../calc/formula/role.ts';
import { type Message, message } from '../words/message.ts';

/** The publication a row of the catalogue was taken from. */
export interface CatalogueSource {
  readonly publication: Message;
  /** The food’s number in that publication; empty where it has none. */
  readonly identifier: string;
  /** Properties recalled from memory instead of read; they are to be checked before they stand on a label. */
  readonly fromMemory?: readonly (keyof Composition)[];
  /** What is to be said of the row, such as that a related food stands in. */
  readonly remark?: Message;
}

/** An ingredient that is known without being defined in a file. */
export interface CatalogueIngredient {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly role: Role;
  readonly composition: Composition;
  readonly kilocaloriesPer100Grams?: number;
  readonly source: CatalogueSource;
  readonly flour?: FlourData;
  /** Common practice: what one piece weighs as used, grams. */
  readonly pieceGrams?: number;
  /** Common practice: how heavy a millilitre is as it is spooned or poured, grams. */
  readonly densityGramsPerMl?: number;
  /** Common practice: water that it binds when soaked, times its own mass. */
  readonly holdsWater?: number;
  /** Its water is ice, at 0 °C unless it is said colder. */
  readonly frozen?: true;
  /** Allergens in it, by the words of Annex II of Regulation (EU) 1169/2011, singular. */
  readonly allergens: readonly string[];
  /** Makers differ in what else is in it: nothing is said of its allergens, and the pack is to be read. */
  readonly allergensVary?: true;
}

/** A row of USDA figures per 100 g: kcal, water, protein, fat, carbohydrate with fibre, fibre, ash, sodium in mg. */
export type UsdaRow = readonly [number, number, number, number, number, number, number, number];

/** The rest of an ingredient, beside what the table of the USDA says of it. */
export type Rest = Omit<
  CatalogueIngredient,
  'name' | 'role' | 'composition' | 'kilocaloriesPer100Grams' | 'source' | 'flour'
> & {
  /** Grams per 100 g. */
  readonly sugars?: number;
  readonly saturates?: number;
  readonly fromMemory?: readonly (keyof Composition)[];
  readonly remark?: Message;
  readonly flour?: Pick<FlourData, 'grain' | 'milling'>;
};

/** An ingredient whose row was recalled and not read; alcohol is what the row leaves of 100 g. */
export function recalled(
  name: string,
  role: Role,
  row: UsdaRow,
  { alcohol, ...rest }: Rest & { readonly alcohol?: number },
): CatalogueIngredient {
  const made = usda(name, role, '', row, rest);
  const { remark } = made.source;
  return {
    ...made,
    composition: { ...made.composition, ...(alcohol === undefined ? {} : { alcohol: alcohol / 100 }) },
    source: {
      publication: message('food-source.recalled'),
      identifier: '',
      ...(remark === undefined ? {} : { remark }),
    },
  };
}

/** Builds an ingredient from a row of the USDA National Nutrient Database, release 27, which is in the public domain. */
export function usda(name: string, role: Role, ndb: string, row: UsdaRow, rest: Rest): CatalogueIngredient {
  const [kilocalories, water, protein, fat, carbohydrate, fibre, ash, sodiumMilligrams] = row;
  const { sugars, saturates, fromMemory, remark, flour, ...others } = rest;
  const told = {
    // Nothing can be sugar where there is no carbohydrate, nor saturated where there is no fat.
    sugars: sugars ?? (carbohydrate === 0 ? 0 : undefined),
    saturates: saturates ?? (fat === 0 ? 0 : undefined),
  };
  const identifier = `NDB ${ndb}`;
  const source: CatalogueSource = {
    publication: message('food-source.usda', { code: identifier }),
    identifier,
    ...(fromMemory === undefined ? {} : { fromMemory }),
    ...(remark === undefined ? {} : { remark }),
  };
  const composition: Composition = {
    water: water / 100,
    protein: protein / 100,
    fat: fat / 100,
    carbohydrate: carbohydrate / 100,
    fibre: fibre / 100,
    ash: ash / 100,
    // Salt on a label is sodium times 2.5 (Regulation (EU) 1169/2011, Annex I).
    saltFraction: (sodiumMilligrams * 2.5) / 100_000,
    ...(told.sugars === undefined ? {} : { sugars: told.sugars / 100 }),
    ...(told.saturates === undefined ? {} : { saturates: told.saturates / 100 }),
  };
  return {
    name,
    role,
    composition,
    kilocaloriesPer100Grams: kilocalories,
    source,
    ...others,
    ...(flour === undefined
      ? {}
      : {
          flour: {
            ...flour,
            protein: protein / 100,
            moisture: water / 100,
            ash: ash / 100,
            provenance: 'published' as const,
          },
        }),
  };
}
