import { pantryNamesAbroad } from './pantry-names-abroad.ts';
import { type NamesAbroad, said } from './tongue.ts';

/**
 * What bakers of other languages call the ingredients of the catalogue. One table for whoever looks a name up: formulas, and
 * tables that are imported. Common practice of the trade, no source.
 */

/** Names that mean one ingredient and no other. */
export const namesAbroad: NamesAbroad = {
  ...pantryNamesAbroad,
  water: said(
    'Wasser, Leitungswasser, Schüttwasser',
    'eau, eau du robinet',
    'acqua, acqua di rubinetto',
    'agua, agua del grifo',
  ),
  ice: said('Eis, Scherbeneis, Flockeneis', 'glace, glace pilée', 'ghiaccio', 'hielo'),
  salt: said('Salz, Speisesalz, Meersalz', 'sel, sel fin, sel de mer', 'sale, sale fino', 'sal, sal marina'),
  'fresh yeast': said(
    'Frischhefe, Backhefe, Presshefe, Hefe frisch',
    'levure fraîche, levure boulangère, levure de boulanger',
    'lievito fresco, lievito di birra, lievito di birra fresco',
    'levadura fresca, levadura prensada',
  ),
  'active dry yeast': said(
    'Trockenhefe, aktive Trockenhefe',
    'levure sèche, levure sèche active',
    'lievito secco, lievito di birra secco',
    'levadura seca, levadura seca activa',
  ),
  'instant yeast': said(
    'Instanthefe, Instant-Trockenhefe',
    'levure instantanée, levure sèche instantanée',
    'lievito istantaneo, lievito secco istantaneo',
    'levadura instantánea, levadura seca instantánea',
  ),
  butter: said('Süßrahmbutter', 'beurre, beurre doux', 'burro', 'mantequilla'),
  'olive oil': said(
    'Olivenöl, natives Olivenöl, natives Olivenöl extra',
    "huile d'olive, huile d'olive vierge, huile d'olive vierge extra",
    "olio d'oliva, olio di oliva, olio extravergine d'oliva, olio extravergine di oliva, olio evo",
    'aceite de oliva, aceite de oliva virgen, aceite de oliva virgen extra',
  ),
  lard: said('Schweineschmalz, Schmalz', 'saindoux', 'strutto', 'manteca de cerdo'),
  sugar: said(
    'Zucker, Haushaltszucker, Kristallzucker',
    'sucre, sucre blanc',
    'zucchero, zucchero semolato',
    'azúcar, azúcar blanco',
  ),
  'brown sugar': said('Braunzucker, brauner Zucker', 'sucre brun', 'zucchero di canna', 'azúcar moreno'),
  honey: said('Honig, Bienenhonig', 'miel', 'miele', 'miel de abeja'),
  molasses: said('Melasse', 'mélasse', 'melassa', 'melaza'),
  'malt syrup': said(
    'Malzsirup, Malzextrakt, Gerstenmalzextrakt',
    'sirop de malt, extrait de malt',
    'sciroppo di malto, estratto di malto',
    'jarabe de malta, extracto de malta',
  ),
  egg: said('Ei, Eier, Vollei', 'œuf, œufs, oeuf, oeufs', 'uovo, uova', 'huevo, huevos'),
  'egg white': said(
    'Eiweiß, Eiklar',
    "blanc d'œuf, blancs d'œufs, blanc d'oeuf",
    'albume, albumi',
    'clara de huevo',
  ),
  'egg yolk': said(
    'Eigelb, Eidotter',
    "jaune d'œuf, jaunes d'œufs, jaune d'oeuf",
    'tuorlo, tuorli',
    'yema, yemas',
  ),
  'whole milk': said('Milch, Vollmilch', 'lait, lait entier', 'latte, latte intero', 'leche, leche entera'),
  'skimmed milk': said('Magermilch', 'lait écrémé', 'latte scremato', 'leche desnatada'),
  'skimmed milk powder': said(
    'Milchpulver, Magermilchpulver',
    'poudre de lait, lait en poudre',
    'latte in polvere',
    'leche en polvo',
  ),
  cream: said('Sahne, Schlagsahne, Obers, Rahm', 'crème, crème entière', 'panna', 'nata'),

  sesame: said('Sesam, Sesamsaat', 'sésame, graines de sésame', 'sesamo, semi di sesamo', 'sésamo'),
  'sunflower seed': said(
    'Sonnenblumenkerne, Sonnenblumenkern',
    'graines de tournesol',
    'semi di girasole',
    'pipas de girasol, semillas de girasol',
  ),
  linseed: said('Leinsamen, Leinsaat', 'graines de lin, lin', 'semi di lino', 'semillas de lino, linaza'),
  'pumpkin seed': said(
    'Kürbiskerne, Kürbiskern',
    'graines de courge',
    'semi di zucca',
    'pipas de calabaza, semillas de calabaza',
  ),
  'poppy seed': said('Mohn, Blaumohn', 'graines de pavot, pavot', 'semi di papavero', 'semillas de amapola'),
  caraway: said('Kümmel', 'graines de carvi, carvi', 'cumino dei prati', 'alcaravea'),
  'rolled oats': said(
    'Haferflocken',
    "flocons d'avoine",
    "fiocchi d'avena, fiocchi di avena",
    'copos de avena',
  ),
  'wheat bran': said('Weizenkleie, Kleie', 'son de blé', 'crusca di frumento, crusca', 'salvado de trigo'),
  'wheat germ': said('Weizenkeime', 'germe de blé', 'germe di grano', 'germen de trigo'),
  'wheat gluten': said(
    'Weizenkleber, Weizengluten',
    'gluten de blé',
    'glutine di frumento',
    'gluten de trigo',
  ),
  'barley malt flour': said(
    'Backmalz, Malzmehl, Gerstenmalzmehl',
    "farine de malt, farine de malt d'orge",
    'farina di malto, malto in polvere',
    'harina de malta',
  ),
  raisins: said('Rosinen', 'raisins secs', 'uvetta', 'pasas, uvas pasas'),
  potato: said(
    'Kartoffel, Kartoffeln, Erdäpfel',
    'pomme de terre, pommes de terre',
    'patata, patate',
    'patatas',
  ),
  walnut: said('Walnuss, Walnüsse', 'noix, cerneaux de noix', 'noci', 'nuez, nueces'),
  hazelnut: said('Haselnuss, Haselnüsse', 'noisette, noisettes', 'nocciole', 'avellana, avellanas'),
  almond: said('Mandel, Mandeln', 'amande, amandes', 'mandorla, mandorle', 'almendra, almendras'),
  'cocoa powder': said('Kakao, Kakaopulver', 'cacao en poudre', 'cacao in polvere', 'cacao en polvo'),

  'plain flour': said('Haushaltsmehl', 'farine ordinaire', 'farina per tutti gli usi', 'harina común'),
  'very strong flour': said(
    'Manitobamehl, kleberstarkes Weizenmehl',
    'farine de gruau',
    'farina manitoba',
    'harina de gran fuerza',
  ),
  'cake flour': said(
    'Kuchenmehl, Konditormehl',
    'farine pâtissière, farine à gâteaux',
    'farina per dolci',
    'harina floja, harina de repostería',
  ),
  'soft wholemeal wheat': said(
    'kleberschwaches Weizenvollkornmehl',
    'farine complète pâtissière',
    'farina integrale per dolci',
    'harina integral floja, harina integral de repostería',
  ),
  'light rye': said(
    'helles Roggenmehl, Roggenmehl hell',
    'farine de seigle blanche, farine de seigle claire',
    'farina di segale bianca, farina di segale chiara',
    'harina de centeno blanca, harina de centeno clara',
  ),
  'wholemeal wheat': said(
    'Weizenvollkornmehl, Weizenvollkorn, Vollkornweizenmehl',
    'farine de blé complet, farine de blé complète, blé complet',
    'farina integrale di frumento, farina integrale di grano',
    'harina integral de trigo, harina de trigo integral, trigo integral',
  ),
  'wholemeal rye': said(
    'Roggenvollkornmehl, Roggenvollkorn, Vollkornroggenmehl',
    'farine de seigle complète, farine de seigle intégrale, seigle intégral, seigle complet',
    'farina di segale integrale, segale integrale',
    'harina de centeno integral, harina integral de centeno, centeno integral',
  ),
  'wholemeal spelt': said(
    'Dinkelvollkornmehl, Dinkelvollkorn, Vollkorndinkelmehl',
    "farine d'épeautre complète, farine intégrale d'épeautre",
    'farina di farro integrale, farina integrale di farro',
    'harina de espelta integral, harina integral de espelta',
  ),
  khorasan: said(
    'Khorasanmehl, Khorasanweizen',
    'farine de khorasan',
    'farina di khorasan',
    'harina de khorasan',
  ),
  semolina: said(
    'Hartweizengrieß, Hartweizenmehl',
    'semoule de blé dur',
    'semola, semola di grano duro',
    'sémola, sémola de trigo duro',
  ),
  'barley flour': said('Gerstenmehl', "farine d'orge", "farina d'orzo, farina di orzo", 'harina de cebada'),
  'buckwheat flour': said(
    'Buchweizenmehl, Buchweizen',
    'farine de sarrasin, sarrasin',
    'farina di grano saraceno, grano saraceno',
    'harina de trigo sarraceno, trigo sarraceno',
  ),
  'rice flour': said('Reismehl', 'farine de riz', 'farina di riso', 'harina de arroz'),
  cornmeal: said('Maismehl', 'farine de maïs', 'farina di mais', 'harina de maíz'),
};

