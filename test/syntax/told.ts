import { parseFile } from '../../core/syntax/file.ts';
import type { SyntaxProblem } from '../../core/syntax/syntax-problem.ts';
import type { Amount, Name, ParsedLine, Statement } from '../../core/syntax/tree.ts';
import { givenLines, plainOf } from '../fixture.ts';
import { tellMessage } from '../words/told.ts';

/** How a text reads, told line by line under its input lines: problems with their fixes, then the statement. */
export function tell(body: string): string {
  const input = givenLines(body);
  const file = parseFile(input.map((line) => plainOf(line)).join('\n'));
  const blockProblems = file.blocks.flatMap(({ block, firstLine }) =>
    block.problems.map((one) => ({ ...one, line: firstLine + one.line })),
  );
  const out: string[] = [];
  let at = 0;
  for (const marked of input) {
    out.push(marked.trimEnd());
    // An escaped line may hold a carriage return and so be two lines of the file, or none of its own.
    const pieces = plainOf(marked).split(/\r\n?/);
    const count = plainOf(marked).endsWith('\r') ? pieces.length - 1 : pieces.length;
    for (let piece = 0; piece < count; piece++, at++) {
      const line = file.lines[at]!;
      const above = blockProblems.filter((one) => one.line === at);
      for (const one of [...line.problems, ...above]) out.push(...tellProblem(line.text, one));
      const said = tellLine(line);
      if (said !== '') out.push(`    ${said}`);
    }
  }
  return out.map((told) => (/^[|!]/.test(told) ? told : shown(told).trimEnd())).join('\n');
}

/** A line of the answer with characters nobody sees written as escapes, and long runs cut short. */
function shown(told: string): string {
  return told
    .replace(/(.)\1{99,}/gu, (run, one: string) => `${one.repeat(3)}…(${run.length})`)
    .replace(
      /[\p{C}\u2028\u2029\uFFFD]/gu,
      (one) => `\\u{${one.codePointAt(0)!.toString(16).toUpperCase()}}`,
    );
}

function tellProblem(text: string, { code, message, span, fixes, unlessKnown }: SyntaxProblem): string[] {
  const marks = '^'.repeat(Math.min(80, Math.max(1, span.end - span.start)));
  const margin = ' '.repeat(2 + span.start);
  const unless = unlessKnown === undefined ? '' : ` [none where “${unlessKnown}” is known]`;
  return [
    `${margin}${marks} ${code}: ${tellMessage(message, code)}${unless}`,
    ...fixes.map((fix) => {
      let fixed = text;
      for (const edit of [...fix.edits].sort((one, other) => other.start - one.start))
        fixed = fixed.slice(0, edit.start) + edit.insert + fixed.slice(edit.end);
      return `${margin}${fix.preferred ? 'best' : 'fix'} ${tellMessage(fix.title)}: ${JSON.stringify(fixed)}`;
    }),
  ];
}

function tellLine(line: ParsedLine): string {
  const accept =
    line.accept === undefined
      ? ''
      : `accept ${line.accept.codes.map((one) => one.code).join(' ')}${line.accept.reason === undefined ? '' : `: ${line.accept.reason}`}`;
  const otherwise = line.otherwise === undefined ? '' : `else ${tellStatement(line.otherwise)}`;
  return [tellStatement(line.statement), otherwise, accept].filter((part) => part !== '').join('; ');
}

function tellStatement(statement: Statement): string {
  switch (statement.kind) {
    case 'blank':
      return '';
    case 'header': {
      const { section, name, part, mixer, byHand, date, words } = statement;
      return [
        `header ${section}`,
        name && tellName(name),
        part && `part ${tellName(part)}`,
        mixer && `mixer ${tellName(mixer)}`,
        byHand && 'by hand',
        date,
        words && JSON.stringify(words),
      ]
        .filter((one) => one !== undefined)
        .join(' ');
    }
    case 'property':
      return `property ${statement.property} ${statement.value === undefined ? '?' : tellData(statement.value)}`;
    case 'ingredient':
    case 'planned': {
      const after =
        statement.kind === 'ingredient'
          ? statement.celsius !== undefined && `at ${figure(statement.celsius)} celsius`
          : statement.readyMinutes !== undefined && `ready minute ${statement.readyMinutes}`;
      return `${statement.kind} ${tellName(statement.name)} ${tellAmount(statement.amount)}${after ? ` ${after}` : ''}`;
    }
    case 'step': {
      const { kind: _kind, words, ...rest } = statement;
      return `step ${tellName(words)} ${tellData(rest)}`;
    }
    case 'note':
      return `note ${JSON.stringify(statement.text)}`;
    default:
      return statement.kind;
  }
}

function tellAmount(amount: Amount): string {
  const { start: _start, end: _end, ...rest } = amount;
  return tellData(rest);
}

function tellName(name: Name): string {
  const plain = name.text.toLowerCase() === name.folded ? '' : ` ~${JSON.stringify(name.folded)}`;
  return `${JSON.stringify(name.text)}${plain}`;
}

const figure = (value: number): string => String(Number(value.toPrecision(10)));

/** Plain data in one line: words bare, names as names, spans left out, an empty list not told. */
function tellData(data: object): string {
  return Object.entries(data)
    .filter(
      ([key, value]) =>
        !['span', 'start', 'end'].includes(key) && !(Array.isArray(value) && value.length === 0),
    )
    .map(([key, value], index, all) => {
      const told = tellValue(value);
      const named = key === 'form' || key === 'kind' || (index === 1 && all[0]![1] === key);
      return named ? told : `${key} ${told}`;
    })
    .join(' ');
}

function tellValue(value: unknown): string {
  if (typeof value === 'number') return figure(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return `[${value.map(tellValue).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    return 'folded' in value ? tellName(value as Name) : `{${tellData(value)}}`;
  }
  return String(value);
}
