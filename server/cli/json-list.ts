/** Values as the text of one JSON list, two blanks a level, as `JSON.stringify` writes it of them all at once. */
export function* jsonList<T>(
  values: Iterable<T>,
  written: (value: T) => unknown = (value) => value,
): Iterable<string> {
  let isEmpty = true;
  for (const value of values) {
    const text = JSON.stringify(written(value), null, 2).replaceAll('\n', '\n  ');
    yield `${isEmpty ? '[' : ','}\n  ${text}`;
    isEmpty = false;
  }
  yield isEmpty ? '[]\n' : '\n]\n';
}
