import type { Composition } from '../../calc/formula/composition.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import { propertiesOf } from '../../model/properties.ts';
import { firstOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

type Part = keyof Composition & string;

/** What makes the whole of a food, and what is a share of one of these. */
const wholes: readonly Part[] = ['water', 'protein', 'fat', 'carbohydrate', 'ash', 'alcohol'];
const insides: readonly (readonly [inside: Part, whole: Part])[] = [
  ['saturates', 'fat'],
  ['sugars', 'carbohydrate'],
  ['starch', 'carbohydrate'],
  ['fibre', 'carbohydrate'],
];
/** Rounding and different methods leave room between a food’s parts and its hundred grams. */
const slack = 0.02;

export const partsAboveWhole: Rule = {
  code: 'parts-above-whole',
  level: 'warning',
  title: 'What a food is made of is more than all of it',
  explanation:
    'Water, protein, fat, carbohydrate and ash make the whole of a food; saturates are part of its fat, sugars, starch and fibre part of its carbohydrate, ' +
    'which is meant with its fibre. Two percent are left for rounding. What is more than that is a slip, and would put wrong figures on the label.',
  bad: 'ingredient dock paste:\n  fat 60%\n  protein 55%\n',
  good: 'ingredient dock paste:\n  fat 60%\n  protein 5.5%\n',
  *check({ block, scope }) {
    const { top } = block;
    if ((top?.kind !== 'flour' && top?.kind !== 'ingredient') || top.header.name === undefined) return;
    const said = propertiesOf(block, top);
    const found = findIngredient(top.header.name, scope);
    if (found.kind !== 'found' || found.ingredient.definition?.block !== block) return;
    const { composition } = found.ingredient;
    const placeOf = (part: Part) => {
      const line = said.get(part)?.[0]?.line;
      return line === undefined ? headerPlace(block, top.headerLine) : { line, span: wordsOf(block, line) };
    };
    const told = wholes.flatMap((part) => {
      const share = composition[part] ?? 0;
      return share > 0 ? [{ part, share }] : [];
    });
    const sum = told.reduce((all, { share }) => all + share, 0);
    const own = told.filter(({ part }) => said.has(part));
    if (sum > 1 + slack && own.length > 0) {
      const largest = own.reduce((one, other) => (other.share > one.share ? other : one));
      const parts = told.map(({ part, share }) =>
        message('parts-above-whole.share', { property: part, fraction: share }),
      );
      yield {
        ...placeOf(largest.part),
        message: message('parts-above-whole.sum', { name: found.ingredient.name, fraction: sum, parts }),
      };
      return;
    }
    for (const [inside, whole] of insides) {
      const [share, all] = [composition[inside], composition[whole]];
      if (share === undefined || all === undefined || share <= all + slack) continue;
      if (own.length === 0 && !said.has(inside)) continue;
      yield {
        ...placeOf(said.has(inside) ? inside : said.has(whole) ? whole : firstOf(own).part),
        message: message('parts-above-whole.inside', {
          property: inside,
          fraction: share,
          otherProperty: whole,
          limitFraction: all,
        }),
      };
    }
  },
};
