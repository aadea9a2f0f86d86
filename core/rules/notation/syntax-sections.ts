import type { Rule } from '../engine/rule.ts';

const tin = 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n';
const error = 'error' as const;

/** Wording of headers and properties. An error in how a line is written cannot be accepted, only cured. */
export const syntaxOfSections: readonly Rule[] = [
  {
    code: 'outside-section',
    level: error,
    title: 'A line before any section',
    explanation:
      'Every line belongs to the section above it. Start one: `formula Morning Tin:`. Notes of amounts and steps become a formula by the fix, with ' +
      'the name of their title or of their file.',
    bad: 'bread flour  100%\nwater  65%\n',
    good: tin,
  },
  {
    code: 'missing-colon',
    level: error,
    title: 'A header without its colon',
    explanation:
      'The line that starts a section ends with a colon; without it only what can mean nothing else is taken as a header.',
    bad: 'formula Quay Tin\n  bread flour  100%\n  water  65%\n',
    good: tin,
  },
  {
    code: 'stray-colon',
    level: error,
    title: 'A colon where none belongs',
    explanation:
      'A colon ends only the line that starts a section. Between a name and its amount stand blanks.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water: 65%\n',
    good: tin,
  },
  {
    code: 'missing-name',
    level: error,
    title: 'Something without a name',
    explanation:
      'A section carries a name behind its word, an ingredient stands before its amount, and a step starts with what is done.',
    bad: 'formula:\n  bread flour  100%\n  water  65%\n',
    good: tin,
  },
  {
    code: 'missing-mixer',
    level: error,
    title: 'A mix that does not say where',
    explanation: 'Write `mix in big spiral:` or `mix by hand:`; a part is mixed by `mix poolish by hand:`.',
    bad: `${tin}\nmix:\n  load flour, water\n`,
    good: `${tin}\nmix in spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n`,
  },
  {
    code: 'missing-date',
    level: error,
    title: 'A trial without its date',
    explanation:
      'A trial starts with the day, year first: `trial 2026-03-14:`. Words may follow after a comma.',
    bad: `${tin}\ntrial second batch:\n  end 24 °C\n`,
    good: `${tin}\ntrial 2026-03-14, second batch:\n  end 24 °C\n`,
  },
  {
    code: 'no-formula',
    level: error,
    title: 'A part without a formula',
    explanation:
      'Preferments, soakers, mixes, processes and trials belong to the formula above them; any other section closes it. Move the section up to its formula.',
    bad: 'preferment poolish:\n  bread flour  100%\n  water  100%\n',
    good: `${tin}\npreferment poolish:\n  draws 20% of flour\n  bread flour  100%\n  water  100%\n`,
  },
  {
    code: 'unknown-section',
    level: error,
    title: 'A section that nobody knows',
    explanation:
      'The lines below it are kept and not read. The sections are formula, flour, ingredient, mixer, bakery, plan, and within a formula preferment, soaker, scald, part, filling, topping, bath, mix, process and trial. What bakers call a part, such as `biga:` or `levain:`, begins it all the same and lacks but a word.',
    bad: 'formulla Quay Tin:\n  bread flour  100%\n  water  65%\n',
    good: tin,
  },
  {
    code: 'unknown-property',
    level: error,
    title: 'A section says nothing of that name',
    explanation: 'Each kind of section has its own properties. Words of your own go behind `note` or `#`.',
    bad: 'mixer big spiral:\n  kind spiral\n  bowel 12 kg to 60 kg\n',
    good: 'mixer big spiral:\n  kind spiral\n  bowl 12 kg to 60 kg\n',
  },
  {
    code: 'missing-value',
    level: error,
    title: 'A property without its value',
    explanation: 'The message shows how the whole line reads.',
    bad: 'mixer big spiral:\n  kind\n',
    good: 'mixer big spiral:\n  kind spiral\n',
  },
  {
    code: 'wrong-value',
    level: error,
    title: 'A value that does not fit its property',
    explanation:
      'The value is of another kind, is none of the words the property knows, or cannot be. The message shows how the line reads.',
    bad: 'mixer big spiral:\n  kind sprial\n',
    good: 'mixer big spiral:\n  kind spiral\n',
  },
  {
    code: 'line-too-long',
    level: error,
    title: 'A line far too long',
    explanation:
      'A line of more than 4000 characters is kept and not read. Break it up, or make it a comment with `#` in front.',
    bad: `formula Quay Tin:\n  bread flour  100%\n  ${'water '.repeat(700)} 65%\n`,
    good: tin,
  },
  {
    code: 'two-steps',
    level: error,
    title: 'Two steps on one line',
    explanation:
      'Each step of a process has a line of its own, and one time: a second would else be words of the first, and its time would be lost. Times that break down that of the step, `bake 45 min, 20 min with lid, 25 min without`, and such as go on within it, `steam for 10 min`, may stand.',
    bad: `${tin}\nprocess:\n  divide proof 55 min at 28 °C\n`,
    good: `${tin}\nprocess:\n  divide\n  proof 55 min at 28 °C\n`,
  },
  {
    code: 'cold-without-degrees',
    level: 'info',
    title: 'A cold step without its temperature',
    explanation:
      'A `retard`, or a step in the fridge, whose temperature is not written is taken to be at 5 °C, for at that of the room the dough would rise in an hour. Write the temperature, for by it the dough rises or stands still.',
    bad: `${tin}\nprocess:\n  proof 12 h in the fridge\n`,
    good: `${tin}\nprocess:\n  proof 12 h at 4 °C, in the fridge\n`,
  },
  {
    code: 'fold-times',
    level: error,
    title: 'Folds that no time can be told of',
    explanation:
      '`fold 3 times` and `fold every 40 min` are spread over the time of their step, which has to be written: `bulk 2 h, fold 3 times`.',
    bad: `${tin}\nprocess:\n  bulk at 25 °C, fold 3 times\n`,
    good: `${tin}\nprocess:\n  bulk 2 h at 25 °C, fold 3 times\n`,
  },
  {
    code: 'fold-past-end',
    level: 'warning',
    title: 'A fold after the end of its step',
    explanation:
      'A fold stands in the step that it interrupts, at a time from the start of it: `bulk 2 h, 4 folds every 30 min` is folded the last time as it ends. What would come later is not counted. Correct the time of the step or of the fold; what is done after the step stands on a line of its own.',
    bad: `${tin}\nprocess:\n  bulk 1 h at 25 °C, fold at 30 and 90 min\n`,
    good: `${tin}\nprocess:\n  bulk 2 h at 25 °C, fold at 30 and 90 min\n`,
  },
];
