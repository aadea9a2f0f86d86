/**
 * Bread formulas for tree-sitter. A section's header stands at the margin and its lines stand in, as the formatter writes them;
 * which words begin a line of a section comes from the vocabulary: what stands between the two marks below is written by
 * `npm run generate`. No scanner of its own: `tree-sitter generate` makes the whole parser from this file.
 */

// <vocabulary>
const sections = { "top": [ "formula", "flour", "ingredient", "mixer", "bakery", "plan", "experiment" ], "below": [ "preferment", "soaker", "scald", "part", "filling", "topping", "bath", "mix", "process", "trial" ] };
const lines = { "formula": { "holds": "ingredient_line", "properties": [ [ "yield", "value", [ "baked", "from", "of" ] ], [ "loss", "value", [] ], [ "bake loss", "value", [] ], [ "dough temperature", "value", [] ], [ "oven load", "value", [] ], [ "form", "value", [] ], [ "ripe culture", "value", [] ], [ "ferment", "value", [ "at" ] ], [ "hold", "value", [ "at" ] ], [ "keep back", "value", [] ], [ "without", "value", [] ], [ "note", "note", [] ] ] }, "flour": { "properties": [ [ "grain", "value", [] ], [ "milling", "value", [] ], [ "moisture", "value", [] ], [ "absorption", "value", [] ], [ "starch damage", "value", [] ], [ "peak", "value", [] ], [ "stability", "value", [] ], [ "water", "value", [] ], [ "protein", "value", [ "at", "moisture" ] ], [ "fat", "value", [] ], [ "saturates", "value", [] ], [ "carbohydrate", "value", [] ], [ "sugars", "value", [] ], [ "starch", "value", [] ], [ "fibre", "value", [] ], [ "salt", "value", [] ], [ "ash", "value", [ "at", "moisture" ] ], [ "alcohol", "value", [] ], [ "energy", "value", [] ], [ "contains", "value", [] ], [ "counts as", "value", [] ], [ "density", "value", [] ], [ "piece weight", "value", [] ], [ "price", "price", [] ], [ "holds water", "value", [] ], [ "like", "value", [] ], [ "note", "note", [] ] ] }, "ingredient": { "properties": [ [ "water", "value", [] ], [ "protein", "value", [ "at", "moisture" ] ], [ "fat", "value", [] ], [ "saturates", "value", [] ], [ "carbohydrate", "value", [] ], [ "sugars", "value", [] ], [ "starch", "value", [] ], [ "fibre", "value", [] ], [ "salt", "value", [] ], [ "ash", "value", [ "at", "moisture" ] ], [ "alcohol", "value", [] ], [ "energy", "value", [] ], [ "contains", "value", [] ], [ "counts as", "value", [] ], [ "density", "value", [] ], [ "piece weight", "value", [] ], [ "price", "price", [] ], [ "holds water", "value", [] ], [ "like", "value", [] ], [ "note", "note", [] ] ] }, "mixer": { "properties": [ [ "kind", "value", [] ], [ "bowl", "value", [ "to" ] ], [ "speed", "speed", [ "develops", "warms", "within" ] ], [ "warms towards", "value", [ "within" ] ], [ "settles", "value", [ "at" ] ], [ "friction", "value", [] ], [ "jacket takes", "value", [] ], [ "note", "note", [] ] ] }, "bakery": { "properties": [ [ "room", "value", [] ], [ "flour", "value", [] ], [ "tap water", "value", [] ], [ "cold store", "value", [] ], [ "ice", "value", [ "to" ] ], [ "scale step", "value", [] ], [ "currency", "value", [] ], [ "default mixer", "value", [] ], [ "cup", "value", [] ], [ "oven", "value", [] ], [ "oven heats", "value", [] ], [ "oven changes", "value", [] ], [ "shared loads", "value", [] ], [ "label", "value", [] ], [ "note", "note", [] ] ] }, "plan": { "holds": "planned_line", "properties": [ [ "ready", "value", [] ], [ "begin", "value", [] ], [ "people", "value", [] ], [ "note", "note", [] ] ] }, "experiment": { "properties": [ [ "dough", "value", [ "for", "in" ] ], [ "batch", "value", [] ], [ "read at", "value", [] ], [ "room", "value", [] ], [ "flour", "value", [] ], [ "water", "value", [] ], [ "on hand", "value", [] ], [ "note", "note", [] ] ] }, "preferment": { "holds": "ingredient_line", "properties": [ [ "draws", "value", [ "of" ] ], [ "ripe culture", "value", [] ], [ "ferment", "value", [ "at" ] ], [ "soak", "value", [ "at" ] ], [ "hold", "value", [ "at" ] ], [ "keep back", "value", [] ], [ "dough temperature", "value", [] ], [ "note", "note", [] ] ] }, "soaker": { "holds": "ingredient_line", "properties": [ [ "draws", "value", [ "of" ] ], [ "ripe culture", "value", [] ], [ "ferment", "value", [ "at" ] ], [ "soak", "value", [ "at" ] ], [ "hold", "value", [ "at" ] ], [ "keep back", "value", [] ], [ "dough temperature", "value", [] ], [ "note", "note", [] ] ] }, "scald": { "holds": "ingredient_line", "properties": [ [ "draws", "value", [ "of" ] ], [ "ripe culture", "value", [] ], [ "ferment", "value", [ "at" ] ], [ "soak", "value", [ "at" ] ], [ "hold", "value", [ "at" ] ], [ "keep back", "value", [] ], [ "dough temperature", "value", [] ], [ "cook", "value", [ "at" ] ], [ "cooking loss", "value", [] ], [ "note", "note", [] ] ] }, "part": { "holds": "ingredient_line", "properties": [ [ "draws", "value", [ "of" ] ], [ "ripe culture", "value", [] ], [ "ferment", "value", [ "at" ] ], [ "soak", "value", [ "at" ] ], [ "hold", "value", [ "at" ] ], [ "keep back", "value", [] ], [ "dough temperature", "value", [] ], [ "note", "note", [] ] ] }, "filling": { "holds": "ingredient_line", "properties": [ [ "note", "note", [] ] ] }, "topping": { "holds": "ingredient_line", "properties": [ [ "note", "note", [] ] ] }, "bath": { "holds": "ingredient_line", "properties": [ [ "note", "note", [] ] ] }, "mix": { "properties": [ [ "load", "value", [ "at", "of" ] ], [ "add", "value", [ "at", "of" ] ], [ "speed", "speed", [ "for" ] ], [ "rest", "value", [] ], [ "knead", "value", [] ], [ "fold", "value", [] ], [ "stir", "value", [] ], [ "develop", "value", [] ], [ "note", "note", [] ] ] }, "process": { "holds": "step", "properties": [ [ "note", "note", [] ] ] }, "trial": { "holds": "part_temperature", "properties": [ [ "room", "value", [] ], [ "flour", "value", [] ], [ "water", "value", [] ], [ "dough", "value", [] ], [ "baked", "value", [] ], [ "at", "value", [] ], [ "end", "value", [] ], [ "rise", "value", [ "at" ] ], [ "mixer", "value", [] ], [ "mixed", "value", [ "in" ] ], [ "experiment", "value", [] ], [ "load", "value", [ "at", "of" ] ], [ "add", "value", [ "at", "of" ] ], [ "speed", "speed", [ "for" ] ], [ "rest", "value", [] ], [ "knead", "value", [] ], [ "fold", "value", [] ], [ "stir", "value", [] ], [ "note", "note", [] ] ] } };
const steps = [ "bulk", "fold", "rest", "divide", "shape", "retard", "proof", "enclose", "sheet", "score", "boil", "bake", "cool", "first rise", "first prove", "first proof", "bulk ferment", "bulk fermentation", "primary fermentation", "floor time", "prove", "proving", "proofing", "final proof", "final prove", "final rise", "second rise", "second prove", "second proof", "last prove", "knock back", "knock down", "punch", "punch down", "stretch and fold", "degas", "autolyse", "autolyze", "autolysis", "bench rest", "intermediate proof", "preshape", "pre-shape", "mould", "mold", "round", "final shape", "scale", "weigh off", "portion", "slash", "cut the tops", "laminate", "fry", "simmer" ];
const valueVariants = [ [], [ "at" ], [ "baked", "from", "of" ], [ "at", "moisture" ], [ "to" ], [ "develops", "warms", "within" ], [ "within" ], [ "for", "in" ], [ "of" ], [ "at", "of" ], [ "for" ], [ "in" ] ];
const words = [ "a", "absorption", "add", "alcohol", "all", "ash", "at", "autolyse", "autolysis", "autolyze", "bake", "bake loss", "baked", "bakery", "balance", "batch", "bath", "begin", "bench rest", "boil", "bowl", "bulk", "bulk ferment", "bulk fermentation", "by", "carbohydrate", "cold store", "contains", "cook", "cooking loss", "cool", "counts as", "cup", "currency", "cut the tops", "default mixer", "degas", "density", "develop", "develops", "divide", "dough", "dough temperature", "draws", "effective", "enclose", "end", "energy", "experiment", "fat", "ferment", "fibre", "filling", "final proof", "final prove", "final rise", "final shape", "first proof", "first prove", "first rise", "floor time", "flour", "fold", "for", "form", "formula", "friction", "from", "fry", "grain", "hand", "hold", "holds water", "hydration", "ice", "in", "ingredient", "intermediate proof", "jacket takes", "keep back", "kind", "knead", "knock back", "knock down", "label", "laminate", "last prove", "like", "load", "loss", "milling", "mix", "mixed", "mixer", "moisture", "mold", "mould", "note", "of", "on hand", "oven", "oven changes", "oven heats", "oven load", "part", "peak", "people", "per", "piece", "piece weight", "plan", "portion", "pre-shape", "preferment", "preshape", "price", "primary fermentation", "process", "proof", "proofing", "protein", "prove", "proving", "punch", "punch down", "read at", "ready", "remaining", "rest", "retard", "ripe culture", "rise", "room", "round", "salt", "saturates", "scald", "scale", "scale step", "score", "second proof", "second prove", "second rise", "settles", "shape", "shared loads", "sheet", "simmer", "slash", "soak", "soaker", "speed", "stability", "starch", "starch damage", "stir", "stretch and fold", "sugars", "tap water", "to", "topping", "trial", "warms", "warms towards", "water", "weigh off", "within", "without", "yield" ];
const units = [ "degrees Fahrenheit", "degrees fahrenheit", "degrees Celsius", "degrees celsius", "degrees C", "degrees F", "kilograms", "degree C", "degree F", "kilogram", "minutes", "seconds", "liters", "litres", "minute", "ounces", "pieces", "pounds", "second", "tonnes", "°C/min", "°F/min", "ºC/min", "ºF/min", "C/min", "F/min", "deg C", "deg F", "grams", "hours", "liter", "litre", "ounce", "piece", "pound", "tbsps", "times", "tonne", "℃/min", "℉/min", "cups", "days", "g/mL", "g/ml", "gram", "hour", "kcal", "mins", "secs", "tbsp", "tsps", "cup", "day", "hrs", "lbs", "min", "rpm", "sec", "tsp", "° C", "° F", "KG", "Kg", "ML", "cL", "cl", "dL", "dl", "hr", "kJ", "kg", "kj", "lb", "mL", "mg", "ml", "oz", "°C", "°F", "°c", "°f", "ºC", "ºF", "%", "C", "F", "L", "g", "h", "l", "s", "℃", "℉", "％" ];
const durationUnits = [ "minutes", "seconds", "minute", "second", "hours", "days", "hour", "mins", "secs", "day", "hrs", "min", "sec", "hr", "h", "s" ];
// </vocabulary>

