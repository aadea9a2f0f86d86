/** What the reader of the command line's words says of them, each with what is said instead. */
const sentences: readonly (readonly [pattern: RegExp, said: string])[] = [
  [/^unknown option '([^']*)'/, '$1: there is no such option.'],
  [/^unknown command '([^']*)'/, '$1: there is no such command.'],
  [/^missing required argument '([^']*)'/, 'something is missing after the command: $1.'],
  [/^required option '([^' ]{0,80})(?: [^']{0,200})?' not specified/, 'add $1 to the command.'],
  [/^option '([^' ]{0,80})(?: [^']{0,200})?' argument missing/, '$1: write what it shall be behind it.'],
  [
    /^option '([^' ]{0,80})(?: [^']{0,200})?' cannot be used with option '([^' ]{0,80})(?: [^']{0,200})?'/,
    '$1 and $2 exclude each other: leave one out.',
  ],
  [
    /^option '([^' ]{0,80})(?: [^']{0,200})?' argument '([^']{0,500})' is invalid\. Allowed choices are ([^.]{0,500})\.$/,
    '$1 $2: write one of $3.',
  ],
  [/^option '([^' ]{0,80})(?: [^']{0,200})?' argument '([\s\S]*)' is invalid\. ([\s\S]*)$/, '$1 $2: $3'],
  [
    /^command-argument value '([^']{0,500})' is invalid for argument '([^']{0,80})'\. Allowed choices are ([^.]{0,500})\.$/,
    '$1 is no $2: write one of $3.',
  ],
  [
    /^too many arguments(?: for '[^']*')?\. Expected (\d+) arguments? but got (\d+).*$/,
    'too many words: $1 can stand here, and there are $2.',
  ],
];

/** A message of the library that reads the command line, as one line in our own words that says where help is. */
export function usageError(text: string, helpOf: string): string {
  const plain = text.replace(/^error: /, '').trim();
  const [message, ...more] = plain.split('\n');
  const meant = /\(Did you mean (?:one of )?(.*)\?\)/.exec(more.join(' '))?.[1];
  const found = sentences.find(([pattern]) => pattern.test(message!));
  const said = found === undefined ? message! : message!.replace(found[0], found[1]);
  const cure = meant === undefined ? `“${helpOf} --help” tells what there is.` : `Is it ${meant}?`;
  return `doughwright: ${said} ${cure}\n`;
}
