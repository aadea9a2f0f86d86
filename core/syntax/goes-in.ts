/** Names that a line of a mix may say alone for what goes in: roles, and what nearly every bakery has. Common practice, no source. */
const alone =
  /^(?:the )?(?:(?:all|remaining|rest of the) )?(?:flours?|water|salt|(?:fresh |dry |instant )?yeast|fat|butter|oil|olive oil|sugar|eggs?|milk|malt|honey|levain|leaven|starter|poolish|biga|sponge|sour|old dough|preferment|soaker|scald|seeds|bassinage(?: water)?)$/i;

/** Whether a name alone on a line of a mix says that it goes in. */
export function goesInAlone(name: string): boolean {
  return alone.test(name);
}