// To tree-sitter `\s` is a blank of ASCII alone, so all are named wherever one may not stand.
const blank = ' \\t\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF';
const blanks = `[${blank}]`;
const lineEnd = '(\\r\\n|\\n|\\r)';
const vulgar = '[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]';

/** A word in either case, or words with any blanks between them. */
const anyCase = (words) =>
  new RegExp(
    [...words]
      .map((letter) =>
        letter === ' ' ? `${blanks}+` : /[a-z]/.test(letter) ? `[${letter}${letter.toUpperCase()}]` : letter,
      )
      .join(''),
  );
const idOf = (words) => words.replace(/[^a-z]+/g, '_');
/** The hidden rule of a word of the notation. */
const wordRule = (words) => `_word_${idOf(words)}`;
const joined = (rules) => (rules.length === 1 ? rules[0] : choice(...rules));

/** How values with these words among them are called. */
const valueRule = (connectives) => `_value${connectives.map((word) => `_${word}`).join('')}`;

/** A value: names, and between them amounts, signs and the words that join them. No two names touch. */
function valueRules(connectives, own = valueRule(connectives), signs = [',']) {
  const name = ($) => alias($._words, $.name);
  // A number behind a name without a unit belongs to the name.
  const other = ($) => choice($.number, behindName($));
  const behindName = ($) =>
    choice(
      $.quantity,
      alias($._compact_duration, $.quantity),
      $.date,
      $.clock,
      ...signs,
      ...connectives.map((word) => alias($[wordRule(word)], $.joining_word)),
    );
  return {
    [own]: ($) => choice(name($), seq($[`${own}_part`], optional(name($)))),
    [`${own}_part`]: ($) =>
      choice(
        other($),
        seq(name($), behindName($)),
        seq($[`${own}_part`], other($)),
        seq($[`${own}_part`], name($), behindName($)),
      ),
  };
}

