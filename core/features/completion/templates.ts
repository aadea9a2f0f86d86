import { firstOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

/** A formula to begin with; the baker changes its lines, not a form. */
export interface FormulaTemplate {
  readonly id: string;
  readonly title: string;
  readonly explanation: string;
}

interface Template {
  readonly id: 'plain' | 'preferment' | 'hand';
  readonly body: string;
}

// Amounts are those of plain breads, common practice, no source; they are there to be changed.
const templates: readonly Template[] = [
  {
    id: 'plain',
    body: `  yield 20 pieces of 900 g
  bake loss 12%
  dough temperature 25 °C

  bread flour        100%
  water              to 66% hydration
  salt               2%
  fresh yeast        1%

mix in spiral:
  load flour, water, salt, yeast
  speed 1 for 4 min
  speed 2 for 5 min

process:
  bulk 1 h 30 min at 25 °C
  divide
  shape
  proof 55 min at 27 °C
  bake 35 min at 235 °C, steam
`,
  },
  {
    id: 'preferment',
    body: `  yield 20 pieces of 900 g
  bake loss 12%
  dough temperature 25 °C

  bread flour        100%
  water              to 68% hydration
  salt               2%
  fresh yeast        0.8%

preferment poolish:
  draws 25% of flour
  bread flour        100%
  water              100%
  instant yeast      0.1%
  ferment 12 h at 18 °C

mix in spiral:
  load flour, water, poolish
  speed 1 for 3 min
  rest 20 min
  add salt, fresh yeast
  speed 1 for 4 min
  speed 2 for 4 min

process:
  bulk 1 h 30 min at 25 °C, fold at 45 min
  divide
  shape
  proof 55 min at 27 °C
  bake 35 min at 235 °C, steam
`,
  },
  {
    id: 'hand',
    body: `  yield 2 pieces of 850 g
  bake loss 13%
  dough temperature 23 °C

  bread flour        100%
  water              to 68% hydration
  salt               2%
  fresh yeast        0.8%

mix by hand:
  load flour, water
  stir 3 min
  rest 30 min
  add salt, yeast
  knead 8 min

process:
  bulk 2 h at 24 °C, fold at 40 min
  divide
  shape
  proof 1 h at 25 °C
  bake 40 min at 240 °C, steam
`,
  },
];

/** The formulas that one may begin with, the plainest first. */
export function formulaTemplates(speaker: Speaker): readonly FormulaTemplate[] {
  return templates.map(({ id }) => ({
    id,
    title: speaker.say(message(`template.${id}`)),
    explanation: speaker.say(message(`template.${id}-how`)),
  }));
}

/** The text of a new file with one formula; a name that would not read as one is put in quotes. */
export function newFormulaText(name: string, templateId: string): string {
  const { body } = templates.find(({ id }) => id === templateId) ?? firstOf(templates);
  return `formula ${headerName(name)}:\n${body}`;
}

/** A name as a header says it: in quotes where it would else not read as one. */
export function headerName(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/["\r\n\t]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (plain === '') return 'New Formula';
  return /^[\p{L}\p{M}\d][\p{L}\p{M}\d'’ -]*$/u.test(plain) ? plain : `"${plain}"`;
}
