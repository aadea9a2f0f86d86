import { EmbeddedActionsParser, type IToken, type ParserMethod } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { type DoughPart, testedDoughOf } from './dough-parts.ts';
import { LookaheadWhenNeeded } from './lookahead.ts';
import { nameBetween } from './name-reading.ts';
import type { Form } from './shared-properties.ts';
import * as t from './tokens.ts';
import type {
  Amount,
  LoadItem,
  LoadPortion,
  MomentRead,
  Name,
  QuantityKind,
  QuantityOf,
  Seen,
  Value,
} from './tree.ts';
import { units } from './units.ts';
import { feelWords, stageWords } from './word-lists.ts';

/** What says that everything goes into the bowl. */
const wordsForAll: ReadonlySet<string> = new Set([
  'all',
  'all ingredients',
  'all the ingredients',
  'all the rest',
  'all others',
  'all remaining',
  'everything',
  'everything else',
  'the rest',
  'the rest of it',
  'the rest of them',
  'rest',
  'rest of it',
  'remaining ingredients',
  'the remaining ingredients',
]);
const mostWordsForAll = 4;
const secondsOfMinute = 60;
/** What says that something stays out for now. */
const wordsForBut: ReadonlySet<string> = new Set(['but', 'except', 'without']);

/** Shares of what a line has, as they are said; no figure where the words do not tell. Common practice, no source. */
const wordsForShare: readonly (readonly [said: string, fraction?: number])[] = [
  ['half of', 1 / 2],
  ['half the', 1 / 2],
  ['a third of', 1 / 3],
  ['two thirds of', 2 / 3],
  ['a quarter of', 1 / 4],
  ['three quarters of', 3 / 4],
  ['1/2 of', 1 / 2],
  ['½ of', 1 / 2],
  ['1/3 of', 1 / 3],
  ['⅓ of', 1 / 3],
  ['2/3 of', 2 / 3],
  ['⅔ of', 2 / 3],
  ['1/4 of', 1 / 4],
  ['¼ of', 1 / 4],
  ['3/4 of', 3 / 4],
  ['¾ of', 3 / 4],
  ['most of'],
  ['some of'],
  ['part of'],
  ['a little of'],
  ['a bit of'],
  ['a splash of'],
];

const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: t.endOf(token) });

/** So many tokens tell which way to read on. */
const maxLookahead = 2;

/**
 * The statement grammar: how the value of each property, an amount, and a list of loads read. One rule a form. It is
 * given the tokens of one line, never inserts or drops one, and says where it could not go on.
 */
class StatementParser extends EmbeddedActionsParser {
  line = '';

  constructor(check: boolean) {
    super(t.vocabulary, {
      recoveryEnabled: false,
      maxLookahead,
      lookaheadStrategy: new LookaheadWhenNeeded({ maxLookahead }),
      skipValidations: !check,
      errorMessageProvider: {
        buildMismatchTokenMessage: () => 'mismatch',
        buildNotAllInputParsedMessage: () => 'rest',
        buildNoViableAltMessage: () => 'none',
        buildEarlyExitMessage: () => 'early',
      },
    });
    this.performSelfAnalysis();
  }

  private quantity<K extends QuantityKind>(token: IToken, _kind: K): QuantityOf<K> {
    return (token.payload ?? {}) as QuantityOf<K>;
  }

  private nameFrom(tokens: readonly IToken[]): Name {
    const first = tokens[0];
    const last = tokens[tokens.length - 1];
    if (first === undefined || last === undefined || Number.isNaN(first.startOffset)) {
      return { text: '', folded: '', start: 0, end: 0 };
    }
    return nameBetween(this.line, first.startOffset, t.endOf(last));
  }

  /** Words, quoted words, bare numbers, and parentheses with all they hold. */
  readonly name = this.RULE('name', (): Name => {
    const tokens: IToken[] = [];
    this.AT_LEAST_ONE({
      GATE: () => !this.atBeforeTemperature(),
      DEF: () =>
        this.OR([
          { ALT: () => this.SUBRULE(this.parenthesis, { ARGS: [tokens] }) },
          { ALT: () => tokens.push(this.CONSUME(t.NamePart)) },
        ]),
    });
    return this.nameFrom(tokens);
  });

