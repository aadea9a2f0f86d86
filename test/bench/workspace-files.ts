import { mkdirSync, mkdtempSync, realpathSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** A workspace of many files, as a group of bakeries might keep it; of our own invention. */
export interface WorkspaceOfMany {
  readonly path: string;
  readonly uri: string;
  /** The URI and the text of a formula file by its number. */
  formula(number: number): { readonly uri: string; readonly text: string };
  /** The file of the flour that every second formula takes. */
  readonly flour: { readonly uri: string; readonly text: string };
}

export const formulaCount = 10_000;
export const definitionCount = 200;
const formulasPerFolder = 100;
const definitionsPerFile = 5;

/** Writes the files into a temporary folder; whoever asked removes it. */
export function writeWorkspace(): WorkspaceOfMany {
  const path = realpathSync(mkdtempSync(join(tmpdir(), 'doughwright-bench-')));
  const shared = join(path, 'shared');
  mkdirSync(shared);
  for (let first = 0; first < definitionCount; first += definitionsPerFile) {
    const texts = Array.from({ length: definitionsPerFile }, (_, index) => definitionText(first + index));
    writeFileSync(join(shared, `definitions-${first / definitionsPerFile}.dough`), texts.join('\n'));
  }
  for (let number = 0; number < formulaCount; number++) {
    if (number % formulasPerFolder === 0) mkdirSync(join(path, folderOf(number)), { recursive: true });
    writeFileSync(join(path, fileOf(number)), formulaText(number));
  }
  return {
    path,
    uri: pathToFileURL(path).href,
    formula: (number) => ({
      uri: pathToFileURL(join(path, fileOf(number))).href,
      text: formulaText(number),
    }),
    flour: {
      uri: pathToFileURL(join(shared, 'definitions-0.dough')).href,
      text: Array.from({ length: definitionsPerFile }, (_, index) => definitionText(index)).join('\n'),
    },
  };
}

function folderOf(number: number): string {
  return join('bakeries', `bakery ${Math.floor(number / formulasPerFolder)}`);
}

function fileOf(number: number): string {
  return join(folderOf(number), `loaf ${number}.dough`);
}

function definitionText(number: number): string {
  if (number % 10 === 9)
    return [`mixer spiral ${number}:`, '  kind spiral', '  speed 1 100 rpm', '  speed 2 200 rpm', ''].join(
      '\n',
    );
  return [`flour mill white ${number}:`, '  grain wheat', `  protein ${11 + (number % 4) / 2}%`, ''].join(
    '\n',
  );
}

/** The number of the flour of a formula: 0 for every second, any other for the rest. */
function flourOf(number: number): number {
  if (number % 2 === 0) return 0;
  const other = 1 + ((number * 7) % (definitionCount - 1));
  return other % 10 === 9 ? other - 1 : other;
}

function formulaText(number: number): string {
  return [
    `formula Quay Loaf ${number}:`,
    `  yield ${12 + (number % 30)} pieces of ${450 + 10 * (number % 40)} g`,
    '  loss 1.5%',
    '  dough temperature 25 °C',
    `  mill white ${flourOf(number)}   85%`,
    '  wholemeal wheat    balance',
    `  water              to ${62 + (number % 10)}% hydration`,
    '  salt               2%',
    '  fresh yeast        0.9%',
    '  butter             4%, at 8 °C',
    'preferment evening poolish:',
    '  draws 22% of flour',
    `  mill white ${flourOf(number)}   100%`,
    '  water              100%',
    '  instant yeast      0.08%',
    '  ferment 12 h at 18 °C',
    'mix by hand:',
    '  load flour, water, evening poolish, salt, fresh yeast, butter',
    '  knead for 12 min',
    '',
  ].join('\n');
}
