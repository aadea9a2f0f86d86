import { message } from '../words/message.ts';
import { type CatalogueIngredient, usda } from './catalogue-ingredient.ts';

/** Seeds, nuts, fruit, bran, malt and the like that are known without being defined in a file. */
export const additions: readonly CatalogueIngredient[] = [
  usda('sesame', 'seeds', '12023', [573, 4.69, 17.73, 49.67, 23.45, 11.8, 4.45, 11], {
    aliases: ['sesame seed', 'sesame seeds'],
    sugars: 0.3,
    saturates: 6.957,
    densityGramsPerMl: 0.6,
    holdsWater: 0.5,
    allergens: ['sesame'],
  }),
  usda('sunflower seed', 'seeds', '12036', [584, 4.73, 20.78, 51.46, 20, 8.6, 3.02, 9], {
    aliases: ['sunflower seeds', 'sunflower'],
    sugars: 2.62,
    saturates: 4.455,
    densityGramsPerMl: 0.58,
    holdsWater: 0.5,
    allergens: [],
  }),
  usda('linseed', 'seeds', '12220', [534, 6.96, 18.29, 42.16, 28.88, 27.3, 3.72, 30], {
    aliases: ['linseeds', 'flax', 'flaxseed', 'flax seed', 'flax seeds'],
    sugars: 1.55,
    saturates: 3.663,
    fromMemory: ['saturates', 'sugars'],
    densityGramsPerMl: 0.7,
    holdsWater: 1.5,
    allergens: [],
  }),
  usda('pumpkin seed', 'seeds', '12014', [559, 5.23, 30.23, 49.05, 10.71, 6, 4.78, 7], {
    aliases: ['pumpkin seeds'],
    sugars: 1.4,
    saturates: 8.659,
    densityGramsPerMl: 0.54,
    holdsWater: 0.4,
    allergens: [],
  }),
  usda('poppy seed', 'seeds', '02033', [525, 5.95, 17.99, 41.56, 28.13, 19.5, 6.37, 26], {
    aliases: ['poppy', 'poppy seeds'],
    densityGramsPerMl: 0.6,
    holdsWater: 0.8,
    allergens: [],
  }),
  usda('caraway', 'seeds', '02005', [333, 9.87, 19.77, 14.59, 49.9, 38, 5.87, 17], {
    aliases: ['caraway seed', 'caraway seeds'],
    densityGramsPerMl: 0.45,
    allergens: [],
  }),
  usda('rolled oats', 'seeds', '08120', [379, 10.84, 13.15, 6.52, 67.7, 10.1, 1.77, 6], {
    aliases: ['oats', 'oat flakes', 'porridge oats'],
    densityGramsPerMl: 0.38,
    holdsWater: 1.2,
    allergens: ['oats'],
  }),
  usda('wheat bran', 'other', '20077', [216, 9.89, 15.55, 4.25, 64.51, 42.8, 5.79, 2], {
    aliases: ['bran'],
    sugars: 0.41,
    saturates: 0.63,
    densityGramsPerMl: 0.25,
    holdsWater: 2,
    allergens: ['wheat'],
  }),
  usda('wheat germ', 'other', '20078', [360, 11.12, 23.15, 9.72, 51.8, 13.2, 4.21, 12], {
    aliases: ['wheatgerm', 'germ'],
    saturates: 1.665,
    densityGramsPerMl: 0.48,
    allergens: ['wheat'],
  }),
  usda('wheat gluten', 'other', '48052', [370, 8.2, 75.16, 1.85, 13.79, 0.6, 1, 29], {
    aliases: ['gluten', 'vital gluten', 'vital wheat gluten'],
    densityGramsPerMl: 0.55,
    allergens: ['wheat'],
  }),
  usda('barley malt flour', 'other', '20131', [361, 8.21, 10.28, 1.84, 78.3, 7.1, 1.37, 11], {
    aliases: ['malt flour', 'malted barley flour', 'diastatic malt', 'malt'],
    sugars: 0.8,
    saturates: 0.386,
    densityGramsPerMl: 0.68,
    allergens: ['barley'],
  }),
  usda('raisins', 'other', '09298', [299, 15.43, 3.07, 0.46, 79.18, 3.7, 1.85, 11], {
    aliases: ['raisin', 'seedless raisins'],
    densityGramsPerMl: 0.65,
    holdsWater: 0.3,
    allergens: [],
  }),
  usda('potato', 'other', '11352', [77, 79.34, 2.02, 0.09, 17.47, 2.2, 1.08, 6], {
    aliases: ['potatoes'],
    remark: message('food-remark.raw-with-skin'),
    allergens: [],
  }),
  usda('walnut', 'other', '12155', [654, 4.07, 15.23, 65.21, 13.71, 6.7, 1.78, 2], {
    aliases: ['walnuts', 'walnut pieces'],
    densityGramsPerMl: 0.45,
    allergens: ['walnut'],
  }),
  usda('hazelnut', 'other', '12120', [628, 5.31, 14.95, 60.75, 16.7, 9.7, 2.29, 0], {
    aliases: ['hazelnuts'],
    densityGramsPerMl: 0.55,
    allergens: ['hazelnut'],
  }),
  usda('almond', 'other', '12061', [579, 4.41, 21.15, 49.93, 21.55, 12.5, 2.97, 1], {
    aliases: ['almonds', 'ground almonds', 'flaked almonds'],
    densityGramsPerMl: 0.6,
    allergens: ['almond'],
  }),
  usda('cocoa powder', 'other', '19165', [228, 3, 19.6, 13.7, 57.9, 37, 5.8, 21], {
    aliases: ['cocoa'],
    densityGramsPerMl: 0.42,
    allergens: [],
  }),
];