  readonly parenthesis = this.RULE('parenthesis', (tokens: IToken[] = []): void => {
    tokens.push(this.CONSUME(t.LeftParen));
    this.MANY(() =>
      this.OR([
        { ALT: () => tokens.push(this.CONSUME(t.Comma)) },
        { ALT: () => tokens.push(this.CONSUME(t.AnyQuantity)) },
        { ALT: () => tokens.push(this.CONSUME(t.Word)) },
        { ALT: () => tokens.push(this.CONSUME(t.Quoted)) },
      ]),
    );
    this.OPTION(() => tokens.push(this.CONSUME(t.RightParen)));
  });

  private atBeforeTemperature(): boolean {
    return this.LA(1).tokenType === t.At && this.LA(2).tokenType === t.Temperature;
  }

  readonly temperature = this.RULE('temperature', (): Value => {
    const { celsius } = this.quantity(this.CONSUME(t.Temperature), 'temperature');
    return { form: 'temperature', celsius };
  });

  readonly drift = this.RULE('drift', (): Value => {
    const { celsius } = this.quantity(this.CONSUME(t.Temperature), 'temperature');
    const withinCelsius = this.OPTION(() => {
      this.CONSUME(t.Within);
      return this.quantity(this.CONSUME2(t.Temperature), 'temperature').degrees;
    });
    return { form: 'temperature', celsius, ...(withinCelsius === undefined ? {} : { withinCelsius }) };
  });

  readonly difference = this.RULE('difference', (): Value => {
    const { degrees } = this.quantity(this.CONSUME(t.Temperature), 'temperature');
    return { form: 'difference', celsius: degrees };
  });

  readonly mass = this.RULE(
    'mass',
    (): Value => ({
      form: 'mass',
      grams: this.quantity(this.CONSUME(t.Mass), 'mass').grams,
    }),
  );

  readonly volume = this.RULE(
    'volume',
    (): Value => ({
      form: 'volume',
      millilitres: this.quantity(this.CONSUME(t.Volume), 'volume').millilitres,
    }),
  );

  readonly pieces = this.RULE(
    'pieces',
    (): Value => ({
      form: 'count',
      count: this.quantity(this.CONSUME(t.Count), 'count').count,
    }),
  );

  /** How many there are of what the word before it says. */
  readonly headcount = this.RULE(
    'headcount',
    (): Value => ({ form: 'count', count: this.quantity(this.CONSUME(t.Bare), 'bare').value }),
  );

  readonly ovenLoad = this.RULE(
    'ovenLoad',
    (): Value => this.OR([{ ALT: () => this.SUBRULE(this.pieces) }, { ALT: () => this.SUBRULE(this.mass) }]),
  );

  readonly percent = this.RULE(
    'percent',
    (): Value => ({
      form: 'fraction',
      fraction: this.quantity(this.CONSUME(t.Percent), 'fraction').fraction,
    }),
  );

  /** A share of a flour, and the moisture that it is stated at. */
  readonly shareAt = this.RULE('shareAt', (): Value => {
    const { fraction } = this.quantity(this.CONSUME(t.Percent), 'fraction');
    const basis = this.OPTION(() => {
      this.CONSUME(t.At);
      const moisture = this.quantity(this.CONSUME2(t.Percent), 'fraction').fraction;
      this.CONSUME(t.Moisture);
      return moisture;
    });
    return { form: 'fraction', fraction, ...(basis === undefined ? {} : { atMoisture: basis }) };
  });

  readonly duration = this.RULE('duration', (): Value => {
    this.OPTION(() => this.CONSUME(t.For));
    return { form: 'duration', seconds: this.quantity(this.CONSUME(t.Duration), 'duration').seconds };
  });

  readonly heldAt = this.RULE('heldAt', (): Value => {
    this.OPTION(() => this.CONSUME(t.For));
    const { seconds } = this.quantity(this.CONSUME(t.Duration), 'duration');
    const celsius = this.OPTION2(() => {
      this.CONSUME(t.At);
      return this.quantity(this.CONSUME(t.Temperature), 'temperature').celsius;
    });
    return { form: 'duration', seconds, ...(celsius === undefined ? {} : { celsius }) };
  });

  readonly cookedAt = this.RULE('cookedAt', (): Value => {
    this.OPTION(() => this.CONSUME(t.For));
    this.OPTION2(() => this.CONSUME(t.Duration));
    this.CONSUME(t.At);
    return {
      form: 'temperature',
      celsius: this.quantity(this.CONSUME(t.Temperature), 'temperature').celsius,
    };
  });

