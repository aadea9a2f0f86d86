import { existsSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  formulaFile,
  formulaText,
  lineAfterLast,
  saltLine,
  unitlessLine,
  unknownIngredientLine,
  waterLine,
  yieldLine,
} from './expectations.ts';
import { commandLineProgram } from './places.ts';
import { runProgram } from './processes.ts';

/** Neovim's program: the environment variable NEOVIM, else the one on the path. */
const neovimProgram = process.env.NEOVIM ?? 'nvim';

export interface SeenDiagnostic {
  readonly line: number;
  readonly column: number;
  /** Neovim's numbers: 1 error, 2 warning, 3 information, 4 hint. */
  readonly severity: number;
  readonly code?: string;
  readonly message: string;
}

/** What Neovim saw of the server. */
export interface SeenByNeovim {
  /** Waits that ran out and errors; an empty list when all went well. */
  readonly problems: readonly string[];
  readonly milliseconds_to_diagnostics?: number;
  readonly diagnostics?: readonly SeenDiagnostic[];
  readonly hover?: { readonly contents: unknown };
  readonly hover_after_cure?: { readonly contents: unknown };
  /** The words of the file, five numbers each, by the names of the legend. */
  readonly tokens?: { readonly data: readonly number[] };
  readonly legend?: { readonly tokenTypes: readonly string[] };
  readonly signature?: {
    readonly activeSignature: number;
    readonly signatures: readonly { readonly label: string }[];
  };
  readonly hints?: readonly {
    readonly position: { readonly line: number };
    readonly label: string;
    readonly tooltip?: { readonly value: string };
  }[];
  readonly completion?:
    | readonly { readonly label: string }[]
    | { readonly items: readonly { readonly label: string }[] };
  readonly diagnostics_after_cure?: readonly SeenDiagnostic[];
  /** The title of the action taken, and the text after it. */
  readonly action?: string;
  readonly lines_after_action?: readonly string[];
  readonly exit_code?: number;
}

/**
 * Starts the server over stdio from headless Neovim on a formula with two faulty lines, asks for hover and completion,
 * cures the lines and stops the server.
 *
 * @param command what starts the server, program first
 */
export async function runInNeovim(
  command: readonly string[] = [process.execPath, commandLineProgram(), 'serve', '--stdio'],
  halfTyped = '  but',
): Promise<SeenByNeovim> {
  const program = command[1];
  if (program && !existsSync(program)) throw new Error(`There is no ${program}: run npm run build first.`);
  const folder = mkdtempSync(join(tmpdir(), 'doughwright-neovim-'));
  try {
    const sound = formulaText.split('\n').slice(0, -1);
    const soundSalt = sound[saltLine - 1] ?? '';
    const faulty = sound.with(saltLine - 1, `  ${unitlessLine}`).concat(`  ${unknownIngredientLine}`);
    const file = join(folder, formulaFile);
    writeFileSync(file, `${faulty.join('\n')}\n`);
    const report = join(folder, 'report.json');
    const order = {
      command,
      file,
      folder,
      report,
      milliseconds: 10_000,
      expectedDiagnostics: 2,
      hover: { line: waterLine, column: (sound[waterLine - 1] ?? '').indexOf('water') + 2 },
      signature: { line: yieldLine, column: (sound[yieldLine - 1] ?? '').indexOf('of') + 2 },
      halfTyped,
      cures: [
        { line: lineAfterLast, text: '' },
        { line: saltLine, text: soundSalt },
      ],
      action: { line: waterLine, words: 'in grams' },
    };
    const script = fileURLToPath(new URL('neovim.lua', import.meta.url));
    // Neovim keeps its state in folders of its own choosing: nothing of the user's is read or written.
    const env = { ...process.env, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder, XDG_DATA_HOME: folder };
    const said = await runProgram(
      neovimProgram,
      ['--headless', '--clean', '-n', '-c', `luafile ${script}`, '-c', 'qall!'],
      60_000,
      { ...env, DOUGHWRIGHT_NEOVIM_ORDER: JSON.stringify(order) },
    );
    if (!existsSync(report)) throw new Error(`Neovim wrote no report; it said:\n${said}`);
    return JSON.parse(readFileSync(report, 'utf8')) as SeenByNeovim;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const command = process.argv.slice(2);
  const seen = await runInNeovim(command.length > 0 ? command : undefined);
  console.log(JSON.stringify(seen, null, 2));
  process.exitCode = seen.problems.length > 0 ? 1 : 0;
}
