import type { FlourType, TypeCountry } from './flour-types.ts';
import type { Tongue } from './tongue.ts';

/** The language that the names of a country’s types are in. */
export const tongueOf: Readonly<Record<TypeCountry, Tongue>> = {
  Germany: 'de',
  Austria: 'de',
  France: 'fr',
  Italy: 'it',
};

const german = { wheat: 'Weizen', rye: 'Roggen', spelt: 'Dinkel' } as const;
/** What a flour of a grain is called before its type, the usual name first. */
const flours: Readonly<Record<Tongue, Readonly<Record<FlourType['grain'], readonly string[]>>>> = {
  de: { wheat: ['Weizenmehl'], rye: ['Roggenmehl'], spelt: ['Dinkelmehl'] },
  fr: {
    wheat: ['farine de blé', 'farine', 'farine de froment'],
    rye: ['farine de seigle'],
    spelt: ["farine d'épeautre"],
  },
  it: {
    wheat: ['farina di grano tenero', 'farina di frumento'],
    rye: ['farina di segale'],
    spelt: ['farina di farro'],
  },
  es: { wheat: ['harina de trigo'], rye: ['harina de centeno'], spelt: ['harina de espelta'] },
};

/**
 * What bakers write for a flour type, beside the names that the type has itself: in the language of its country
 * `Weizenmehl 550`, `Weizenmehl Type 550`, `farine de blé T65`, `farina tipo 00`; in another their word for the flour and the
 * type as its country writes it, `harina de trigo T65`. Common practice of the trade, no source.
 */
export function typedNamesAbroad(type: FlourType, tongue: Tongue): readonly string[] {
  return tongue === tongueOf[type.country] ? namesAtHome(type) : namesElsewhere(type, tongue);
}

const bare = ({ name }: FlourType): string => name.replace(/^(?:type|rye|spelt) /, '');

function namesAtHome(flour: FlourType): readonly string[] {
  const { country, grain } = flour;
  const type = bare(flour);
  const of = flours[tongueOf[country]][grain];
  switch (country) {
    case 'Germany':
      return of.flatMap((name) => [`${name} ${type}`, `${name} Type ${type}`, `${german[grain]} ${type}`]);
    case 'Austria':
      return of.flatMap((name) => [`${name} ${type}`, `${name} Type ${type}`]);
    case 'France':
      return of.flatMap((name) => [
        `${name} ${type}`,
        ...[`type ${type.slice(1)}`, type.slice(1)].map((number) => `${name} ${number}`),
      ]);
    case 'Italy':
      if (type === 'integrale') return of.map((name) => `${name} ${type}`);
      return [...of.flatMap((name) => [`${name} tipo ${type}`, `${name} ${type}`]), `farina tipo ${type}`];
  }
}

/** The type as its own country writes it, behind the word for the flour. */
function namesElsewhere(flour: FlourType, tongue: Tongue): readonly string[] {
  const type = bare(flour);
  const [name] = flours[tongue][flour.grain];
  if (type === 'integrale') return [`${name} ${type}`];
  const words = { Germany: 'type ', Italy: 'tipo ', France: '', Austria: '' };
  return [`${name} ${words[flour.country]}${type}`];
}
