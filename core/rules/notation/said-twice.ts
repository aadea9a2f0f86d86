import type { Block, PropertyStatement, Section } from '../../syntax/tree.ts';
import { findProperty } from '../../syntax/vocabulary.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { removeLineFix } from '../engine/fixes.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';
import { sectionsOf } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const saidTwice: Rule = {
  code: 'said-twice',
  level: 'error',
  title: 'The same thing is said twice',
  explanation:
    'A section says each of its properties once (a mixer each of its speeds). The first counts. Merged files are the usual cause: take one out.',
  bad: 'formula Quay Tin:\n  yield 10 kg\n  yield 12 kg\n  bread flour  100%\n  water  65%\n',
  good: 'formula Quay Tin:\n  yield 12 kg\n  bread flour  100%\n  water  65%\n',
  *check({ block }) {
    for (const section of sectionsOf(block)) yield* ofSection(block, section);
  },
};

function* ofSection(block: Block, section: Section): Iterable<RuleFinding> {
  if (section.kind === 'unknown') return;
  const first = new Map<string, number>();
  for (let line = section.headerLine + 1; line < section.endLine; line++) {
    const { statement } = elementAt(block.lines, line);
    if (statement.kind !== 'property') continue;
    const key = keyOf(section.kind, statement);
    if (key === undefined) continue;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, line);
      continue;
    }
    yield {
      line,
      span: { start: statement.keyword.start, end: statement.keyword.end },
      message: messageOf(key),
      related: [{ line: before, span: wordsOf(block, before), message: message('said-twice.first') }],
      fixes: [removeLineFix(message('fix.take-this-line-out'), block, line, true)],
    };
  }
}

/** Keys that are no words of the notation. */
const waterWeight = '=water weight';
const waterTemperature = '=water temperature';
const trialMixer = '=mixer';

function messageOf(key: string): Message {
  switch (key) {
    case waterWeight:
      return message('said-twice.water-weight');
    case waterTemperature:
      return message('said-twice.water-temperature');
    case trialMixer:
      return message('said-twice.trial-mixer');
    default:
      return message('said-twice.property', { property: key });
  }
}

/** What makes two lines the same saying; nothing for what may be said again. */
function keyOf(kind: Exclude<Section['kind'], 'unknown'>, statement: PropertyStatement): string | undefined {
  const { property, value } = statement;
  if (value?.form === 'machineSpeed') return `speed ${value.number}`;
  if (value?.form === 'partTemperature') return value.name.text.toLowerCase();
  if (kind === 'trial' && property === 'water' && value !== undefined)
    return value.form === 'mass' ? waterWeight : waterTemperature;
  if (kind === 'trial' && (property === 'mixed' || property === 'mixer')) return trialMixer;
  if (property === 'draws' && value?.form === 'draws') return `draws ${value.name.folded}`;
  if (findProperty(kind, property)?.repeatable === true) return undefined;
  return property;
}