/** A word of an amount: `balance`, `of all flour`. */
const amountWord = ($, word) => alias($[wordRule(word)], $.amount_word);

/** What a line of properties says, for those of these words. */
function propertyOf($, [word, kind, connectives]) {
  const head = alias($[wordRule(word)], $.property_word);
  const value = optional($[valueRule(connectives)]);
  if (kind === 'note') return seq(head, optional($.note_text));
  if (kind === 'price') return seq(head, optional($._price));
  if (kind === 'speed') return seq(head, optional(seq($.number, value)));
  return seq(head, value);
}

/** The lines of a section: of its properties, of what it holds, and blank ones. */
function sectionRules([section, { holds, properties }]) {
  const atMargin = properties.filter(
    ([word]) => !sections.top.includes(word) && !sections.below.includes(word),
  );
  const statement = `_${section}_statement`;
  const margin = atMargin.length === properties.length ? statement : `_${section}_margin`;
  const statementOf = (list, own) => ({
    [`${own}_property`]: ($) => joined(list.map((one) => propertyOf($, one))),
    [own]: ($) =>
      joined([alias($[`${own}_property`], $.property), ...(holds === undefined ? [] : [$[holds]])]),
  });
  return {
    ...statementOf(properties, statement),
    ...(margin === statement ? {} : statementOf(atMargin, margin)),
    [`_${section}_line`]: ($) =>
      choice($._newline, $._indent, seq($._indent, $[statement]), seq($._newline, $[margin])),
    // A section that another follows ends with the end of a line, so that no word within a line begins one.
    [`_${section}_closed`]: ($) =>
      seq(...begun($, section), $._newline, ...(section === 'formula' ? [repeat($._closed_part)] : [])),
    [`_${section}_last`]: ($) =>
      section === 'formula'
        ? choice(
            seq(...begun($, section)),
            seq(...begun($, section), $._newline, repeat($._closed_part), $._last_part),
          )
        : seq(...begun($, section)),
  };
}