/**
 * Names that leave something open and are taken for the usual one, as *yeast*, *oil* and *wheat flour* are in English. Found
 * like any other; an import says that it took them so.
 */
export const looseNamesAbroad: NamesAbroad = {
  'fresh yeast': said('Hefe', 'levure', 'lievito', 'levadura'),
  'olive oil': said('Öl', 'huile', 'olio', 'aceite'),
  'barley malt flour': said('Malz', "malt d'orge", 'malto', 'malta'),
  'bread flour': said(
    'Weizenmehl',
    'farine de blé, farine de froment',
    'farina di frumento, farina di grano tenero',
    'harina de trigo, harina de fuerza, harina panificable',
  ),
  'wholemeal wheat': said('Vollkornmehl', 'farine complète', '', 'harina integral'),
  'medium rye': said(
    'Roggenmehl',
    'farine de seigle, seigle',
    'farina di segale, segale',
    'harina de centeno, centeno',
  ),
  'wholemeal spelt': said(
    'Dinkelmehl, Dinkel',
    "farine d'épeautre, épeautre, grand épeautre",
    'farina di farro, farro',
    'harina de espelta, espelta',
  ),
};

/** Words for flour of whatever kind. They name no ingredient; an import takes them for bread flour and says so. */
export const anyFlourAbroad: readonly string[] = ['Mehl', 'farine', 'farina', 'harina'];
