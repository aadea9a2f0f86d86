import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { chromiumProgram, projectFolder } from '../editors/places.ts';

/** What printing is tested with: a browser that prints, and poppler's reader of what came of it. */
export const canPrint =
  existsSync(chromiumProgram) && spawnSync('pdftotext', ['-v'], { stdio: 'ignore' }).error === undefined;

/** Pictures of the pages lie here, for a person to look at. */
const pictures = join(projectFolder, 'test', 'screenshots', 'print');

/** Prints a page as a browser does, with nothing but the page's own style, and gives the text of each sheet of paper. */
export async function printed(
  browser: Browser,
  html: string,
  paper: 'A4' | 'Letter',
  name: string,
): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'doughwright-print-'));
  const page = await browser.newPage();
  try {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    const file = join(folder, 'sheet.html');
    writeFileSync(file, html);
    await page.goto(`file://${file}`);
    if (asked.length !== 1) throw new Error(`The page fetches something: ${asked.join(' ')}`);
    const pdf = join(folder, 'sheet.pdf');
    await page.pdf({ path: pdf, format: paper });
    mkdirSync(pictures, { recursive: true });
    spawnSync('pdftoppm', ['-r', '60', '-png', pdf, join(pictures, `${name}-${paper}`)]);
    const text = execFileSync('pdftotext', ['-layout', pdf, '-'], {
      encoding: 'utf8',
      maxBuffer: 64_000_000,
    });
    return text.split('\f').slice(0, -1);
  } finally {
    await page.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
