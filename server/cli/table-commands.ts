import { Argument, type Command } from 'commander';
import { example, formatOption, share } from './command-options.ts';
import type { Shell } from './completion.ts';
import type { End } from './exit-code.ts';
import { languageOption } from './language-option.ts';

/** Tables and blends, and the server of an editor. Each is imported only when it is called, so that help and version need none of them. */
export function addTableCommands(program: Command, end: End): void {
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
    .command('rename')
    .description('give a formula, a flour, a mixer or a part another name wherever it is named')
    .argument('<old>', 'its name')
    .argument('<new>', 'the name it shall have')
    .argument('[path]', 'the file or folder that defines it', '.')
    .option('--write', 'write it into the files; without it the lines that would change are told')
    .addOption(languageOption())
    .addHelpText('after', example("doughwright rename 'quay white' 'harbour white'"))
    .action(async (old: string, wanted: string, path: string, options) => {
      const { rename } = await import('./rename.ts');
      end(await rename(old, wanted, path, options));
    });

  program
    .command('completion')
    .description('write a script that completes commands and options in a shell')
    .addArgument(new Argument('<shell>', 'which shell').choices(['bash', 'zsh', 'fish']))
    .addHelpText(
      'after',
      example('doughwright completion bash > ~/.local/share/bash-completion/completions/doughwright'),
    )
    .action(async (shell: Shell) => {
      const { completionScript } = await import('./completion.ts');
      process.stdout.write(completionScript(program, shell));
      end(0);
    });

  program
    .command('serve')
    .description('be the language server of an editor')
    .requiredOption('--stdio', 'speak over standard input and output')
    .addHelpText('after', example('doughwright serve --stdio'))
    .action(async () => {
      await import('../host/node.ts');
    });
}