  readonly settles = this.RULE('settles', (): Value => {
    const { seconds } = this.quantity(this.CONSUME(t.Duration), 'duration');
    const atGrams = this.OPTION(() => {
      this.CONSUME(t.At);
      return this.quantity(this.CONSUME(t.Mass), 'mass').grams;
    });
    return { form: 'duration', seconds, ...(atGrams === undefined ? {} : { atGrams }) };
  });

  readonly times = this.RULE(
    'times',
    (): Value => ({
      form: 'times',
      factor: this.quantity(this.CONSUME(t.Times), 'times').factor,
    }),
  );

  readonly energy = this.RULE(
    'energy',
    (): Value => ({
      form: 'energy',
      kilojoules: this.quantity(this.CONSUME(t.Energy), 'energy').kilojoules,
    }),
  );

  readonly density = this.RULE(
    'density',
    (): Value => ({
      form: 'density',
      gramsPerMillilitre: this.quantity(this.CONSUME(t.Density), 'density').gramsPerMillilitre,
    }),
  );

  readonly price = this.RULE('price', (): Value => {
    const { amount, currency, per } = this.quantity(this.CONSUME(t.Money), 'money');
    return { form: 'price', amount, currency, per };
  });

  /** One of the words a property allows, or free words; which are allowed is asked by whoever called. */
  readonly words = this.RULE('words', (): Value => {
    const tokens: IToken[] = [];
    this.AT_LEAST_ONE(() => tokens.push(this.CONSUME(t.NamePart)));
    const name = this.nameFrom(tokens);
    return { form: 'word', word: name.text, span: { start: name.start, end: name.end } };
  });

  readonly iceSupply = this.RULE('iceSupply', (): Value => {
    const to = this.CONSUME(t.To);
    const hand = this.CONSUME(t.Word);
    const span = { start: to.startOffset, end: t.endOf(hand) };
    return { form: 'word', word: `${to.image} ${hand.image}`, span };
  });

  readonly oneName = this.RULE('oneName', (): Value => ({ form: 'name', name: this.SUBRULE(this.name) }));

