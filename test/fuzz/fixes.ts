import type { FileEdit, Finding, Service } from '../../core/index.ts';
import { createService, withEdits } from '../../core/index.ts';
import { failed } from '../rules/failed.ts';
import { exampleFiles } from '../syntax/texts.ts';

export const uri = 'file:///quay-lane/formulas/fuzzed.dough';

const neighbours = new Map(
  exampleFiles()
    .filter(({ path }) => !path.includes('formulas/'))
    .map(({ path, text }) => [`file:///quay-lane/${path}`, text]),
);

/** The text of a file of the example bakery. */
export const textOfNeighbour = (file: string): string => neighbours.get(file) ?? '';

/** A service that holds the example bakery beside the text asked about, so that its names are found. */
export function serviceBeside(): Service {
  const service = createService({ failed });
  service.setRoots(['file:///quay-lane/']);
  for (const [file, text] of neighbours) service.setText(file, text);
  return service;
}

/** Words to type over as they stand when nobody types. */
const withoutPlaceholders = (insert: string): string =>
  insert.replace(/\$\{\d+:((?:\\.|[^}\\])*)\}|\$\d+/g, '$1').replace(/\\([$}\\])/g, '$1');

/** Texts after edits of several files; refuses what overlaps. */
export function afterEdits(
  textOf: (file: string) => string,
  files: readonly FileEdit[],
): ReadonlyMap<string, string> {
  const made = new Map<string, string>();
  for (const { uri: file, edits } of files) {
    const plain = edits.map((edit) =>
      edit.snippet ? { ...edit, insert: withoutPlaceholders(edit.insert) } : edit,
    );
    // An editor takes edits in any order, as long as none lies over another.
    plain.sort((one, other) => one.line - other.line || one.start - other.start);
    made.set(file, withEdits(made.get(file) ?? textOf(file), plain));
  }
  return made;
}

/** What is wrong with a fix or an action: it leaves what it is for, or makes an error. */
export interface Fault {
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly said: string;
}

interface Done {
  readonly what: string;
  readonly text: string;
  readonly files: readonly FileEdit[];
  readonly meant: readonly Finding[];
  readonly mends: number;
}

const codesOf = (findings: readonly Finding[]): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
};
const errorsOf = (findings: readonly Finding[]) => findings.filter(({ level }) => level === 'error');

/** The finding on the header of a section that nobody could read, or where none is, so that nothing below it was looked at. */
const headerCodes = new Set(['unknown-section', 'missing-colon', 'stray-colon', 'outside-section']);

function faultOf(service: Service, { what, text, files, meant, mends }: Done): Fault | undefined {
  const before = service.findings(uri);
  const changed = afterEdits((file) => (file === uri ? text : textOfNeighbour(file)), files);
  const after = changed.get(uri) ?? text;
  const fault = (said: string): Fault => ({ what, before: text, after, said });
  if ([...changed].every(([file, now]) => now === (file === uri ? text : neighbours.get(file))))
    return fault('changes nothing');
  for (const [file, now] of changed) service.setText(file, now);
  const now = service.findings(uri);
  for (const file of changed.keys()) service.setText(file, file === uri ? text : textOfNeighbour(file));
  // What stands below a header that is mended was not looked at before.
  const [were, are] = [codesOf(before), codesOf(now)];
  const mended = (meant.length > 0 ? meant : before).filter(
    ({ code }) => headerCodes.has(code) && (are.get(code) ?? 0) < (were.get(code) ?? 0),
  );
  const first = Math.min(...mended.map(({ place }) => place.line));
  const looked = now.filter(({ place }) => place.line <= first);
  const [had, has] = [were, codesOf(looked)];
  for (const [code, count] of codesOf(meant))
    if ((has.get(code) ?? 0) > (had.get(code) ?? 0) - Math.min(count, mends)) return fault(`leaves ${code}`);
  const hadErrors = codesOf(errorsOf(before));
  const more = errorsOf(looked).find(
    ({ code }) => (codesOf(errorsOf(looked)).get(code) ?? 0) > (hadErrors.get(code) ?? 0),
  );
  return more === undefined
    ? undefined
    : fault(`makes ${more.code}: line ${more.place.line + 1}, ${more.message}`);
}

/** Every fix and every action at every line of a text, held against what each is for. */
export function* faultsOf(service: Service, text: string): Generator<Fault> {
  service.setText(uri, text);
  const lines = [...service.lines(uri)];
  const all = { line: 0, start: 0, endLine: lines.length, end: 0 };
  for (const finding of service.findingsAt(uri, all))
    for (const { title, edits } of finding.fixes) {
      const what = `fix of ${finding.code}: ${title}`;
      const fault = faultOf(service, { what, text, files: edits, meant: [finding], mends: 1 });
      if (fault !== undefined) yield fault;
    }
  const tried = new Set<string>();
  for (const [line, { length }] of lines.entries())
    for (const range of [
      { line, start: 0, endLine: line, end: length },
      { line, start: Math.min(3, length), endLine: line, end: Math.min(3, length) },
      { line, start: 0, endLine: Math.min(line + 2, lines.length - 1), end: 1 },
    ])
      for (const { id, argument, title, findings } of service.actions(uri, range)) {
        const files = service.actionEdits(uri, range, id, argument);
        if (files === undefined) continue;
        // The same again from the next line.
        const key = `${id} ${JSON.stringify(files)}`;
        if (tried.has(key)) continue;
        tried.add(key);
        const mends = id === 'fix-all-of-rule' ? 1 : Number.MAX_SAFE_INTEGER;
        const fault = faultOf(service, { what: `${id}: ${title}`, text, files, meant: findings, mends });
        if (fault !== undefined) yield fault;
      }
}
