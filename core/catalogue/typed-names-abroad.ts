import type { FlourType, TypeCountry } from './flour-types.ts';
import type { Tongue } from './names-abroad.ts';

/** The language that the names of a country’s types are in. */
export const tongueOf: Readonly<Record<TypeCountry, Tongue>> = {
  Germany: 'de',
  Austria: 'de',
  France: 'fr',
  Italy: 'it',
};

const german = { wheat: 'Weizen', rye: 'Roggen', spelt: 'Dinkel' } as const;

/**
 * What the bakers of a country write for one of its flour types, beside the names that the type has itself: `Weizenmehl 550`,
 * `Weizenmehl Type 550`, `farine de blé T65`, `farina tipo 00`. Common practice of the trade, no source.
 */
export function typedNamesAbroad({ country, name, grain }: FlourType): readonly string[] {
  const type = name.replace(/^(?:type|rye|spelt) /, '');
  switch (country) {
    case 'Germany':
      return [
        `${german[grain]}mehl ${type}`,
        `${german[grain]}mehl Type ${type}`,
        `${german[grain]} ${type}`,
      ];
    case 'Austria':
      return [`${german[grain]}mehl ${type}`, `${german[grain]}mehl Type ${type}`];
    case 'France': {
      const flours =
        grain === 'rye' ? ['farine de seigle'] : ['farine', 'farine de blé', 'farine de froment'];
      const number = type.slice(1);
      return flours.flatMap((flour) => [`${flour} ${type}`, `${flour} type ${number}`, `${flour} ${number}`]);
    }
    case 'Italy':
      return ['farina di grano tenero', 'farina di frumento']
        .flatMap((flour) =>
          type === 'integrale' ? [`${flour} ${type}`] : [`${flour} tipo ${type}`, `${flour} ${type}`],
        )
        .concat(type === 'integrale' ? [] : [`farina tipo ${type}`]);
  }
}
