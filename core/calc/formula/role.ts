/** What an ingredient is for in a dough; a role may stand in a file where a name may. */
export type Role =
  | 'flour'
  | 'water'
  | 'salt'
  | 'yeast'
  | 'fat'
  | 'sugar'
  | 'egg'
  | 'dairy'
  | 'seeds'
  | 'other';
