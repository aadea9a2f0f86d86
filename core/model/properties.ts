import { memoByBlock } from '../syntax/block-memo.ts';
import { type Block, linesOf, type PropertyStatement, type Section, type Value } from '../syntax/tree.ts';

/** A property as said in a section, with the line (counted in its block) that says it. */
export interface Said {
  readonly line: number;
  readonly statement: PropertyStatement;
}

/** What a section says, by property word, in the order of the lines. */
export type SaidProperties = ReadonlyMap<string, readonly Said[]>;

const remembered = memoByBlock(() => new Map<Section, SaidProperties>());

/** What a section of the block says. Remembered with the block. */
export function propertiesOf(block: Block, section: Section): SaidProperties {
  const ofBlock = remembered(block);
  const before = ofBlock.get(section);
  if (before !== undefined) return before;
  const said = new Map<string, Said[]>();
  for (const line of linesOf(section)) {
    const { statement: first, further = [] } = block.lines[line]!;
    for (const statement of [first, ...further]) {
      if (statement.kind !== 'property') continue;
      const list = said.get(statement.property);
      if (list === undefined) said.set(statement.property, [{ line, statement }]);
      else list.push({ line, statement });
    }
  }
  ofBlock.set(section, said);
  return said;
}

/** The value of a property of one form, the first time it is said. */
export function saidValue<F extends Value['form']>(
  said: SaidProperties,
  word: string,
  form: F,
): Extract<Value, { form: F }> | undefined {
  const value = said.get(word)?.find((one) => one.statement.value !== undefined)?.statement.value;
  return value?.form === form ? (value as Extract<Value, { form: F }>) : undefined;
}

export function fractionOf(said: SaidProperties, word: string): number | undefined {
  return saidValue(said, word, 'fraction')?.fraction;
}
