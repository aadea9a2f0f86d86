import type { NameProblem } from '../../model/name-problem.ts';
import type { Scope } from '../../model/scope.ts';
import { baseProblem } from '../../model/variant.ts';
import type { Block, Name } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { nearestWord } from '../../text/nearest.ts';
import type { Span } from '../../text/span.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';

export const unknownFormula: Rule = {
  code: 'unknown-formula',
  level: 'warning',
  mendsSlips: true,
  title: 'A plan, a variant or an experiment asks for a formula that is not there',
  explanation:
    'What is to be made cannot be counted, and a variant of it not be computed. Write the name as the header of the formula does, or write the formula.',
  bad: 'formula Quay Tin:\n  yield 10 pieces of 900 g\n  bread flour  100%\n  water  65%\n\nplan Friday:\n  ready 2026-05-15 06:00\n  Quai Tin  20 pieces\n',
  good: 'formula Quay Tin:\n  yield 10 pieces of 900 g\n  bread flour  100%\n  water  65%\n\nplan Friday:\n  ready 2026-05-15 06:00\n  Quay Tin  20 pieces\n',
  *check({ block, scope }) {
    const base = baseProblem(block, scope);
    if (base?.kind === 'base-unknown') yield unknownBase(base, scope);
    if (base?.kind === 'several') {
      yield {
        line: base.line,
        span: spanOf(base.name),
        level: 'error',
        message: message('unknown-formula.several', {
          name: elementAt(base.definitions, 0).name.text,
          count: base.definitions.length,
        }),
        related: base.definitions.map((definition) => ({
          definition,
          message: message('several-definitions.one'),
        })),
      };
    }
    yield* testedDoughs(block, scope);
    if (block.top?.kind !== 'plan') return;
    for (const [line, { statement }] of block.lines.entries())
      if (statement.kind === 'planned') yield* unknownName(line, statement.name, scope);
  },
};

/** The doughs of an experiment, and the experiment that a trial names. */
function* testedDoughs(block: Block, scope: Scope): Iterable<RuleFinding> {
  const { top } = block;
  if (top?.kind !== 'experiment' && top?.kind !== 'formula') return;
  for (const [line, { statement }] of block.lines.entries()) {
    const value = statement.kind === 'property' ? statement.value : undefined;
    if (value?.form === 'testedDough') yield* unknownName(line, value.name, scope);
    else if (value?.form === 'name' && statement.kind === 'property' && statement.property === 'experiment')
      yield* unknownName(line, value.name, scope, 'experiment');
  }
}

/** A name that no formula has, or several: with the one that may be meant. */
function* unknownName(
  line: number,
  name: Name,
  scope: Scope,
  kind: 'formula' | 'experiment' = 'formula',
): Iterable<RuleFinding> {
  if (name.folded === '') return;
  const found = scope.find(kind, name.folded)[0];
  if (found !== undefined && found.length === 1) return;
  const span = spanOf(name);
  if (found !== undefined) {
    yield {
      line,
      span,
      message: message('unknown-formula.several', { name: name.text, count: found.length }),
      related: found.map((definition) => ({ definition, message: message('several-definitions.one') })),
    };
    return;
  }
  const written = nearestOf(name, scope, kind) ?? (kind === 'formula' ? withComma(name, scope) : undefined);
  const none = kind === 'formula' ? 'unknown-formula.none' : 'unknown-formula.no-experiment';
  yield {
    line,
    span,
    message:
      written === undefined
        ? message(none, { name: name.text })
        : message('unknown-formula.meant', { name: name.text, otherName: written }),
    fixes: written === undefined ? [] : [writeFix(line, name, written, true)],
  };
}

/** `Plain White in spiral`: the name of a formula, and behind it where it is mixed, which stands behind a comma. */
function withComma({ text }: Name, scope: Scope): string | undefined {
  const [, formula = '', where] = /^(\S.*?)\s+(in\s+\S.*|by hand)$/iu.exec(text) ?? [];
  const found = scope.find('formula', foldName(formula))[0];
  return where === undefined || found === undefined ? undefined : `${formula}, ${where}`;
}

const spanOf = ({ start, end }: Name): Span => ({ start, end });

function nearestOf(name: Name, scope: Scope, kind: 'formula' | 'experiment'): string | undefined {
  const seen = new Map(scope.names(kind).map((one) => [one.name.folded, one.name.text]));
  const meant = nearestWord(name.folded, seen.keys());
  return meant === undefined ? undefined : seen.get(meant);
}

/** The base of a variant that is not there: its own, or that of a base, which is told there too. */
function unknownBase(
  { line, name, wanted }: Extract<NameProblem, { kind: 'base-unknown' }>,
  scope: Scope,
): RuleFinding {
  const span = spanOf(name);
  if (wanted !== name) {
    const said = message('unknown-formula.base-of-base', { name: name.text, otherName: wanted.text });
    return { line, span, message: said, level: 'error' };
  }
  const meant = nearestOf(name, scope, 'formula');
  const said =
    meant === undefined
      ? message('unknown-formula.base', { name: name.text })
      : message('unknown-formula.base-meant', { name: name.text, otherName: meant });
  return {
    line,
    span,
    message: said,
    level: 'error',
    fixes: meant === undefined ? [] : [writeFix(line, name, meant, true)],
  };
}
