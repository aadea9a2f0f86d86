import {
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  type Stats,
  statSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { Script } from 'node:vm';

/**
 * Runs the programs that lie beside this one with the machine code that an earlier run left. Node's own cache holds what is compiled
 * before a program runs; this one holds all that the earlier run had used, which is most of what the next one compiles. It is kept by
 * what the programs run for, as the server and each command use different parts of them.
 *
 * The engine itself looks at its version, its flags and the length of a program, and at nothing else: a program says by a mark in its
 * first line which it is, and what is kept carries a checksum. Whatever does not fit, is somebody else's, or cannot be read or written
 * makes a start slow and nothing else.
 */
export class KeptCode {
  readonly #folder = folderOfCode();
  readonly #purpose: string;
  readonly #require: NodeJS.Require;
  readonly #programs = new Map<string, Program>();

  /** `purpose` is a word for what the programs run for; `require` is for what Node has itself. */
  constructor(purpose: string, require: NodeJS.Require) {
    this.#purpose = purpose;
    this.#require = require;
  }

  /** What a program exports, which is run the first time it is asked for. */
  run(path: string): unknown {
    const known = this.#programs.get(path);
    if (known !== undefined) return known.module.exports;
    const bytes = readFileSync(path);
    const mark = markOf(bytes);
    // What was built to be read while it is worked on has no mark, and may hold letters of more than a byte.
    if (mark === undefined || this.#folder === undefined) return this.#require(path);
    const place = join(
      this.#folder,
      [basename(path, '.cjs'), this.#purpose, process.versions.v8, process.arch, mark].join('_'),
    );
    const kept = readKept(place);
    const script = new Script(
      `(function (exports, require, module, __filename, __dirname) {${bytes.toString('latin1')}\n})`,
      { filename: path, ...(kept === undefined ? {} : { cachedData: kept.code }) },
    );
    const isKept = kept !== undefined && script.cachedDataRejected !== true;
    const module = { exports: {} };
    this.#programs.set(path, { module, script, place, keptAt: isKept ? kept.at : undefined });
    const require = (name: string) =>
      name.startsWith('./') ? this.run(join(dirname(path), name)) : this.#require(name);
    script.runInThisContext()(
      module.exports,
      Object.assign(require, this.#require),
      module,
      path,
      dirname(path),
    );
    return module.exports;
  }

  /**
   * Keeps the code of the programs that ran without; and once a day of those too by which much has been used since that was not
   * before. Takes some twenty milliseconds where there is something to keep.
   */
  keep(): void {
    for (const { script, place, keptAt } of this.#programs.values()) {
      if (keptAt !== undefined && Date.now() - keptAt < day) continue;
      try {
        const code = script.createCachedData();
        if (keptAt !== undefined && code.length < worthAnew * statSync(place).size)
          utimesSync(place, new Date(), new Date());
        else write(place, code);
      } catch {
        // No room, say. The next start is as slow as this one.
      }
    }
  }
}

interface Program {
  readonly module: { readonly exports: unknown };
  readonly script: Script;
  readonly place: string;
  /** When its code was kept, in milliseconds as the clock has them; absent where it runs without. */
  readonly keptAt: number | undefined;
}

const day = 24 * 60 * 60 * 1000;

/** Code is kept anew when it is so many times as long as before. */
const worthAnew = 1.1;

/** Code that no run has looked at for so long is of programs that are there no more. */
const longestKept = 60 * day;

/**
 * The folder of this user, in the one for passing files; `undefined` where nothing shall be kept, or where it is somebody else's, who could
 * lay there what we would run.
 */
function folderOfCode(): string | undefined {
  const { NODE_DISABLE_COMPILE_CACHE, NODE_V8_COVERAGE } = process.env;
  if (NODE_DISABLE_COMPILE_CACHE || NODE_V8_COVERAGE) return undefined;
  const folder = join(tmpdir(), ['doughwright', process.getuid?.()].join('-'));
  try {
    const found = lstatSync(folder, { throwIfNoEntry: false });
    return found === undefined || (found.isDirectory() && isOurs(found)) ? folder : undefined;
  } catch {
    return undefined;
  }
}

/** Whether nobody else can have written it. */
function isOurs({ uid, mode }: Stats): boolean {
  const own = process.getuid?.();
  return own === undefined || (uid === own && (mode & 0o022) === 0);
}

/** Which program this is, as the build has written it into the first line. */
function markOf(program: Buffer): string | undefined {
  return /^\/\/ ([0-9a-f]{32})\n/.exec(program.toString('latin1', 0, 36))?.[1];
}

/** What was kept; nothing where it is not ours alone, or not as it was written. */
function readKept(place: string): { readonly code: Buffer; readonly at: number } | undefined {
  try {
    const found = lstatSync(place);
    if (!found.isFile() || !isOurs(found)) return undefined;
    const bytes = readFileSync(place);
    const code = bytes.subarray(headBytes);
    return checksum(code) === bytes.readInt32LE(0) ? { code, at: found.mtimeMs } : undefined;
  } catch {
    return undefined;
  }
}

/** Over the length and every sixteenth word, which is in each page of a disk and takes less time than to load a library for it. */
function checksum(code: Buffer): number {
  const words = new Int32Array(code.buffer, code.byteOffset, code.length >> 2);
  let sum = code.length;
  for (let at = 0; at < words.length; at += 16) sum = (Math.imul(sum, 31) + (words[at] ?? 0)) | 0;
  return sum;
}

/** So many bytes stand before the code, which the engine takes as it lies where this is a multiple of eight. */
const headBytes = 8;

/** Writes code whole or not at all, and takes away what has not been used for long. */
function write(place: string, code: Buffer): void {
  const folder = dirname(place);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const head = Buffer.alloc(headBytes);
  head.writeInt32LE(checksum(code));
  const passing = `${place}_${process.pid}`;
  writeFileSync(passing, Buffer.concat([head, code]), { mode: 0o600 });
  renameSync(passing, place);
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (Date.now() - statSync(path).mtimeMs > longestKept) unlinkSync(path);
  }
}
