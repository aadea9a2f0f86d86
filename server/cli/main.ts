import { writeSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import type { Display, LanguageTag } from '../../core/index.ts';
import { version } from '../../package.json';
import { isThread } from '../host/thread.ts';
import { ends, example } from './command-options.ts';
import type { ExitCode } from './exit-code.ts';
import { addFormulaCommands } from './formula-commands.ts';
import { addGitCommands } from './git-commands.ts';
import { addTableCommands } from './table-commands.ts';
import { complain, complainOf } from './terminal.ts';
import { usageError } from './usage-errors.ts';

/** What a run ends with at the least: 2 where its project file could not be read in all. */
let least: ExitCode = 0;

/** How a command was asked to show figures and sentences. */
interface Shown {
  readonly language?: LanguageTag;
  readonly mass?: Display['mass'];
  readonly temperature?: Display['temperature'];
}

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
    // The server reads the project of its workspace, and the core later; a script for a shell needs neither.
    if (command.name() === 'serve' || command.name() === 'completion') return;
    const { takeProject, projectDisplay } = await import('./project.ts');
    const { language, mass, temperature, staged } = command.opts<Shown & { readonly staged?: boolean }>();
    const project = staged
      ? await takeProject([], await (await import('./staged.ts')).projectFilesStaged())
      : await takeProject(command.args);
    const tag = language ?? project.language ?? 'en';
    const shownIn = {
      ...projectDisplay(),
      ...(mass === undefined ? {} : { mass }),
      ...(temperature === undefined ? {} : { temperature }),
    };
    if (tag !== 'en' || Object.keys(shownIn).length > 0) {
      const { speakIn } = await import('./speaker.ts');
      await speakIn(tag, (sentence) => complain(sentence), shownIn);
    }
    // Git takes what is written for it as a whole, and anything but 0 for a failure.
    const isForGit = ['textconv', 'merge-file'].includes(command.name()) || command.opts().gitDriver === true;
    if (project.tell() && !isForGit) least = 2;
  });

addFormulaCommands(program, end);
addGitCommands(program, end);
addTableCommands(program, end);

// Whoever reads our output may stop reading, as `head` does; there is nothing to tell then.
process.stdout.on('error', leaveTelling);
process.stderr.on('error', leaveQuietly);

// A thread of a check runs this same program.
if (!isThread()) {
  program.parseAsync().catch((error: unknown) => {
    if (error instanceof CommanderError) return end(error.exitCode === 0 ? 0 : 2);
    complainOf(
      `doughwright: a fault of this program, not of your files: ${error instanceof Error ? error.message : String(error)}\n`,
    );
    end(2);
  });
} else {
  void import('./check-thread.ts').then(({ workAsThread }) => workAsThread());
}

function end(code: ExitCode): void {
  process.exitCode = Math.max(code, least);
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

/** The command that was called, behind a blank, where it is one of ours. */
function asked(): string {
  const word = process.argv[2] ?? '';
  return program.commands.some((command) => command.name() === word) ? ` ${word}` : '';
}
