import { type Command, Option } from 'commander';
import { again, ends, example, formatOption, wholeNumber } from './command-options.ts';
import type { End } from './exit-code.ts';
import { languageOption, massOption, temperatureOption } from './language-option.ts';
import type { Keeping } from './shown-texts.ts';

/** What is asked of formulas and their earlier states. Each is imported only when it is called, so that help and version need none of them. */
export function addGitCommands(program: Command, end: End): void {
  addCompare(program, end);
  addHistory(program, end);
  addGitSetup(program, end);
  addTextconv(program, end);
  addMergeFile(program);
}

function addCompare(program: Command, end: End): void {
  program
    .command('compare')
    .description('tell what changed as a baker sees it: two files or folders, or revisions of git')
    .usage('[options] OLD NEW | --since REV [PATH…] | --between OLD NEW [PATH…]')
    .argument(
      '[paths...]',
      'an old and a new file, or two folders; with --since and --between what to look at',
    )
    .option('--since <revision>', 'compare the files on disk with a revision')
    .addOption(
      new Option('--between <revision>', 'compare this revision with the one named behind it').conflicts(
        'since',
      ),
    )
    .addOption(
      new Option('--format <format>', 'how to write it; md for a review').choices(['text', 'md', 'json']),
    )
    .option('--json', 'the same as --format json')
    .addOption(languageOption())
    .addOption(massOption())
    .addOption(temperatureOption())
    .addOption(new Option('--git-driver', 'be called by git as its external diff').hideHelp())
    .addOption(new Option('--keep <folder>', 'where to keep what is shown to git').hideHelp())
    .addOption(new Option('--blob <id>', 'the name to keep it under').hideHelp())
    .addHelpText(
      'after',
      `${ends('nothing or only the layout differs', 'something does')}${example('doughwright compare --since main formulas')}`,
    )
    .action(async (paths: string[], options) => {
      if (options.gitDriver) {
        const { compareForGit } = await import('./compare-for-git.ts');
        return end(await compareForGit(paths, keepingOf(options)));
      }
      const { compare } = await import('./compare.ts');
      end(await compare(paths, options));
    });
}

function addHistory(program: Command, end: End): void {
  program
    .command('history')
    .description('what became of the figures of a formula over the revisions of git: a row for each change')
    .argument('<name>', 'the name of the formula')
    .argument('[path]', 'its file or folder, where several have a formula of that name')
    .option(
      '--figure <name>',
      'follow this figure only, or the share of this ingredient; may be given again',
      again,
    )
    .option('--at <revision>', 'the history that leads to this revision, not to the present one')
    .addOption(languageOption())
    .addOption(massOption())
    .addOption(temperatureOption())
    .addOption(formatOption(['text', 'csv', 'html', 'json'], 'text'))
    .option('--out <file>', 'write it to a file instead of standard output')
    .addHelpText('after', example("doughwright history 'Harbour Tin' --out harbour-tin.html"))
    .action(async (name: string, path: string | undefined, options) => {
      const { history } = await import('./history.ts');
      end(await history(name, path, options));
    });
}

function addGitSetup(program: Command, end: End): void {
  program
    .command('git-setup')
    .description('teach the git of this repository to show formulas as a baker reads them; asks first')
    .option('--yes', 'do it without asking')
    .option('--undo', 'take it back')
    .option('--program <command>', 'how git shall call this program')
    .addOption(languageOption())
    .addHelpText('after', example('doughwright git-setup'))
    .action(async (options) => {
      const { gitSetup, ownProgram } = await import('./git-setup.ts');
      end(await gitSetup({ ...options, ...(options.program === undefined ? await ownProgram() : {}) }));
    });
}

function addTextconv(program: Command, end: End): void {
  program
    .command('textconv', { hidden: true })
    .description('write a file with its totals, for git to compare')
    .argument('<file>')
    .option('--keep <folder>', 'where to keep what is shown')
    .option('--blob <id>', 'the name to keep it under')
    .addOption(languageOption())
    .action(async (file: string, options) => {
      const { textconv } = await import('./textconv.ts');
      end(await textconv(file, keepingOf(options)));
    });
}

/** Where what is shown is kept, where it is to be. */
function keepingOf({ keep, blob }: { readonly keep?: string; readonly blob?: string }): Keeping | undefined {
  return keep && blob ? { folder: keep, blob } : undefined;
}

function addMergeFile(program: Command): void {
  program
    .command('merge-file', { hidden: true })
    .description('merge two states of a formula file into the first, for git')
    .argument('<ours>')
    .argument('<base>')
    .argument('<theirs>')
    .option('--marker-size <number>', 'how long the marks of a conflict are', wholeNumber, 7)
    .option('--labels <names...>', 'what the marks of our and of their side say')
    .action(async (ours: string, base: string, theirs: string, options) => {
      const { mergeFile } = await import('./merge-file.ts');
      process.exitCode = await mergeFile({ ours, base, theirs }, options);
    });
}
