import { message } from '../words/message.ts';
import { type CatalogueIngredient, recalled } from './catalogue-ingredient.ts';

/**
 * What a week of baking takes from the store beside flour, water and salt. These rows were recalled and not read: each says so
 * wherever its figures are shown, and is to be checked against the pack before it stands on a label.
 */
export const pantry: readonly CatalogueIngredient[] = [
  // Fats and oils.
  recalled('shortening', 'fat', [884, 0, 0, 100, 0, 0, 0, 0], {
    aliases: ['vegetable shortening', 'vegetable fat', 'white fat', 'baking fat'],
    saturates: 25,
    densityGramsPerMl: 0.86,
    allergens: [],
  }),
  recalled('margarine', 'fat', [717, 16.5, 0.2, 80.5, 0.8, 0, 2, 700], {
    aliases: ['baking margarine', 'cake margarine', 'pastry margarine'],
    sugars: 0,
    saturates: 16,
    remark: message('food-remark.may-hold-milk'),
    allergensVary: true,
    densityGramsPerMl: 0.95,
    allergens: [],
  }),
  ...(
    [
      ['sunflower oil', ['sunflower seed oil'], 10.3, []],
      ['rapeseed oil', ['canola oil', 'colza oil', 'rape oil', 'vegetable oil'], 7.4, []],
      ['maize oil', ['corn oil'], 13, []],
      ['sesame oil', [], 14.2, ['sesame']],
      ['walnut oil', [], 9.1, ['walnut']],
      ['hazelnut oil', [], 7.4, ['hazelnut']],
      ['groundnut oil', ['peanut oil'], 16.9, ['peanut']],
      ['pumpkin seed oil', [], 18, []],
      ['linseed oil', ['flaxseed oil'], 9, []],
    ] as const
  ).map(([name, aliases, saturates, allergens]) =>
    recalled(name, 'fat', [884, 0, 0, 100, 0, 0, 0, 0], {
      aliases,
      saturates,
      densityGramsPerMl: 0.92,
      allergens,
    }),
  ),
  recalled('coconut oil', 'fat', [892, 0, 0, 100, 0, 0, 0, 0], {
    aliases: ['coconut fat'],
    saturates: 82.5,
    densityGramsPerMl: 0.92,
    allergens: [],
  }),
  recalled('ghee', 'fat', [876, 0.24, 0.28, 99.48, 0, 0, 0, 2], {
    aliases: ['clarified butter', 'butter oil'],
    saturates: 61.9,
    densityGramsPerMl: 0.91,
    allergens: ['milk'],
  }),
  recalled('salted butter', 'fat', [717, 15.87, 0.85, 81.11, 0.06, 0, 2.11, 643], {
    aliases: [],
    sugars: 0.06,
    saturates: 51.368,
    densityGramsPerMl: 0.95,
    allergens: ['milk'],
  }),
  // Starches, husk and acids: none of them is flour.
  recalled('maize starch', 'other', [381, 8.32, 0.26, 0.05, 91.28, 0.9, 0.09, 9], {
    aliases: ['corn starch', 'cornstarch', 'cornflour'],
    sugars: 0,
    densityGramsPerMl: 0.54,
    allergens: [],
  }),
  recalled('potato starch', 'other', [333, 18, 0.1, 0.1, 81.5, 0, 0.3, 4], {
    aliases: [],
    sugars: 0,
    densityGramsPerMl: 0.68,
    allergens: [],
  }),
  recalled('tapioca starch', 'other', [358, 11, 0.2, 0, 88.7, 0.9, 0.1, 1], {
    aliases: ['tapioca flour', 'cassava starch', 'manioc starch'],
    sugars: 3.3,
    densityGramsPerMl: 0.5,
    allergens: [],
  }),
  recalled('wheat starch', 'other', [351, 12, 0.3, 0.1, 87.4, 0, 0.2, 3], {
    aliases: [],
    sugars: 0,
    densityGramsPerMl: 0.55,
    allergens: ['wheat'],
  }),
  recalled('psyllium husk', 'other', [200, 8, 2, 0.5, 86.5, 80, 3, 60], {
    aliases: ['psyllium', 'psyllium husks', 'psyllium husk powder'],
    sugars: 0,
    holdsWater: 12,
    densityGramsPerMl: 0.4,
    allergens: [],
  }),
  recalled('ascorbic acid', 'other', [300, 0, 0, 0, 100, 0, 0, 0], {
    aliases: ['vitamin c', 'vitamin c powder'],
    sugars: 0,
    remark: message('food-remark.acid'),
    allergens: [],
  }),
  recalled('vinegar', 'other', [21, 94, 0, 0, 5.83, 0, 0.17, 5], {
    aliases: ['cider vinegar', 'white vinegar', 'spirit vinegar'],
    sugars: 0.4,
    remark: message('food-remark.acid'),
    densityGramsPerMl: 1.01,
    allergens: [],
  }),
  // Dairy.
  recalled('yoghurt', 'dairy', [61, 87.9, 3.47, 3.25, 4.66, 0, 0.72, 46], {
    aliases: ['yogurt', 'plain yoghurt', 'natural yoghurt', 'plain yogurt'],
    sugars: 4.66,
    saturates: 2.096,
    densityGramsPerMl: 1.03,
    allergens: ['milk'],
  }),
  recalled('buttermilk', 'dairy', [40, 90.13, 3.31, 0.88, 4.79, 0, 0.89, 105], {
    aliases: ['cultured buttermilk'],
    sugars: 4.79,
    saturates: 0.548,
    densityGramsPerMl: 1.03,
    allergens: ['milk'],
  }),
  recalled('semi-skimmed milk', 'dairy', [50, 89.21, 3.3, 1.98, 4.8, 0, 0.71, 47], {
    aliases: ['semi skimmed milk', 'half-fat milk'],
    sugars: 4.8,
    saturates: 1.257,
    densityGramsPerMl: 1.03,
    allergens: ['milk'],
  }),
  recalled('whole milk powder', 'dairy', [496, 2.47, 26.32, 26.71, 38.42, 0, 6.08, 371], {
    aliases: ['dried whole milk', 'full-fat milk powder'],
    sugars: 38.42,
    saturates: 16.74,
    densityGramsPerMl: 0.5,
    allergens: ['milk'],
  }),
  recalled('whey powder', 'dairy', [353, 3.19, 12.93, 1.07, 74.46, 0, 8.35, 1079], {
    aliases: ['sweet whey powder', 'dried whey'],
    sugars: 74.46,
    saturates: 0.684,
    densityGramsPerMl: 0.6,
    allergens: ['milk'],
  }),
  recalled('single cream', 'dairy', [191, 73.75, 2.7, 19.31, 3.66, 0, 0.58, 40], {
    aliases: ['light cream', 'coffee cream'],
    sugars: 3.66,
    saturates: 12.02,
    densityGramsPerMl: 1.01,
    allergens: ['milk'],
  }),
  recalled('sour cream', 'dairy', [198, 73.07, 2.44, 19.35, 4.63, 0, 0.51, 31], {
    aliases: ['soured cream', 'creme fraiche', 'crème fraîche'],
    sugars: 3.41,
    saturates: 10.14,
    densityGramsPerMl: 1.01,
    allergens: ['milk'],
  }),
  recalled('condensed milk', 'dairy', [321, 27.16, 7.91, 8.7, 54.4, 0, 1.83, 127], {
    aliases: ['sweetened condensed milk'],
    sugars: 54.4,
    saturates: 5.486,
    densityGramsPerMl: 1.29,
    allergens: ['milk'],
  }),
  recalled('cream cheese', 'dairy', [350, 52.62, 6.15, 34.44, 5.52, 0, 1.27, 314], {
    aliases: ['soft cheese'],
    sugars: 3.76,
    saturates: 20.2,
    allergens: ['milk'],
  }),
  recalled('cheddar', 'dairy', [403, 36.75, 24.9, 33.14, 1.28, 0, 3.93, 621], {
    aliases: ['cheddar cheese', 'hard cheese', 'grated cheese', 'cheese'],
    sugars: 0.52,
    saturates: 21.09,
    densityGramsPerMl: 0.45,
    allergens: ['milk'],
  }),
  recalled('mozzarella', 'dairy', [300, 50.01, 22.17, 22.35, 2.19, 0, 3.28, 627], {
    aliases: [],
    sugars: 1.03,
    saturates: 13.15,
    allergens: ['milk'],
  }),
  // Spices and flavours.
  ...(
    [
      ['cinnamon', ['ground cinnamon'], [247, 10.58, 3.99, 1.24, 80.59, 53.1, 3.6, 10], undefined],
      [
        'mixed spice',
        ['spice', 'spices', 'gingerbread spice'],
        [247, 10.58, 3.99, 1.24, 80.59, 53.1, 3.6, 10],
        message('food-remark.cinnamon'),
      ],
      ['cardamom', ['ground cardamom'], [311, 8.28, 10.76, 6.7, 68.48, 28, 5.78, 18], undefined],
      ['nutmeg', ['ground nutmeg', 'mace'], [525, 6.23, 5.84, 36.31, 49.28, 20.8, 2.34, 16], undefined],
      ['fennel seed', ['fennel', 'fennel seeds'], [345, 8.81, 15.8, 14.87, 52.3, 39.8, 8.22, 88], undefined],
      ['aniseed', ['anise', 'anise seed'], [337, 9.54, 17.6, 15.9, 50.01, 14.6, 6.95, 16], undefined],
      [
        'coriander seed',
        ['coriander', 'ground coriander', 'coriander seeds'],
        [298, 8.86, 12.37, 17.77, 54.98, 41.9, 6.02, 35],
        undefined,
      ],
      [
        'bread spice',
        ['rye spice'],
        [298, 8.86, 12.37, 17.77, 54.98, 41.9, 6.02, 35],
        message('food-remark.coriander'),
      ],
    ] as const
  ).map(([name, aliases, row, remark]) =>
    recalled(name, 'other', row, {
      aliases,
      ...(remark === undefined ? {} : { remark }),
      densityGramsPerMl: 0.45,
      allergens: [],
    }),
  ),
  recalled('vanilla extract', 'other', [288, 52.58, 0.06, 0.06, 12.65, 0, 0.26, 9], {
    aliases: ['vanilla', 'vanilla essence'],
    alcohol: 34.39,
    sugars: 12.65,
    saturates: 0.01,
    densityGramsPerMl: 0.88,
    allergens: [],
  }),
  recalled('rum', 'other', [231, 66.6, 0, 0, 0, 0, 0, 1], {
    aliases: ['dark rum', 'white rum', 'brandy', 'kirsch'],
    alcohol: 33.4,
    remark: message('food-remark.spirit', { fraction: 0.4 }),
    densityGramsPerMl: 0.95,
    allergens: [],
  }),
  recalled('beer', 'other', [43, 91.96, 0.46, 0, 3.53, 0, 0.16, 4], {
    aliases: ['ale', 'stout', 'lager'],
    alcohol: 3.89,
    sugars: 0,
    densityGramsPerMl: 1.01,
    allergens: ['barley'],
  }),
  // Sugars and syrups.
  recalled('icing sugar', 'sugar', [389, 0.23, 0, 0, 99.77, 0, 0, 2], {
    aliases: ['powdered sugar', "confectioners' sugar"],
    sugars: 97.81,
    densityGramsPerMl: 0.5,
    allergens: [],
  }),
  recalled('golden syrup', 'sugar', [298, 20, 0.3, 0, 78.7, 0, 1, 270], {
    aliases: ['sugar syrup', 'light syrup', 'invert syrup'],
    sugars: 78.7,
    densityGramsPerMl: 1.43,
    allergens: [],
  }),
  recalled('glucose syrup', 'sugar', [318, 20, 0, 0, 79.9, 0, 0.1, 40], {
    aliases: ['glucose', 'corn syrup'],
    sugars: 30,
    densityGramsPerMl: 1.41,
    allergens: [],
  }),
  recalled('maple syrup', 'sugar', [260, 32.39, 0.04, 0.06, 67.04, 0, 0.47, 12], {
    aliases: [],
    sugars: 60.46,
    saturates: 0.007,
    densityGramsPerMl: 1.32,
    allergens: [],
  }),
];
