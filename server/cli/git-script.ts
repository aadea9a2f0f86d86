import type { LanguageTag } from '../../core/index.ts';
import { projectFileName } from '../project/project-settings.ts';

/** What git runs of ours, and what git does by itself where our program is missing or fails. */

/** The script that `git-setup` puts into the folder of the repository, from the root of that folder. */
export const scriptPlace = 'doughwright/git.sh';

const script = `sh "$(git rev-parse --git-common-dir)/${scriptPlace}"`;

/** The settings of git that call the script, each with what git shows or merges without it. */
export const gitSettings: readonly (readonly [key: string, value: string])[] = [
  ['diff.doughwright.command', `f() { ${script} diff "$@" || diff -u -- "$2" "$5"; true; }; f`],
  ['diff.doughwright.textconv', `f() { ${script} textconv "$1" 2>/dev/null || cat -- "$1"; }; f`],
  ['merge.doughwright.name', 'formulas by section and line'],
  [
    'merge.doughwright.driver',
    `f() { ${script} merge "$@"; c=$?; [ $c -le 1 ] || { git merge-file --marker-size="$4" "$2" "$1" "$3"; c=$?; }; return $c; }; f %O %A %B %L %X %Y`,
  ],
];

/**
 * The script. `program` is how the shell calls us. What was shown once is kept by the name of its blob, or by those of both sides
 * of a change, under a name for the state of all formula files on disk, of the program and of the language, for names are looked
 * up in those: a history is read at the speed of `cat`. What is written to a terminal has colours and is not kept.
 */
export function gitScript({
  program,
  programFile,
  language,
}: {
  readonly program: string;
  readonly programFile?: string;
  /** Where one was asked for; else that of the project at each call. */
  readonly language?: LanguageTag;
}): string {
  const version = programFile === undefined ? '' : `; ls -ln ${quoted(programFile)}`;
  const [words, spoken] =
    language === undefined ? ['', ''] : [` --language ${language}`, `; echo ${language}`];
  return `#!/bin/sh
# Written by "doughwright git-setup", taken away by "doughwright git-setup --undo". Git calls this to show and to merge
# formulas. Where the program is missing or fails, git gets what it would have shown or merged by itself.
run() {
  ${program} "$@"
}
# What stands for all that a text is shown by: the formula files on disk, known to git or not, the program, the language.
state() {
  {
    git rev-parse HEAD:
    git diff --no-ext-diff --no-textconv HEAD -- '*.dough' '*${projectFileName}'
    others=$(git ls-files --others --exclude-standard -- '*.dough' '*${projectFileName}')
    [ -z "$others" ] || { printf '%s\\n' "$others"; printf '%s\\n' "$others" | git hash-object --no-filters --stdin-paths; }
    [ ! -f .gitmodules ] || git diff --no-ext-diff --no-textconv HEAD${version}${spoken}
  } 2>/dev/null | git hash-object --stdin
}
what=$1
shift
case $what in
diff)
  if [ $# -lt 7 ] || [ -t 1 ] || [ -n "$FORCE_COLOR" ]; then
    run compare${words} --git-driver -- "$@" 2>/dev/null && exit 0
  else
    kept=\${0%/*}/changes/$(state)
    [ "$2" = /dev/null ] && old=none || old=
    [ "$5" = /dev/null ] && now=none || now=
    key=$({ printf '%s\\n' "$1" "$8" "$old" "$now"; git hash-object --no-filters -- "$2" "$5"; } 2>/dev/null | git hash-object --stdin)
    [ -n "$key" ] && cat "$kept/$key" 2>/dev/null && exit 0
    run compare${words} --git-driver --keep "$kept" --blob "$key" -- "$@" 2>/dev/null && exit 0
  fi
  [ $# -ge 5 ] && diff -u -L "a/$1" -L "b/$1" -- "$2" "$5"
  exit 0
  ;;
textconv)
  blob=$(git hash-object --path=file.dough -- "$1" 2>/dev/null)
  kept=\${0%/*}/shown/$(state)
  [ -n "$blob" ] && cat "$kept/$blob" 2>/dev/null && exit 0
  run textconv${words} --keep "$kept" --blob "$blob" -- "$1" 2>/dev/null || cat -- "$1"
  ;;
merge)
  run merge-file --marker-size "$4" --labels "$5" "$6" -- "$2" "$1" "$3" 2>/dev/null
  case $? in
  0) exit 0 ;;
  100) exit 1 ;;
  esac
  git merge-file --marker-size="$4" -L ours -L base -L theirs "$2" "$1" "$3" || exit 1
  ;;
esac
`;
}

/** A word for the shell, whatever is in it. */
export function quoted(word: string): string {
  return `'${word.replaceAll("'", "'\\''")}'`;
}
