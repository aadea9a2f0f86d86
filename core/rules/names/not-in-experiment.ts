import { byHand } from '../../model/found-mixer.ts';
import { propertiesOf } from '../../model/properties.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import type { Block, Name, Section, Value } from '../../syntax/tree.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';

export const notInExperiment: Rule = {
  code: 'not-in-experiment',
  level: 'warning',
  title: 'A trial names an experiment that does not have its dough',
  explanation:
    'A trial that names an experiment stands beside what is expected of the dough of its formula there. Where the experiment names no such dough, or has it twice and on other mixers, ' +
    'the readings are shown in none of its tables: name the formula in a `dough` line, write the mixer that was used, or take `experiment` out of the trial.',
  bad: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nformula Wet White like Plain White:\n  water  75%\n\ntrial 2026-04-11:\n  experiment Long and longer\n  water 20 °C\n  mixed by hand\n  load all\n  knead 30 min\n  at 8 min  24 °C\n\nexperiment Long and longer:\n  dough Plain White, by hand, knead 30 min\n  read at 8 min\n',
  good: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nformula Wet White like Plain White:\n  water  75%\n\ntrial 2026-04-11:\n  experiment Long and longer\n  water 20 °C\n  mixed by hand\n  load all\n  knead 30 min\n  at 8 min  24 °C\n\nexperiment Long and longer:\n  dough Plain White, by hand, knead 30 min\n  dough Wet White, by hand, knead 30 min\n  read at 8 min\n',
  *check({ block, scope }) {
    const { top, subs } = block;
    if (top?.kind !== 'formula' || top.header.name === undefined) return;
    for (const sub of subs) if (sub.kind === 'trial') yield* ofTrial(block, sub, top.header.name, scope);
  },
};

type TestedDough = Extract<Value, { form: 'testedDough' }>;

function* ofTrial(block: Block, trial: Section, formula: Name, scope: Scope): Iterable<RuleFinding> {
  const said = propertiesOf(block, trial);
  const named = said.get('experiment')?.[0];
  const value = named?.statement.value;
  if (named === undefined || value?.form !== 'name') return;
  const [definition, ...others] = scope.find('experiment', value.name.folded)[0] ?? [];
  if (definition === undefined || others.length > 0) return;
  const place = { line: named.line, span: { start: value.name.start, end: value.name.end } };
  const facts = { name: value.name.text, otherName: formula.text };
  const doughs = doughsOf(definition);
  const own = doughs.filter(({ name }) => name.folded === formula.folded);
  // A dough line that could not be read may be the one.
  if (doughs.length === 0) return;
  if (own.length === 0) yield { ...place, message: message('not-in-experiment.dough', facts) };
  else if (
    own.length > 1 &&
    !own.some((dough) => mayBe(dough, mixerOf(said.get('mixed')?.[0]?.statement.value)))
  )
    yield { ...place, message: message('not-in-experiment.mixer', facts) };
}

function doughsOf({ block }: Definition): readonly TestedDough[] {
  if (block.top === undefined) return [];
  const values = (propertiesOf(block, block.top).get('dough') ?? []).map(({ statement }) => statement.value);
  const read = values.filter((value) => value?.form === 'testedDough');
  return read.length === values.length ? read : [];
}

/** Whether a trial on that mixer may be of a dough line; where one of the two leaves the mixer to the formula nobody looks further. */
function mayBe({ mixer, byHand: isByHand }: TestedDough, ranOn: string | undefined): boolean {
  const wanted = isByHand === true ? byHand.name : mixer?.folded;
  return wanted === undefined || ranOn === undefined || wanted === ranOn;
}

function mixerOf(value: Value | undefined): string | undefined {
  if (value?.form !== 'mixedIn') return undefined;
  return value.byHand === true ? byHand.name : value.name?.folded;
}
