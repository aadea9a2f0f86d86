import { isMainThread } from 'node:worker_threads';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { version } from '../../package.json';
import type { ExitCode } from './exit-code.ts';
import { formats } from './report/report.ts';

const program = new Command('doughwright')
  .description('Bread formulas as plain text: checks them and works out their totals.')
  .version(version)
  .exitOverride()
  .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, 'doughwright: ')) });

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
  .option('--max-findings <number>', 'how many findings to tell at most', wholeNumber)
  .option('--baseline <file>', 'leave out the findings that are in this file')
  .option('--write-baseline <file>', 'write the findings of today into this file')
  .option('--watch', 'check again whenever a file changes')
  .action(async (paths: string[], options) => {
    const { check } = await import('./check.ts');
    end(await check(paths, options));
  });

program
  .command('totals')
  .description('work out the overall formula, the parts, the temperatures and the mixing')
  .argument('<paths...>', 'files, or folders to walk')
  .option('--json', 'write them for another program to read, with the label and the cost')
  .option('--label', 'add a draft of the label: nutrition, ingredients, allergens')
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
  .addOption(new Option('--between <revision>', 'compare this revision with the next').conflicts('since'))
  .option('--json', 'write it for another program to read')
  .addOption(new Option('--git-driver', 'be called by git as its external diff').hideHelp())
  .action(async (paths: string[], options) => {
    const { compare, compareForGit } = await import('./compare.ts');
    end(await (options.gitDriver ? compareForGit(paths) : compare(paths, options)));
  });

program
  .command('git-setup')
  .description('teach the git of this repository to show formulas as a baker reads them; asks first')
  .option('--yes', 'do it without asking')
  .option('--undo', 'take it back')
  .option('--program <command>', 'how git shall call this program')
  .action(async (options) => {
    const { gitSetup, ownProgram } = await import('./git-setup.ts');
    end(await gitSetup({ ...options, program: options.program ?? (await ownProgram()) }));
  });

program
  .command('textconv', { hidden: true })
  .description('write a file with its totals, for git to compare')
  .argument('<file>')
  .action(async (file: string) => {
    const { textconv } = await import('./textconv.ts');
    end(await textconv(file));
  });

program
  .command('format')
  .description('bring files into the canonical form')
  .argument('<paths...>', 'files, or folders to walk')
  .option('--check', 'write nothing; name what would change, and end with 1 if anything would')
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
  .option('--json', 'write it for another program to read')
  .action(async (flours: string[], options) => {
    const { blend } = await import('./blend.ts');
    end(await blend(flours, options));
  });

program
  .command('plan')
  .description('work out the production run of a plan: batches, start times, stores list')
  .argument('<path>', 'the file, or folder, that the plan stands in')
  .option('--plan <name>', 'which plan, where there are several')
  .addOption(
    new Option('--format <format>', 'how to write it')
      .choices(['text', 'md', 'csv', 'html', 'json'])
      .default('text'),
  )
  .option('--out <file>', 'write it to a file instead of standard output')
  .action(async (path: string, options) => {
    const { plan } = await import('./plan.ts');
    end(await plan(path, options));
  });

program
  .command('rules')
  .description('list the rules with their level')
  .action(async () => {
    const { rules } = await import('./rules.ts');
    end(await rules());
  });

program
  .command('serve')
  .description('be the language server of an editor')
  .requiredOption('--stdio', 'speak over standard input and output')
  .action(async () => {
    await import('../node.ts');
  });

// Whoever reads our output may stop reading, as `head` does; there is nothing to tell then.
process.stdout.on('error', leaveQuietly);
process.stderr.on('error', leaveQuietly);

// A thread of a check runs this same file.
if (isMainThread) {
  program.parseAsync().catch((error: unknown) => {
    if (error instanceof CommanderError) return end(error.exitCode === 0 ? 0 : 2);
    process.stderr.write(`doughwright: ${error instanceof Error ? error.message : String(error)}\n`);
    end(2);
  });
} else {
  import('./check-parallel.ts').then(({ workAsThread }) => workAsThread());
}

function end(code: ExitCode): void {
  process.exitCode = code;
}

function leaveQuietly(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit();
  throw error;
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