  readonly names = this.RULE('names', (): Value => {
    const names: Name[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: t.Comma, DEF: () => names.push(this.SUBRULE(this.name)) });
    return { form: 'names', names };
  });

  readonly massRange = this.RULE('massRange', (): Value => {
    const first = this.quantity(this.CONSUME(t.Mass), 'mass').grams;
    const second = this.OPTION(() => {
      this.CONSUME(t.To);
      return this.quantity(this.CONSUME2(t.Mass), 'mass').grams;
    });
    return second === undefined
      ? { form: 'massRange', mostGrams: first }
      : { form: 'massRange', leastGrams: first, mostGrams: second };
  });

  readonly machineSpeed = this.RULE('machineSpeed', (): Value => {
    const number = this.quantity(this.CONSUME(t.Bare), 'bare').value;
    const { rpm } = this.quantity(this.CONSUME(t.Turns), 'turns');
    let celsiusPerMinute: number | undefined;
    let withinPerMinute: number | undefined;
    let develops: number | undefined;
    let developsWithin: number | undefined;
    this.MANY(() => {
      this.CONSUME(t.Comma);
      this.OR([
        {
          ALT: () => {
            this.CONSUME(t.Warms);
            celsiusPerMinute = this.quantity(this.CONSUME(t.Warming), 'warming').celsiusPerMinute;
            withinPerMinute = this.OPTION(() => {
              this.CONSUME(t.Within);
              return this.quantity(this.CONSUME2(t.Warming), 'warming').celsiusPerMinute;
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(t.Develops);
            develops = this.quantity(this.CONSUME(t.Times), 'times').factor;
            developsWithin = this.OPTION2(() => {
              this.CONSUME2(t.Within);
              return this.quantity(this.CONSUME2(t.Times), 'times').factor;
            });
          },
        },
      ]);
    });
    return {
      form: 'machineSpeed',
      number,
      rpm,
      ...(celsiusPerMinute === undefined ? {} : { celsiusPerMinute }),
      ...(withinPerMinute === undefined ? {} : { withinPerMinute }),
      ...(develops === undefined ? {} : { develops }),
      ...(developsWithin === undefined ? {} : { developsWithin }),
    };
  });

  readonly mixSpeed = this.RULE('mixSpeed', (): Value => {
    const number = this.quantity(this.CONSUME(t.Bare), 'bare').value;
    this.OPTION(() => this.CONSUME(t.For));
    const { seconds } = this.quantity(this.CONSUME(t.Duration), 'duration');
    return { form: 'mixSpeed', number, seconds };
  });

  readonly load = this.RULE('load', (): Value => {
    const items: LoadItem[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: t.Comma, DEF: () => items.push(this.SUBRULE(this.loadItem)) });
    return { form: 'load', items };
  });

  readonly loadItem = this.RULE(
    'loadItem',
    (): LoadItem =>
      this.OR([
        {
          GATE: () => this.atEverything(),
          ALT: () => this.SUBRULE(this.everything),
          IGNORE_AMBIGUITIES: true,
        },
        {
          GATE: () => this.atRestOf() > 0,
          ALT: () => this.SUBRULE(this.restOfItem),
          IGNORE_AMBIGUITIES: true,
        },
        {
          GATE: () => this.atShare() !== undefined,
          ALT: () => this.SUBRULE(this.shareItem),
          IGNORE_AMBIGUITIES: true,
        },
        {
          GATE: () => this.LA(1).tokenType !== t.Percent || this.LA(2).tokenType === t.Of,
          ALT: () => this.SUBRULE(this.portionFirst),
        },
        { ALT: () => this.SUBRULE(this.namedItem) },
      ]),
  );

  /** Whether what stands here, to the end of the line or a comma, says that all goes in: `all`, `the rest`, `everything but`. */
  private atEverything(): boolean {
    const said: string[] = [];
    for (let ahead = 1; said.length <= mostWordsForAll; ahead++) {
      const token = this.LA(ahead);
      const isWord =
        token.tokenType === t.Word ||
        token.tokenType === t.All ||
        token.tokenType === t.Remaining ||
        token.tokenType === t.Of;
      const word = isWord ? token.image.toLowerCase() : '';
      if (word === '' && token.tokenType !== t.Comma && token.image !== '') return false;
      if (word === '' || wordsForBut.has(word)) return wordsForAll.has(said.join(' '));
      said.push(word);
    }
    return false;
  }

  readonly everything = this.RULE('everything', (): LoadItem => {
    const words: IToken[] = [];
    const allBut: Name[] = [];
    this.AT_LEAST_ONE({
      GATE: () => !wordsForBut.has(this.LA(1).image.toLowerCase()),
      DEF: () => words.push(this.CONSUME(t.NamePart)),
    });
    this.OPTION({
      GATE: () => wordsForBut.has(this.LA(1).image.toLowerCase()),
      DEF: () => {
        this.CONSUME2(t.NamePart);
        this.AT_LEAST_ONE_SEP({
          SEP: t.Comma,
          DEF: () => {
            this.OPTION2({ GATE: () => this.atArticle(), DEF: () => this.CONSUME(t.Word) });
            allBut.push(this.SUBRULE(this.name));
          },
        });
      },
    });
    const name = this.nameFrom(words);
    const end = allBut[allBut.length - 1]?.end ?? name.end;
    return { name, all: true, remaining: false, allBut, start: name.start, end };
  });

  private atArticle(): boolean {
    const next = this.LA(2);
    return this.LA(1).image.toLowerCase() === 'the' && next.image !== '' && next.tokenType !== t.Comma;
  }

  readonly namedItem = this.RULE('namedItem', (): LoadItem => {
    const all = this.OPTION({
      GATE: () => this.LA(2).tokenType !== t.Comma,
      DEF: () => this.CONSUME(t.All),
    });
    // `add the water` adds water.
    this.OPTION5({ GATE: () => this.atArticle(), DEF: () => this.CONSUME(t.Word) });
    const remaining = this.OPTION2(() => this.CONSUME(t.Remaining));
    const name = this.SUBRULE(this.name);
    const portion = this.OPTION3(() => this.SUBRULE(this.portionBehind));
    const warm = this.OPTION4(() => this.SUBRULE(this.atTemperature));
    return {
      name,
      all: all !== undefined,
      remaining: remaining !== undefined,
      start: (all ?? remaining)?.startOffset ?? name.start,
      end: (warm ?? portion)?.end ?? name.end,
      ...(portion === undefined ? {} : { portion }),
      ...(warm === undefined ? {} : { celsius: warm.celsius }),
    };
  });

  readonly portionBehind = this.RULE(
    'portionBehind',
    (): LoadPortion =>
      this.OR([
        {
          ALT: () => {
            const percent = this.CONSUME(t.Percent);
            return {
              kind: 'ofFlour' as const,
              fraction: this.quantity(percent, 'fraction').fraction,
              ...spanOf(percent),
            };
          },
        },
        { ALT: () => this.weight(this.CONSUME(t.Mass)) },
      ]),
  );

  private weight(mass: IToken): LoadPortion {
    return { kind: 'weight', grams: this.quantity(mass, 'mass').grams, ...spanOf(mass) };
  }

  readonly atTemperature = this.RULE('atTemperature', (): Span & { celsius: number } => {
    this.CONSUME(t.At);
    const temperature = this.CONSUME(t.Temperature);
    return { celsius: this.quantity(temperature, 'temperature').celsius, ...spanOf(temperature) };
  });

  /** `90% of the water`, `1300 g water`. */
  readonly portionFirst = this.RULE('portionFirst', (): LoadItem => {
    const portion = this.OR([
      {
        ALT: (): LoadPortion => {
          const percent = this.CONSUME(t.Percent);
          const of = this.CONSUME(t.Of);
          return {
            kind: 'ofLine' as const,
            fraction: this.quantity(percent, 'fraction').fraction,
            start: percent.startOffset,
            end: t.endOf(of),
          };
        },
      },
      {
        ALT: () => {
          const mass = this.CONSUME(t.Mass);
          this.OPTION({ GATE: () => this.LA(2).tokenType !== t.Comma, DEF: () => this.CONSUME2(t.Of) });
          return this.weight(mass);
        },
      },
    ]);
    return this.SUBRULE(this.portioned, { ARGS: [portion, portion.start] });
  });

  /** What a portion before a name is of: `the water at 12 °C`. */
  readonly portioned = this.RULE('portioned', (portion?: LoadPortion, start = 0): LoadItem => {
    this.OPTION({ GATE: () => this.atArticle(), DEF: () => this.CONSUME(t.Word) });
    const name = this.SUBRULE(this.name);
    const warm = this.OPTION2(() => this.SUBRULE(this.atTemperature));
    return {
      name,
      all: false,
      remaining: portion === undefined,
      start,
      end: warm?.end ?? name.end,
      ...(portion === undefined ? {} : { portion }),
      ...(warm === undefined ? {} : { celsius: warm.celsius }),
    };
  });

  /** How many words stand here that say `the rest of`; 0 for none. */
  private atRestOf(): number {
    const first = this.LA(1).image.toLowerCase() === 'the' ? 2 : 1;
    const isRest = this.LA(first).image.toLowerCase() === 'rest' && this.LA(first + 1).tokenType === t.Of;
    return isRest ? first + 1 : 0;
  }

  /** `rest of the water` is the remaining water. */
  readonly restOfItem = this.RULE('restOfItem', (): LoadItem => {
    const start = this.LA(1).startOffset;
    const words = this.atRestOf();
    let taken = 0;
    this.AT_LEAST_ONE({
      GATE: () => taken < words,
      DEF: () => {
        this.CONSUME(t.NamePart);
        taken++;
      },
    });
    return this.SUBRULE(this.portioned, { ARGS: [undefined, start] });
  });

  /** The words of a share that stand here, `half of`, `a third of`, and what they come to. */
  private atShare(): { readonly words: number; readonly fraction: number | undefined } | undefined {
    for (const [said, fraction] of wordsForShare) {
      const words = said.split(' ');
      const isSaid = words.every((word, at) => this.LA(at + 1).image.toLowerCase() === word);
      if (isSaid && this.LA(words.length + 1).image !== '') return { words: words.length, fraction };
    }
    return undefined;
  }

  readonly shareItem = this.RULE('shareItem', (): LoadItem => {
    const share = this.atShare();
    const start = this.LA(1).startOffset;
    let end = start;
    const words = share?.words ?? 0;
    let taken = 0;
    this.AT_LEAST_ONE({
      GATE: () => taken < words,
      DEF: () => {
        end = t.endOf(this.CONSUME(t.NamePart));
        taken++;
      },
    });
    const portion: LoadPortion =
      share?.fraction === undefined
        ? { kind: 'unsaid', start, end }
        : { kind: 'ofLine', fraction: share.fraction, start, end };
    return this.SUBRULE(this.portioned, { ARGS: [portion, start] });
  });

  readonly draws = this.RULE(
    'draws',
    (): Value =>
      this.OR([
        {
          ALT: (): Value => {
            this.CONSUME(t.All);
            return { form: 'draws', fraction: 1, all: true, name: this.SUBRULE(this.name) };
          },
        },
        {
          ALT: (): Value => {
            const { fraction } = this.quantity(this.CONSUME(t.Percent), 'fraction');
            this.CONSUME(t.Of);
            // `draws 20% of the rye`, `draws 20% of all flour`
            this.OPTION({ GATE: () => this.atArticle(), DEF: () => this.CONSUME(t.Word) });
            this.OPTION2({
              GATE: () => this.LA(2).tokenType === t.Flour && this.LA(3).image === '',
              DEF: () => this.CONSUME2(t.All),
            });
            return { form: 'draws', fraction, all: false, name: this.SUBRULE2(this.name) };
          },
        },
      ]),
  );

  readonly yield = this.RULE(
    'yield',
    (): Value =>
      this.OR([
        {
          ALT: (): Value => {
            const { count } = this.quantity(this.CONSUME(t.Count), 'count');
            this.CONSUME(t.Of);
            const { grams } = this.quantity(this.CONSUME(t.Mass), 'mass');
            const baked = this.OPTION(() => this.CONSUME(t.Baked));
            return { form: 'yieldPieces', count, grams, baked: baked !== undefined };
          },
        },
        {
          ALT: (): Value => {
            const { grams } = this.quantity(this.CONSUME2(t.Mass), 'mass');
            const baked = this.OPTION2(() => this.CONSUME2(t.Baked));
            return { form: 'yieldMass', grams, baked: baked !== undefined };
          },
        },
        {
          ALT: (): Value => {
            this.CONSUME(t.From);
            const { grams } = this.quantity(this.CONSUME3(t.Mass), 'mass');
            this.CONSUME(t.Flour);
            return { form: 'yieldFlour', grams };
          },
        },
      ]),
  );

  readonly reading = this.RULE('reading', (): Value => {
    const { seconds } = this.quantity(this.CONSUME(t.Duration), 'duration');
    return this.OR([
      {
        ALT: (): Value => {
          const { celsius } = this.quantity(this.CONSUME(t.Temperature), 'temperature');
          return { form: 'reading', seconds, celsius, ...this.SUBRULE(this.seen) };
        },
      },
      {
        GATE: () => isWord(this.LA(2)),
        ALT: (): Value => {
          this.CONSUME(t.Comma);
          const first = this.SUBRULE(this.name);
          return { form: 'reading', seconds, ...this.SUBRULE2(this.seen, { ARGS: [first] }) };
        },
      },
    ]);
  });

  /** What was seen of a dough: a stage, words of how it felt, or both, each behind a comma. */
  readonly seen = this.RULE('seen', (first?: Name): Seen => {
    const names: Name[] = first === undefined ? [] : [first];
    this.MANY(() => {
      this.CONSUME(t.Comma);
      names.push(this.SUBRULE(this.name));
    });
    return stageAndFeel(names);
  });

  readonly endReading = this.RULE('endReading', (): Value => {
    return this.OR([
      {
        ALT: (): Value => {
          const { celsius } = this.quantity(this.CONSUME(t.Temperature), 'temperature');
          return { form: 'temperature', celsius, ...this.SUBRULE(this.seen) };
        },
      },
      {
        GATE: () => isWord(this.LA(1)),
        ALT: (): Value => {
          const first = this.SUBRULE(this.name);
          return { form: 'seen', ...this.SUBRULE2(this.seen, { ARGS: [first] }) };
        },
      },
    ]);
  });

  /** A dough of an experiment: its name, then behind commas where it is mixed and how it is worked. */
  readonly testedDough = this.RULE('testedDough', (): Value => {
    const name = this.SUBRULE(this.name);
    const parts: DoughPart[] = [];
    this.MANY(() => {
      this.CONSUME(t.Comma);
      const words = this.SUBRULE2(this.name);
      const time = this.OPTION(() => this.CONSUME(t.Duration));
      parts.push({ words, time });
    });
    return this.ACTION(() => testedDoughOf(this.line, name, parts));
  });

  readonly minutes = this.RULE('minutes', (): Value => {
    const times: (readonly MomentRead[])[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: t.Comma, DEF: () => times.push(this.SUBRULE(this.moments)) });
    return this.ACTION((): Value => ({ form: 'minutes', times: times.flat() }));
  });

  /** One time, and those before it that leave its unit to it: `8, 16, 30 min`. */
  readonly moments = this.RULE('moments', (): readonly MomentRead[] => {
    const bare: IToken[] = [];
    this.MANY(() => {
      bare.push(this.CONSUME(t.Bare));
      this.CONSUME(t.Comma);
    });
    const token = this.CONSUME(t.Duration);
    const { seconds } = this.quantity(token, 'duration');
    const placed = (one: IToken) => ({ start: one.startOffset, end: t.endOf(one) });
    return this.ACTION(() => {
      const unit = units.get(t.quantityOf(token)?.unit ?? '')?.factor ?? secondsOfMinute;
      const before = bare.map((one) => ({
        ...placed(one),
        seconds: this.quantity(one, 'bare').value * unit,
      }));
      return [...before, { ...placed(token), seconds }];
    });
  });

  readonly stock = this.RULE('stock', (): Value => {
    const name = this.SUBRULE(this.name);
    return { form: 'stock', name, grams: this.quantity(this.CONSUME(t.Mass), 'mass').grams };
  });

  readonly mixedIn = this.RULE(
    'mixedIn',
    (): Value =>
      this.OR([
        {
          ALT: (): Value => {
            this.CONSUME(t.In);
            return { form: 'mixedIn', name: this.SUBRULE(this.name) };
          },
        },
        {
          ALT: (): Value => {
            this.CONSUME(t.By);
            this.CONSUME(t.Hand);
            return { form: 'mixedIn', byHand: true };
          },
        },
      ]),
  );

  readonly rise = this.RULE('rise', (): Value => {
    const { fraction } = this.quantity(this.CONSUME(t.Percent), 'fraction');
    this.CONSUME(t.At);
    return { form: 'rise', fraction, seconds: this.quantity(this.CONSUME(t.Duration), 'duration').seconds };
  });

  readonly trialWater = this.RULE(
    'trialWater',
    (): Value =>
      this.OR([{ ALT: () => this.SUBRULE(this.temperature) }, { ALT: () => this.SUBRULE(this.mass) }]),
  );

  readonly ready = this.RULE('ready', (): Value => {
    const date = this.OPTION(() => this.quantity(this.CONSUME(t.DateToken), 'date').iso);
    const { minutes } = this.quantity(this.CONSUME(t.Clock), 'clock');
    return { form: 'ready', minutes, ...(date === undefined ? {} : { date }) };
  });

  /** The amount of an ingredient or plan line, without its name and its options. */
  readonly amount = this.RULE('amount', (): Amount => {
    const span = { start: 0, end: 0 };
    return this.OR([
      {
        ALT: (): Amount => {
          const fraction = this.quantity(this.CONSUME(t.Percent), 'fraction').fraction;
          const ofAll = this.OPTION4(() => {
            this.CONSUME(t.Of);
            this.CONSUME(t.All);
            return this.CONSUME(t.Flour);
          });
          if (ofAll !== undefined) return { kind: 'ofAllFlour', fraction, ...span };
          return { kind: 'fraction', fraction, ...this.SUBRULE(this.perPiece), ...span };
        },
      },
      {
        ALT: (): Amount => {
          const grams = this.quantity(this.CONSUME(t.Mass), 'mass').grams;
          const baked = this.OPTION(() => this.CONSUME(t.Baked));
          return {
            kind: 'mass',
            grams,
            ...(baked ? { baked: true } : {}),
            ...this.SUBRULE2(this.perPiece),
            ...span,
          };
        },
      },
      {
        ALT: (): Amount => {
          const volume = this.quantity(this.CONSUME(t.Volume), 'volume');
          const cups = volume.cups === undefined ? {} : { cups: volume.cups };
          return {
            kind: 'volume',
            millilitres: volume.millilitres,
            ...cups,
            ...this.SUBRULE3(this.perPiece),
            ...span,
          };
        },
      },
      {
        ALT: (): Amount => {
          const { count } = this.quantity(this.CONSUME(t.Count), 'count');
          return { kind: 'count', count, ...this.SUBRULE4(this.perPiece), ...span };
        },
      },
      {
        ALT: (): Amount => {
          this.CONSUME(t.Balance);
          return { kind: 'balance', ...span };
        },
      },
      {
        ALT: (): Amount => {
          this.CONSUME(t.Remaining);
          return { kind: 'remaining', ...span };
        },
      },
      {
        ALT: (): Amount => {
          this.CONSUME(t.To);
          const fraction = this.quantity(this.CONSUME2(t.Percent), 'fraction').fraction;
          const effective = this.OPTION2(() => this.CONSUME(t.Effective));
          const whole = this.OPTION3(() => this.CONSUME(t.Hydration));
          if (whole === undefined) return { kind: 'unknown', reason: 'half-typed', ...span };
          return { kind: 'hydration', fraction, effective: effective !== undefined, ...span };
        },
      },
    ]);
  });

  readonly perPiece = this.RULE('perPiece', (): { aPiece?: true } => {
    const found = this.OPTION(() => {
      this.CONSUME(t.A);
      return this.CONSUME(t.Word);
    });
    return found === undefined ? {} : { aPiece: true };
  });
}

