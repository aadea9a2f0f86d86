import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { assumedFlourGrams, escapeMarkdown } from '../../facts/formula-words.ts';
import { inMarkdown } from '../../facts/in-markdown.ts';
import type { LineFacts } from '../../facts/line-facts.ts';
import type { Ingredient } from '../../model/found-ingredient.ts';
import { propertiesOf } from '../../model/properties.ts';
import type { IngredientStatement, ParsedLine } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';

/** What the figures at the end of an ingredient line are, and where each comes from, in sentences of Markdown. */
export function amountMessages(
  analysis: Analysis,
  facts: LineFacts,
  statement: IngredientStatement,
): Message[] {
  const first = figureMessage(facts, statement);
  if (first === undefined) return [];
  const { line, ingredient } = facts;
  const said = [first];
  if (statement.amount.kind !== 'mass' && line.grams !== undefined) said.push(scaleMessage(analysis));
  if (ingredient !== undefined)
    said.push(message('hint.composition', { source: inMarkdown(ingredient.source) }));
  return said;
}

function figureMessage(
  { line, section, ingredient }: LineFacts,
  { amount }: IngredientStatement,
): Message | undefined {
  const { fraction, grams } = line;
  const { baseGrams } = section;
  const figures = figuresOf(fraction, grams);
  switch (amount.kind) {
    case 'fraction': {
      if (grams === undefined) return undefined;
      const stated = { fraction: fraction ?? amount.fraction, grams };
      return baseGrams === undefined
        ? message('hint.percent-stated', stated)
        : message('hint.percent-stated-of', { ...stated, otherGrams: baseGrams });
    }
    case 'mass': {
      if (fraction === undefined) return undefined;
      const isOfFlour = section.lines.some(({ isFlour }) => isFlour);
      if (baseGrams === undefined)
        return message(isOfFlour ? 'hint.weight-stated' : 'hint.weight-stated-line', { fraction });
      const stated = { fraction, otherGrams: baseGrams };
      return message(isOfFlour ? 'hint.weight-stated-of' : 'hint.weight-stated-line-of', stated);
    }
    case 'balance':
      return message('hint.balance', { figures });
    case 'hydration': {
      const code = amount.effective ? 'hint.effective-hydration' : 'hint.hydration';
      return message(code, { figures, fraction: amount.fraction });
    }
    case 'remaining':
      return message('hint.remaining', { figures });
    case 'volume': {
      const density = ingredient?.densityGramsPerMillilitre;
      if (density === undefined) return message('hint.no-density', { figures });
      const source = sourceOf(ingredient, 'density');
      return message('hint.density', { figures, gramsPerMillilitre: density, source });
    }
    case 'count': {
      const pieceGrams = ingredient?.pieceGrams;
      if (pieceGrams === undefined) return message('hint.no-piece-weight', { figures });
      const source = sourceOf(ingredient, 'piece weight');
      return message('hint.pieces', { figures, grams: pieceGrams, source });
    }
    default:
      return undefined;
  }
}

function figuresOf(fraction: number | undefined, grams: number | undefined): Message {
  if (fraction === undefined)
    return grams === undefined ? message('hint.not-known') : message('hint.weight', { grams });
  return grams === undefined
    ? message('hint.share', { fraction })
    : message('hint.both', { fraction, grams });
}

/** Whether the section of an ingredient states a property itself, or the catalogue does. */
function sourceOf(ingredient: Ingredient | undefined, property: string): Message {
  const { block } = ingredient?.definition ?? {};
  const isStated = block?.top !== undefined && propertiesOf(block, block.top).has(property);
  return message(isStated ? 'provenance.in-section' : 'provenance.common-practice');
}

/** What fixes the scale of the weights. */
function scaleMessage({ resolved, solved }: Analysis): Message {
  if (solved?.assumedScale === true) return message('hint.scale-assumed', { grams: assumedFlourGrams });
  const [said] = resolved.model.said.get('yield') ?? [];
  return said === undefined
    ? message('hint.scale-lines')
    : message('hint.scale-yield', { written: saidText(elementAt(resolved.model.block.lines, said.line)) });
}

const saidText = ({ text, tokens }: ParsedLine): string => {
  const comment = tokens.find(({ kind }) => kind === 'comment');
  return text
    .slice(0, comment?.start)
    .replace(/[`\uFEFF]/g, '')
    .trim();
};

/** What the totals on the header of a formula are. */
export function totalsMessages(analysis: Analysis): Message[] {
  const { solved } = analysis;
  if (solved === undefined) return [];
  const { effectiveHydration: fraction } = solved;
  return [
    message('hint.totals'),
    ...(fraction === undefined ? [] : [message('hint.totals-effective', { fraction })]),
    scaleMessage(analysis),
  ];
}

/** What the figures on the header of a part are. */
export function partTotalsMessages(analysis: Analysis, inBowl: boolean): Message[] {
  return [message(inBowl ? 'hint.part' : 'hint.part-outside'), scaleMessage(analysis)];
}

/** Half of the width of the bands where nothing of the mixer is calibrated. */
const usualBand = 0.2;

/** What the figures at the end of a line of a mixing programme are, and what they stand on. */
export function mixingHintMessages(analysis: Analysis, mix: MixAnalysis): Message[] {
  const { roomCelsius, flourCelsius, assumed } = analysis.resolved.bakery;
  const name = escapeMarkdown(mix.mixer.name);
  const facts = [
    message(assumed.includes('room') ? 'hint.room-assumed' : 'hint.room', { celsius: roomCelsius }),
    message(assumed.includes('flour') ? 'hint.flour-assumed' : 'hint.flour', { celsius: flourCelsius }),
    message(mix.mixer.definition === undefined ? 'hint.machine' : 'hint.machine-stated', { name }),
  ];
  return [
    message('hint.mixing'),
    message('hint.computed-from', { facts }),
    message('hint.bands', { fraction: usualBand }),
  ];
}