const begun = ($, section) => [
  field('header', alias($[`_${section}_header`], $.header)),
  repeat($[`_${section}_line`]),
];
/** One of these sections, where another follows (`closed`) or none (`last`). */
const oneOf = ($, list, end) => choice(...list.map((section) => alias($[`_${section}_${end}`], $[section])));

/** The header of a section: its word, what it is called, a colon. */
function headerRules(section) {
  const word = ($) => alias($[wordRule(section)], $.section_word);
  const name = ($) => field('name', alias($._name_words, $.name));
  const joining = ($, text) => alias($[wordRule(text)], $.joining_word);
  const inner = {
    formula: ($) =>
      optional(seq(name($), optional(seq(joining($, 'like'), field('base', alias($._name_words, $.name)))))),
    mix: ($) =>
      seq(
        optional(field('part', alias($._name_words, $.name))),
        optional(
          choice(
            seq(joining($, 'in'), field('mixer', alias($._name_words, $.name))),
            seq(joining($, 'by'), joining($, 'hand')),
          ),
        ),
      ),
    process: ($) => optional(field('part', alias($._name_words, $.name))),
    trial: ($) => optional($._value),
    experiment: ($) => optional($._value),
  }[section];
  return { [`_${section}_header`]: ($) => seq(word($), inner ? inner($) : optional(name($)), ':') };
}