const rules: Readonly<Record<Form, keyof StatementParser>> = {
  temperature: 'temperature',
  drift: 'drift',
  difference: 'difference',
  mass: 'mass',
  volume: 'volume',
  ovenLoad: 'ovenLoad',
  pieces: 'pieces',
  percent: 'percent',
  shareAt: 'shareAt',
  duration: 'duration',
  heldAt: 'heldAt',
  cookedAt: 'cookedAt',
  settles: 'settles',
  times: 'times',
  energy: 'energy',
  density: 'density',
  price: 'price',
  currency: 'words',
  grain: 'words',
  milling: 'words',
  mixerKind: 'words',
  doughForm: 'words',
  label: 'words',
  degreeOfMixing: 'words',
  iceSupply: 'iceSupply',
  loadSharing: 'words',
  headcount: 'headcount',
  role: 'words',
  name: 'oneName',
  names: 'names',
  massRange: 'massRange',
  machineSpeed: 'machineSpeed',
  mixSpeed: 'mixSpeed',
  load: 'load',
  draws: 'draws',
  yield: 'yield',
  reading: 'reading',
  endReading: 'endReading',
  mixedIn: 'mixedIn',
  rise: 'rise',
  trialWater: 'trialWater',
  testedDough: 'testedDough',
  minutes: 'minutes',
  stock: 'stock',
  ready: 'ready',
};

