import type { LineFacts, SectionFacts } from './formula-facts.ts';
import type { FormulaProblem, LinePlace } from './formula-result.ts';

/**
 * Orders the sections, parts before their users and the dough last. A line that closes a loop (a part inside
 * itself, or a dough inside its own part) is reported, named, and turned into an unknown amount.
 */
export function markLoops(sections: readonly SectionFacts[], problems: FormulaProblem[]): number[] {
  const order: number[] = [];
  const state = new Uint8Array(sections.length);
  const path: LineFacts[] = [];

  const visit = (section: SectionFacts): void => {
    state[section.index] = 1;
    for (const line of section.lines) {
      const child = sections[line.child];
      if (child === undefined) continue;
      path.push(line);
      if (state[child.index] === 1 || child.index === 0) closeLoop(line, child, path, problems);
      else if (state[child.index] === 0) visit(child);
      path.pop();
    }
    state[section.index] = 2;
    if (section.index > 0) order.push(section.index);
  };

  for (const section of sections) if (state[section.index] === 0) visit(section);
  order.push(0);
  return order;
}

function closeLoop(
  line: LineFacts,
  child: SectionFacts,
  path: readonly LineFacts[],
  problems: FormulaProblem[],
): void {
  const from = path.findIndex((step) => step.section === child);
  const steps = from < 0 ? [line] : path.slice(from);
  const names = steps.map((step) => step.section.input.name);
  if (from < 0) names.unshift(child.input.name);
  const loop = [...names, child.input.name];
  const place: LinePlace = { sectionId: line.section.input.id, lineId: line.input.id };
  const related = steps
    .filter((step) => step !== line)
    .map((step) => ({ sectionId: step.section.input.id, lineId: step.input.id }));
  problems.push({ kind: 'loop', ...place, related, values: { loop } });
  line.amount = { kind: 'unknown', unsolved: { code: 'loop', ...place } };
  line.child = -1;
}