module.exports = grammar({
  name: 'doughwright',
  word: ($) => $.word,
  extras: ($) => [new RegExp(blanks), $.comment],
  rules: {
    source_file: ($) =>
      seq(
        repeat(choice($._newline, $._indent)),
        optional(seq(repeat(oneOf($, sections.top, 'closed')), oneOf($, sections.top, 'last'))),
      ),

    ...Object.assign({}, ...[...sections.top, ...sections.below].map(headerRules)),
    ...Object.assign({}, ...Object.entries(lines).map(sectionRules)),
    _closed_part: ($) => oneOf($, sections.below, 'closed'),
    _last_part: ($) => oneOf($, sections.below, 'last'),

    ingredient_line: ($) =>
      seq(
        field('name', alias($._name_words, $.name)),
        optional(field('amount', $.amount)),
        optional(seq(',', optional($._value_at))),
      ),
    planned_line: ($) =>
      seq(
        field('name', alias($._name_words, $.name)),
        optional(field('amount', $.amount)),
        optional(seq(',', optional($._value))),
      ),
    amount: ($) =>
      choice(
        $.quantity,
        seq($.quantity, amountWord($, 'of'), amountWord($, 'all'), amountWord($, 'flour')),
        seq($.quantity, amountWord($, 'a'), amountWord($, 'piece')),
        seq($.quantity, amountWord($, 'baked')),
        seq(
          amountWord($, 'to'),
          $.quantity,
          optional(amountWord($, 'effective')),
          amountWord($, 'hydration'),
        ),
        amountWord($, 'balance'),
        amountWord($, 'remaining'),
      ),
    step: ($) =>
      choice(
        seq(alias(joined(steps.map((word) => $[wordRule(word)])), $.step_word), optional($._step_words)),
        $._step_words,
      ),
    part_temperature: ($) => $._value,
    _price: ($) =>
      seq(
        $.number,
        alias($.word, $.currency),
        alias($._word_per, $.joining_word),
        choice($.quantity, $.unit),
      ),

    ...Object.assign({}, ...valueVariants.map((connectives) => valueRules(connectives))),
    // Bakers write steps as they speak, with a colon too.
    ...valueRules(['at'], '_step_words', [',', ':']),

    /** A name within a value: it begins with no number, for that is an amount. */
    _words: ($) => choice($._name_part, seq($._words, choice($._name_part, $.number))),
    /** A name at the head of a line: `00 flour`. */
    _name_words: ($) => choice($._name_part, $.number, seq($._name_words, choice($._name_part, $.number))),
    _name_part: ($) => choice($.word, $.quoted, $.parenthesis, alias($._sign, $.word)),
    parenthesis: ($) => seq('(', repeat(choice($.word, $.number, $.unit, $.quoted, $.parenthesis, ',')), ')'),
    quantity: ($) => seq($.number, $.unit),

    // Longer words first where one begins another; of equal length the earlier rule wins, so words stand last.
    ...Object.fromEntries(words.map((word) => [wordRule(word), () => anyCase(word)])),
    date: () => token(prec(1, /\d{4}-\d{2}-\d{2}/)),
    clock: () => token(prec(1, /\d{1,2}:\d{2}/)),
    // `2h` and `1h30`. One token for both: were the second alone one, `2h` would be begun as it and end as a word.
    _compact_duration: () =>
      token(
        prec(1, seq(/\d+/, choice(...durationUnits), optional(seq(/\d+/, optional(choice(...durationUnits)))))),
      ),
    number: () =>
      token(
        prec(
          1,
          new RegExp(
            `[-−+]?(\\d+${blanks}?${vulgar}|\\d+${blanks}\\d+/\\d+|\\d+/\\d+|\\d+[.,]\\d+|\\d+|${vulgar})|\\d+([.,]\\d+)?[-‐‑–—]\\d+([.,]\\d+)?`,
          ),
        ),
      ),
    unit: () => token(choice(...units)),
    quoted: () => /"[^"\r\n]*"/,
    note_text: () => token(prec(1, new RegExp(`[^${blank}\\r\\n][^\\r\\n]*`))),
    comment: () => /#[^\r\n]*/,
    _indent: () => new RegExp(`${lineEnd}${blanks}+`),
    _newline: () => new RegExp(lineEnd),
    word: () =>
      new RegExp("[\\p{L}\\p{N}\\p{M}'‘’\\u02BC\\u2032.%&/+\\-\\u2010-\\u2015−\\uFE63\\uFF0D\\u200C\\u200D]+"),
    /** A picture and the like, which a name may have. */
    _sign: () => new RegExp(`[^${blank}\\r\\n\\v\\f#:,()"]`),
  },
});