let parser: StatementParser | undefined;

/** Builds the parser with all checks of the grammar on; throws when the grammar is ambiguous. For the tests. */
export function checkGrammar(): void {
  new StatementParser(true);
}

/** What came of reading tokens by one rule: the value, or the token at which the rule could not go on. */
export type Read<T> = { readonly value: T } | { readonly stoppedAt: IToken | undefined };

function read<T>(line: string, tokens: IToken[], rule: keyof StatementParser): Read<T> {
  parser ??= new StatementParser(false);
  parser.line = line;
  parser.input = tokens;
  const value = (parser[rule] as ParserMethod<[], T>)();
  const error = parser.errors[0];
  if (error === undefined) return { value };
  const stopped = error.token.startOffset >= 0 ? error.token : undefined;
  return { stoppedAt: stopped };
}

/** Reads the value of a property. */
export function readValue(line: string, tokens: IToken[], form: Form): Read<Value> {
  return read<Value>(line, tokens, rules[form]);
}

/** Reads a whole amount form. */
export function readAmount(line: string, tokens: IToken[]): Read<Amount> {
  const result = read<Amount>(line, tokens, 'amount');
  if ('stoppedAt' in result) return result;
  return {
    value: { ...result.value, start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) },
  };
}

const feels: ReadonlySet<string> = new Set(feelWords);
const stages: ReadonlySet<string> = new Set(stageWords);

/** A figure without its unit is no word of what was seen. */
function isWord({ image }: IToken): boolean {
  return /^\p{L}/u.test(image);
}

/** The words behind a reading: its stage, those of feel, and those that are neither. A word of one's own stands as the stage where nothing else does. */
function stageAndFeel(seen: readonly Name[]): Seen {
  const feel = seen.filter(({ folded }) => feels.has(folded));
  const known = seen.find(({ folded }) => stages.has(folded));
  const unread = seen.filter((name) => name !== known && !feels.has(name.folded));
  const stage = known ?? (feel.length === 0 ? unread[0] : undefined);
  return {
    ...(stage === undefined ? {} : { stage }),
    ...(feel.length === 0 ? {} : { feel }),
    ...(unread.length === 0 ? {} : { unread }),
  };
}
