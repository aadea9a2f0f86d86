import type { Analysis } from '../analysis/analysis.ts';
import type { MixAnalysis } from '../analysis/mixing.ts';
import type { Ingredient } from '../model/ingredient.ts';
import { propertiesOf } from '../model/properties.ts';
import type { IngredientStatement, ParsedLine } from '../syntax/tree.ts';
import { degrees, mass, percent } from '../text/figures.ts';
import { escapeMarkdown } from './formula-words.ts';
import type { LineFacts } from './line-facts.ts';

/** What the figures at the end of an ingredient line are, and where each comes from, in sentences of Markdown. */
export function amountWords(analysis: Analysis, facts: LineFacts, statement: IngredientStatement): string[] {
  const { line, section, ingredient } = facts;
  const share = line.fraction === undefined ? undefined : percent(line.fraction);
  const weight = line.grams === undefined ? undefined : mass(line.grams);
  const base = section.baseGrams === undefined ? '' : ` of ${mass(section.baseGrams)}`;
  const whole = section.lines.some(({ isFlour }) => isFlour) ? 'the flour' : 'its line of 100 %';
  const said: string[] = [];
  switch (statement.amount.kind) {
    case 'fraction':
      if (weight !== undefined) said.push(`**${weight}**: ${share ?? ''}${base}. The percent is given here.`);
      break;
    case 'mass':
      if (share !== undefined)
        said.push(
          `**${share}** of ${whole}${base === '' ? '' : ` (${base.slice(4)})`}. The weight is given here.`,
        );
      break;
    case 'balance':
      said.push(
        `**${figuresOf(share, weight)}**: what is left of 100 % flour, worked out from the other flours.`,
      );
      break;
    case 'hydration':
      said.push(
        `**${figuresOf(share, weight)}**: as much as ${percent(statement.amount.fraction)} ${statement.amount.effective ? 'effective ' : ''}hydration takes, worked out over the whole formula.`,
      );
      break;
    case 'remaining':
      said.push(`**${figuresOf(share, weight)}**: all that is left of the part.`);
      break;
    case 'volume':
      said.push(
        `**${figuresOf(share, weight)}**, by a density of ${ingredient?.densityGramsPerMillilitre ?? '?'} g/ml: ${saidBy(ingredient, 'density')}.`,
      );
      break;
    case 'count':
      said.push(
        `**${figuresOf(share, weight)}**, by ${ingredient?.pieceGrams === undefined ? 'the weight of a piece' : `${mass(ingredient.pieceGrams)} a piece`}: ${saidBy(ingredient, 'piece weight')}.`,
      );
      break;
    default:
      break;
  }
  if (said.length === 0) return [];
  if (statement.amount.kind !== 'mass' && weight !== undefined) said.push(scaleWords(analysis));
  if (ingredient !== undefined) said.push(`_Composition: ${escapeMarkdown(ingredient.source)}._`);
  return said;
}

function figuresOf(share: string | undefined, weight: string | undefined): string {
  return [share, weight].filter((one) => one !== undefined).join(' · ') || 'Not known yet';
}

/** Whether the section of an ingredient says a property itself, or the catalogue does. */
function saidBy(ingredient: Ingredient | undefined, property: string): string {
  const { block } = ingredient?.definition ?? {};
  const isGiven = block?.top !== undefined && propertiesOf(block, block.top).has(property);
  return isGiven ? 'given in its section' : 'common practice';
}

/** What fixes the scale of the weights. */
export function scaleWords({ resolved, solved }: Analysis): string {
  if (solved?.assumedScale === true)
    return 'No yield is written, so the weights are those for 1 kg of flour.';
  const [said] = resolved.model.said.get('yield') ?? [];
  const text = said === undefined ? undefined : saidText(resolved.model.block.lines[said.line]!);
  return text === undefined
    ? 'The batch is as large as the lines given in weights make it.'
    : `The batch is sized by \`${text}\`, as given.`;
}

const saidText = ({ text, tokens }: ParsedLine): string => {
  const comment = tokens.find(({ kind }) => kind === 'comment');
  return text
    .slice(0, comment?.start)
    .replace(/[`\uFEFF]/g, '')
    .trim();
};

/** What the totals on the header of a formula are. */
export function totalsWords(analysis: Analysis): string[] {
  const { solved } = analysis;
  if (solved === undefined) return [];
  const said = [
    'Hydration is the water lines by all flour, parts included; the weight is all that goes in the bowl.',
  ];
  const { effectiveHydration: effective } = solved;
  if (effective !== undefined)
    said.push(
      `With the water inside the other ingredients it is ${percent(effective)}, by the composition of each (its hover names the source).`,
    );
  return [...said, scaleWords(analysis)];
}

/** What the figures on the header of a part are. */
export function partTotalsWords(analysis: Analysis, inBowl: boolean): string[] {
  return [
    inBowl
      ? 'Hydration is the water of this part by its flour; the weight is all of it that is made.'
      : 'The weight of all of it. It never goes in the bowl and counts in no hydration.',
    scaleWords(analysis),
  ];
}

/** What the figures at the end of a line of a mixing programme are, and what they stand on. */
export function mixingHintWords(analysis: Analysis, mix: MixAnalysis): string[] {
  const { bakery } = analysis.resolved;
  const condition = (name: string, celsius: number, key: 'room' | 'flour'): string =>
    `${name} ${degrees(celsius)} (${bakery.assumed.includes(key) ? 'common practice: a mild day' : 'given'})`;
  const mixer = escapeMarkdown(mix.mixer.name);
  const machine =
    mix.mixer.definition === undefined
      ? `${mixer} as such machines usually are (common practice)`
      : `${mixer} as its section says (given, the rest common practice)`;
  return [
    'The minutes of the programme so far, the temperature of the dough at the end of this line, and how far it is developed.',
    `Worked out from ${condition('room', bakery.roomCelsius, 'room')}, ${condition('flour', bakery.flourCelsius, 'flour')} and ${machine}.`,
    '_The stage is told in bands: common practice and our own fit, ±20 % until your own trials say better._',
  ];
}
