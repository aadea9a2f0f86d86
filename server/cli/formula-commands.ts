import { type Command, Option } from 'commander';
import {
  ends,
  example,
  formatOption,
  minutesAbove,
  revisionOption,
  sizeOption,
  wholeNumber,
} from './command-options.ts';
import type { End } from './exit-code.ts';
import { languageOption, massOption, temperatureOption } from './language-option.ts';
import { formats } from './report/write-report.ts';
import { ruleLevels } from './rule-levels.ts';

/** Checks, totals, sheets and plans: what is asked of formulas. Each is imported only when it is called, so that help and version need none of them. */
export function addFormulaCommands(program: Command, end: End): void {
  addCheck(program, end);
  addTotals(program, end);
  addSheet(program, end);
  addPlan(program, end);
  addExperiment(program, end);
  addOverlay(program, end);
  addMap(program, end);
  addFormat(program, end);
  addRules(program, end);
}

function addCheck(program: Command, end: End): void {
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
      new Option('--staged', 'check what git is about to commit, and the files that use it').conflicts([
        'watch',
        'since',
        'stdinName',
      ]),
    )
    .addOption(
      new Option(
        '--since <revision>',
        'check what is other than at a revision of git, and the files that use it',
      ).conflicts(['watch', 'stdinName']),
    )
    .addOption(
      new Option(
        '--stdin-name <file>',
        'the path - is standard input: the text that this file shall have',
      ).conflicts(['watch', 'fix']),
    )
    .addOption(
      new Option('--fix', 'mend slips of writing in the files first: units, colons, names').conflicts([
        'watch',
        'staged',
        'since',
      ]),
    )
    .addOption(languageOption())
    .addOption(massOption())
    .addOption(temperatureOption())
    .option('--watch', 'check again whenever a file changes')
    .addHelpText(
      'after',
      `${ends('nothing is found at the level or above', 'something is')}${example('doughwright check --level error formulas')}`,
    )
    .action(async (paths: string[], options) => {
      const { check } = await import('./check.ts');
      end(await check(paths, options));
    });
}

function addTotals(program: Command, end: End): void {
  program
    .command('totals')
    .description('work out the overall formula, the parts, the temperatures and the mixing')
    .argument('<paths...>', 'files, or folders to walk')
    .option('--json', 'write them for another program to read, with the label and the cost')
    .addOption(languageOption())
    .addOption(massOption())
    .addOption(temperatureOption())
    .option('--label', 'add a draft of the label: nutrition, ingredients, allergens')
    .addOption(revisionOption())
    .addHelpText('after', example('doughwright totals --label formulas/harbour-tin.dough'))
    .action(async (paths: string[], options) => {
      const { totals } = await import('./totals.ts');
      end(await totals(paths, options));
    });
}

function addSheet(program: Command, end: End): void {
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
    .addOption(new Option('--map <axis>', 'show the map of the gap too').choices(['water', 'flour', 'speed']))
    .addOption(revisionOption())
    .addOption(languageOption())
    .addOption(massOption())
    .addOption(temperatureOption())
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
}

function addPlan(program: Command, end: End): void {
  program
    .command('plan')
    .description('work out the production run of a plan: batches, start times, stores list')
    .argument('<path>', 'the file, or folder, that the plan stands in')
    .option('--plan <name>', 'which plan, where there are several')
    .addOption(revisionOption())
    .addOption(languageOption())
    .addOption(massOption())
    .addOption(temperatureOption())
    .addOption(formatOption(['text', 'md', 'csv', 'html', 'json'], 'text'))
    .option('--out <file>', 'write it to a file instead of standard output')
    .addHelpText('after', example('doughwright plan --out saturday.html plan.dough'))
    .action(async (path: string, options) => {
      const { plan } = await import('./plan.ts');
      end(await plan(path, options));
    });
}

function addExperiment(program: Command, end: End): void {
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
}

function addOverlay(program: Command, end: End): void {
  program
    .command('overlay')
    .description(
      'lay formulas, or a formula and a revision of it, over each other: one mixing chart, one table',
    )
    .argument('<path>', 'the file, or folder, that the formulas stand in')
    .option('--formula <names...>', 'which formulas, in this order; without it all of them')
    .option('--revision <revision>', 'each of them also as this revision of git has it')
    .addOption(languageOption())
    .addOption(formatOption(['text', 'md', 'csv', 'html', 'json'], 'text'))
    .option('--out <file>', 'write it to a file instead of standard output')
    .addHelpText(
      'after',
      `${ends('every formula has its curve', 'one has none')}${example('doughwright overlay bench.dough --formula "Bench White" "Bench Wet" --out wetter.html')}`,
    )
    .action(async (path: string, options) => {
      const { overlay } = await import('./overlay.ts');
      end(await overlay(path, options));
    });
}

function addMap(program: Command, end: End): void {
  program
    .command('map')
    .description(
      'draw the map of the gap: how long a dough may be mixed, with more or less water, other flour or speed',
    )
    .argument('<path>', 'the file, or folder, that the formula stands in')
    .option('--formula <name>', 'which formula; without it all of them')
    .addOption(new Option('--against <axis>', 'what runs up the map').choices(['water', 'flour', 'speed']))
    .option('--flour <name>', 'the flour that little by little takes the place of the first')
    .option('--minutes <number>', 'the last minute of the map', minutesAbove)
    .addOption(languageOption())
    .addOption(formatOption(['text', 'md', 'svg', 'csv', 'json'], 'text'))
    .option('--out <file>', 'write it to a file instead of standard output')
    .addHelpText(
      'after',
      `${ends('every formula has its map', 'one has none')}${example('doughwright map --against flour --out ferry-loaf.svg formulas/ferry-loaf.dough')}`,
    )
    .action(async (path: string, options) => {
      const { map } = await import('./map.ts');
      end(await map(path, options));
    });
}

function addFormat(program: Command, end: End): void {
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
}

function addRules(program: Command, end: End): void {
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
}
