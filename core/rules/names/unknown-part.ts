import type { Name } from '../../syntax/tree.ts';
import { nearestWord } from '../../text/nearest.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule, RuleContext, RuleFinding } from '../engine/rule.ts';

export const unknownPart: Rule = {
  code: 'unknown-part',
  level: 'error',
  mendsSlips: true,
  title: 'The formula has no such part',
  explanation:
    'A mix, a process or a trial names a preferment, soaker or part that the formula does not have. Write the name as the ' +
    'header of its section does, or add the section.',
  bad:
    'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  butter block  20%\n\npart butter block:\n  butter  100%\n\n' +
    'process buter block:\n  sheet\n',
  good:
    'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  butter block  20%\n\npart butter block:\n  butter  100%\n\n' +
    'process butter block:\n  sheet\n',
  *check(context) {
    const { analysis, block } = context;
    if (analysis === undefined) return;
    const { model, problems, statements } = analysis.resolved;
    for (const problem of problems)
      if (problem.kind === 'unknown-part') yield findingOf(context, problem.line, problem.name);
    const parts = new Set(model.sections.flatMap((section) => section.name?.folded ?? []));
    for (const { headerLine, header } of model.processes) {
      if (header.part !== undefined && !parts.has(header.part.folded))
        yield findingOf(context, headerLine, header.part);
    }
    const named = new Set([...statements.values()].map((statement) => statement.name.folded));
    for (const [line, { statement }] of block.lines.entries()) {
      if (statement.kind !== 'property' || statement.value?.form !== 'partTemperature') continue;
      const { name } = statement.value;
      if (!parts.has(name.folded) && !named.has(name.folded)) yield findingOf(context, line, name);
    }
  },
};

function findingOf({ analysis }: RuleContext, line: number, name: Name): RuleFinding {
  const names = analysis!.resolved.model.sections.slice(1).flatMap((section) => section.name ?? []);
  const meant = nearestWord(
    name.folded,
    names.map((one) => one.folded),
  );
  const written = names.find((one) => one.folded === meant)?.text;
  return {
    line,
    span: { start: name.start, end: name.end },
    message:
      written !== undefined
        ? message('unknown-part.meant', { name: name.text, otherName: written })
        : names.length === 0
          ? message('unknown-part.none', { name: name.text })
          : message('unknown-part.others', { name: name.text, names: names.map((one) => one.text) }),
    fixes: written === undefined ? [] : [writeFix(line, name, written, true)],
  };
}
