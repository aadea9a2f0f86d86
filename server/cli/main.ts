import { writeSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import type { LanguageTag } from '../../core/index.ts';
import { version } from '../../package.json';
import type { ExitCode } from './exit-code.ts';
import { languageOption } from './language-option.ts';
import { formats } from './report/write-report.ts';
import { ruleLevels } from './rule-levels.ts';
import { complain, complainOf } from './terminal.ts';
import { usageError } from './usage-errors.ts';

const sizes = ['pieces', 'dough', 'baked', 'flour', 'onHand', 'bowls'];

const program = new Command('doughwright')
  .description('Bread formulas as plain text: checks them and works out their totals.')
  .version(version)
  .exitOverride()
  .configureOutput({ outputError: (text, write) => write(usageError(text, `doughwright${asked()}`)) })
  .addHelpText(
    'after',
    `${ends('there is nothing to report', 'there is something')}${example('doughwright check formulas')}`,
  )
  .hook('preAction', async (_, command) => {
    // Taken for the current folder, an empty word (a variable of a script that is not set) would change or check all of it.
    if (command.args.includes('')) command.error('error: an empty word stands where a name is meant.');
    const { language } = command.opts<{ language?: LanguageTag }>();
    if (language === undefined) return;
    const { speakIn } = await import('./speaker.ts');
    await speakIn(language, (sentence) => complain(sentence));
  });

// Each command is imported only when it is called, so that help and version need none of them.
program
  .command('check')
  .description('tell what is wrong with formulas')
  .argument('[paths...]', 'files, or folders to walk', ['.'])
  .addOption(new Option('--format <format>', 'how to write the findings').choices(formats).default('text'))
  .addOption(
    new Option('--level <level>', 'the least serious findings to tell')
      .choices(['error', 'warning', 'info'])
      .default('warning'),
  )
  .option('--rule <code=level>', 'another level for a rule, or off; may be given again', ruleLevels)
  .option('--max-findings <number>', 'how many findings to tell at most', wholeNumber)
  .option('--baseline <file>', 'leave out the findings that are in this file')
  .option('--write-baseline <file>', 'write the findings of today into this file')
  .option('--force', 'write a baseline over a file that is none')
  .addOption(
    new Option('--staged', 'check what git is about to commit, and the files that use it').conflicts('watch'),
  )
  .addOption(languageOption())
  .option('--watch', 'check again whenever a file changes')
  .addHelpText(
    'after',
    `${ends('nothing is found at the level or above', 'something is')}${example('doughwright check --level error formulas')}`,
  )
  .action(async (paths: string[], options) => {
    const { check } = await import('./check.ts');
    end(await check(paths, options));
  });

program
  .command('totals')
  .description('work out the overall formula, the parts, the temperatures and the mixing')
  .argument('<paths...>', 'files, or folders to walk')
  .option('--json', 'write them for another program to read, with the label and the cost')
  .addOption(languageOption())
  .option('--label', 'add a draft of the label: nutrition, ingredients, allergens')
  .addHelpText('after', example('doughwright totals --label formulas/harbour-tin.dough'))
  .action(async (paths: string[], options) => {
    const { totals } = await import('./totals.ts');
    end(await totals(paths, options));
  });

program
  .command('compare')
  .description('tell what changed as a baker sees it: two files or folders, or revisions of git')
  .usage('[options] OLD NEW | --since REV [PATH…] | --between OLD NEW [PATH…]')
  .argument('[paths...]', 'an old and a new file, or two folders; with --since and --between what to look at')
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
  .addOption(new Option('--git-driver', 'be called by git as its external diff').hideHelp())
  .addHelpText(
    'after',
    `${ends('nothing or only the layout differs', 'something does')}${example('doughwright compare --since main formulas')}`,
  )
  .action(async (paths: string[], options) => {
    if (options.gitDriver) {
      const { compareForGit } = await import('./compare-for-git.ts');
      return end(await compareForGit(paths));
    }
    const { compare } = await import('./compare.ts');
    end(await compare(paths, options));
  });

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

program
  .command('textconv', { hidden: true })
  .description('write a file with its totals, for git to compare')
  .argument('<file>')
  .option('--keep <folder>', 'where to keep what is shown')
  .option('--blob <id>', 'the name to keep it under')
  .addOption(languageOption())
  .action(async (file: string, { keep, blob }: { keep?: string; blob?: string }) => {
    const { textconv } = await import('./textconv.ts');
    end(await textconv(file, keep && blob ? { folder: keep, blob } : undefined));
  });

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

program
  .command('format')
  .description('bring files into the canonical form')
  .argument('<paths...>', 'files, or folders to walk')
  .option('--check', 'write nothing; name what would change, and end with 1 if anything would')
  .addOption(languageOption())
  .addHelpText('after', example('doughwright format --check formulas'))
  .action(async (paths: string[], options) => {
    const { format } = await import('./format.ts');
    end(await format(paths, options));
  });

program
  .command('blend')
  .description('shares of flours that reach a protein or keep an ash, cheapest')
  .argument('<flours...>', 'names of flours, as the files or the catalogue have them')
  .option('--protein <percent>', 'protein wanted, at 14 % moisture', share)
  .option('--most-ash <percent>', 'most ash, of the dry matter', share)
  .option('--nearest', 'the shares nearest to equal parts, where prices do not count')
  .option('--in <path>', 'the file or folder whose flours are meant', '.')
  .addOption(languageOption())
  .option('--json', 'write it for another program to read')
  .addHelpText('after', example("doughwright blend --protein 12.5 'strong white' 'soft white'"))
  .action(async (flours: string[], options) => {
    const { blend } = await import('./blend.ts');
    end(await blend(flours, options));
  });

program
  .command('plan')
  .description('work out the production run of a plan: batches, start times, stores list')
  .argument('<path>', 'the file, or folder, that the plan stands in')
  .option('--plan <name>', 'which plan, where there are several')
  .addOption(languageOption())
  .addOption(formatOption(['text', 'md', 'csv', 'html', 'json'], 'text'))
  .option('--out <file>', 'write it to a file instead of standard output')
  .addHelpText('after', example('doughwright plan --out saturday.html plan.dough'))
  .action(async (path: string, options) => {
    const { plan } = await import('./plan.ts');
    end(await plan(path, options));
  });

program
  .command('experiment')
  .description('work out an experiment: what to weigh and expect, the order, and what its readings say')
  .argument('<path>', 'the file, or folder, that the experiment stands in')
  .option('--experiment <name>', 'which experiment, where there are several')
  .option('--blanks', 'with room to write readings in')
  .option('--hidden', 'with room to write in, and without what is expected: a class finds it out')
  .addOption(languageOption())
  .addOption(formatOption(['text', 'md', 'csv', 'html', 'json'], 'text'))
  .option('--out <file>', 'write it to a file instead of standard output')
  .addHelpText('after', example('doughwright experiment --hidden --out class.html experiment.dough'))
  .action(async (path: string, options) => {
    const { experiment } = await import('./experiment.ts');
    end(await experiment(path, options));
  });

program
  .command('sheet')
  .description('write the batch sheet of a formula: what to weigh, mix and do, in the order of the work')
  .argument('<path>', 'the file, or folder, that the formula stands in')
  .option('--formula <name>', 'which formula; without it all of them, one after another')
  .addOption(sizeOption('--pieces <number>', 'make so many pieces'))
  .addOption(sizeOption('--dough <weight>', 'make so much dough at the divider, as 20kg'))
  .addOption(sizeOption('--baked <weight>', 'make so much when baked'))
  .addOption(sizeOption('--flour <weight>', 'make it from so much flour in all'))
  .addOption(sizeOption('--on-hand <ingredient=weight>', 'use up what is there of one ingredient'))
  .addOption(sizeOption('--bowls <number>', 'fill the mixer so often'))
  .addOption(new Option('--start <time>', 'begin mixing then, as 05:00').conflicts('ready'))
  .option('--ready <time>', 'be ready then, as 11:30')
  .option('--room <temperature>', 'the room today, as 26C')
  .option('--flour-temp <temperature>', 'the flour today')
  .option('--tap <temperature>', 'the tap water today')
  .option('--scale-step <weight>', 'the smallest step that the scale shows, as 5g')
  .option('--mixer <name>', 'mix in another mixer')
  .addOption(languageOption())
  .addOption(formatOption(['text', 'md', 'csv', 'html', 'json'], 'text'))
  .option('--out <file>', 'write it to a file instead of standard output')
  .addHelpText(
    'after',
    example('doughwright sheet --pieces 60 --out harbour-tin.html formulas/harbour-tin.dough'),
  )
  .action(async (path: string, options) => {
    const { sheet } = await import('./sheet.ts');
    end(await sheet(path, options));
  });

program
  .command('import')
  .description('make a formula of a table from a spreadsheet; what was guessed is told on standard error')
  .argument('[file]', 'the table, with commas, semicolons or tabs; - is standard input', '-')
  .option('--name <name>', 'the name of the formula, where the table has none')
  .option('--out <file>', 'write the formula to a file instead of standard output')
  .option('--force', 'write over a formula file that is there already')
  .addOption(languageOption())
  .addHelpText(
    'after',
    example("doughwright import --name 'Harbour Tin' --out harbour-tin.dough harbour-tin.csv"),
  )
  .action(async (file: string, options) => {
    const { importFile } = await import('./import.ts');
    end(await importFile(file, options));
  });

program
  .command('export')
  .description('write all lines of formulas as one table for a spreadsheet')
  .argument('[paths...]', 'files, or folders to walk', ['.'])
  .addOption(formatOption(['csv', 'json'], 'csv'))
  .option('--decimal-comma', 'numbers with a comma, cells between semicolons')
  .addOption(languageOption())
  .option('--out <file>', 'write it to a file instead of standard output')
  .addHelpText('after', example('doughwright export --out formulas.csv formulas'))
  .action(async (paths: string[], options) => {
    const { exportFiles } = await import('./export.ts');
    end(await exportFiles(paths, options));
  });

program
  .command('rules')
  .description('list the rules with their level, or explain one')
  .argument('[code]', 'the code of a rule, as it stands beside its findings')
  .addOption(languageOption())
  .option('--json', 'write them for another program to read')
  .addHelpText('after', example('doughwright rules too-warm'))
  .action(async (code: string | undefined, options) => {
    const { rules } = await import('./rules.ts');
    end(rules(code, options));
  });

program
  .command('serve')
  .description('be the language server of an editor')
  .requiredOption('--stdio', 'speak over standard input and output')
  .addHelpText('after', example('doughwright serve --stdio'))
  .action(async () => {
    await import('../host/node.ts');
  });

// Whoever reads our output may stop reading, as `head` does; there is nothing to tell then.
process.stdout.on('error', leaveTelling);
process.stderr.on('error', leaveQuietly);

// A thread of a check runs this same file.
if (isMainThread) {
  program.parseAsync().catch((error: unknown) => {
    if (error instanceof CommanderError) return end(error.exitCode === 0 ? 0 : 2);
    complainOf(
      `doughwright: a fault of this program, not of your files: ${error instanceof Error ? error.message : String(error)}\n`,
    );
    end(2);
  });
} else {
  void import('./check-parallel.ts').then(({ workAsThread }) => workAsThread());
}

function end(code: ExitCode): void {
  process.exitCode = code;
}

function leaveQuietly(error: NodeJS.ErrnoException): never {
  process.exit(error.code === 'EPIPE' ? undefined : 2);
}

/** A full disk, say, behind standard output: what was asked for is not there, and that is told in one line. */
async function leaveTelling(error: NodeJS.ErrnoException): Promise<never> {
  if (error.code === 'EPIPE') process.exit();
  try {
    const { outputTrouble } = await import('./write-out.ts');
    writeSync(2, `doughwright: ${outputTrouble(error)}\n`);
  } catch {
    // Nobody can be told.
  }
  process.exit(2);
}

/** One of the ways to size a sheet, which exclude each other. */
function sizeOption(flags: string, description: string): Option {
  const option = new Option(flags, description);
  return option.conflicts(sizes.filter((name) => name !== option.attributeName()));
}

/** How a command writes what it has; `usual` where the name of a file does not say it. */
function formatOption(formats: readonly string[], usual: string): Option {
  const described = `how to write it; without it as the name of --out ends, else ${usual}`;
  return new Option('--format <format>', described).choices(formats);
}

/** What the command ends with, for scripts. */
function ends(none: string, some: string): string {
  return `\nEnds with 0 where ${none}, 1 where ${some}, 2 where\nsomething could not be read or done.\n`;
}

function example(call: string): string {
  return `\nExample:\n  ${call}`;
}

/** The command that was called, behind a blank, where it is one of ours. */
function asked(): string {
  const word = process.argv[2] ?? '';
  return program.commands.some((command) => command.name() === word) ? ` ${word}` : '';
}

function share(text: string): number {
  const value = Number(text.replace(/\s*%$/, '').replace(',', '.'));
  if (!(value > 0 && value < 100))
    throw new InvalidArgumentError('Write a percent above 0 and below 100, as 12.5.');
  return value;
}

function wholeNumber(text: string): number {
  if (!/^[1-9]\d*$/.test(text)) throw new InvalidArgumentError('Write a whole number above 0.');
  return Number(text);
}
