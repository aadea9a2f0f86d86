import type { Command, Option } from 'commander';

/** The shells that a script can be written for. */
export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

/** A command as a shell completes it. */
interface Completed {
  readonly name: string;
  readonly description: string;
  readonly options: readonly CompletedOption[];
}

interface CompletedOption {
  /** `--format`. */
  readonly long: string;
  readonly description: string;
  readonly takesValue: boolean;
  /** The values it may have, where they are few. */
  readonly choices: readonly string[];
}

/** A script that completes commands, options and the values of options in a shell; made from the table of the commands. */
export function completionScript(program: Command, shell: Shell): string {
  const commands = program.createHelp().visibleCommands(program).map(completed);
  switch (shell) {
    case 'bash':
      return bash(commands);
    case 'zsh':
      return zsh(commands);
    case 'fish':
      return fish(commands);
  }
}

function completed(command: Command): Completed {
  const options = command.createHelp().visibleOptions(command);
  return {
    name: command.name(),
    description: firstSentence(command.description()),
    options: options.flatMap((option) => (option.long == null ? [] : [optionOf(option, option.long)])),
  };
}

function optionOf({ description, required, optional, argChoices }: Option, long: string): CompletedOption {
  return { long, description, takesValue: required || optional, choices: argChoices ?? [] };
}

function firstSentence(text: string): string {
  return text.replace(/[:;].*$/s, '');
}

/** A word between single quotes, as every one of the shells reads it. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}

function bash(commands: readonly Completed[]): string {
  const cases = commands.map(({ name, options }) => {
    const values = options
      .filter(({ choices }) => choices.length > 0)
      .map(({ long, choices }) => `        ${long}) words=${quoted(choices.join(' '))} ;;`);
    const files = options
      .filter(({ takesValue, choices }) => takesValue && choices.length === 0)
      .map(({ long }) => long);
    return [
      `    ${name})`,
      '      case $before in',
      ...values,
      ...(files.length > 0 ? [`        ${files.join('|')}) ;;`] : []),
      `        *) [[ $word == -* ]] && words=${quoted(options.map(({ long }) => long).join(' '))} ;;`,
      '      esac',
      '      ;;',
    ].join('\n');
  });
  return `# Completion of doughwright in bash: source it, or write it into ~/.local/share/bash-completion/completions/doughwright
_doughwright() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} words=
  if [[ $COMP_CWORD -eq 1 ]]; then
    COMPREPLY=($(compgen -W ${quoted(commands.map(({ name }) => name).join(' '))} -- "$word"))
    return
  fi
  case \${COMP_WORDS[1]} in
${cases.join('\n')}
  esac
  if [[ -n $words ]]; then
    COMPREPLY=($(compgen -W "$words" -- "$word"))
  else
    COMPREPLY=()
    compopt -o default 2>/dev/null
  fi
}
complete -F _doughwright doughwright
`;
}

function zsh(commands: readonly Completed[]): string {
  // In the list of a command a colon parts word and description, in that of an option brackets hold it.
  const escaped = (text: string): string => text.replace(/[\\[\]:]/g, '\\$&');
  const rows = commands.map(({ name, description }) => `    ${quoted(`${name}:${escaped(description)}`)}`);
  const cases = commands.map(({ name, options }) => {
    const specs = options.map(({ long, description, takesValue, choices }) => {
      const value = takesValue ? `:value:${choices.length > 0 ? `(${choices.join(' ')})` : '_files'}` : '';
      return `        ${quoted(`*${long}[${escaped(description)}]${value}`)}`;
    });
    return [
      `    ${name})`,
      '      _arguments \\',
      ...specs.map((spec) => `${spec} \\`),
      "        '*:file:_files'",
      '      ;;',
    ].join('\n');
  });
  return `#compdef doughwright
# Completion of doughwright in zsh: write it into a file _doughwright in a folder of $fpath
_doughwright() {
  local -a commands
  commands=(
${rows.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  case $words[2] in
${cases.join('\n')}
  esac
}
if [ "$funcstack[1]" = "_doughwright" ]; then
  _doughwright "$@"
else
  compdef _doughwright doughwright
fi
`;
}

function fish(commands: readonly Completed[]): string {
  const rows = commands.flatMap(({ name, description, options }) => [
    `complete -c doughwright -n __fish_use_subcommand -f -a ${name} -d ${fishQuoted(description)}`,
    ...options.map(({ long, description: about, takesValue, choices }) =>
      [
        `complete -c doughwright -n ${fishQuoted(`__fish_seen_subcommand_from ${name}`)}`,
        `-l ${long.slice(2)}`,
        takesValue ? '-r' : '',
        choices.length > 0 ? `-f -a ${fishQuoted(choices.join(' '))}` : '',
        `-d ${fishQuoted(about)}`,
      ]
        .filter((part) => part !== '')
        .join(' '),
    ),
  ]);
  return `# Completion of doughwright in fish: write it into ~/.config/fish/completions/doughwright.fish\n${rows.join('\n')}\n`;
}

/** Between single quotes fish reads a backslash and a quote behind a backslash, and nothing else. */
function fishQuoted(text: string): string {
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}
