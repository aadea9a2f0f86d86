import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** By how many pixels the page must be moved sideways to be read. */
export async function sideways(page: Page): Promise<number> {
  return page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
}

/** What is to be touched and is smaller than a fingertip of 44 pixels. */
export async function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(`[...document.querySelectorAll('.work-mode button, .work-mode select, .work-mode input')]
    .filter((one) => !one.matches('.finding .name'))
    .filter((one) => { const box = one.getBoundingClientRect(); return box.width < 44 || box.height < 44; })
    .map((one) => one.outerHTML)`);
}

/** What axe-core finds wrong: one text a violation. */
export async function axeViolations(page: Page): Promise<string[]> {
  // Evaluated from outside, the checker is no script of the page and needs no hole in its policy.
  await page.evaluate(axeSource);
  return page.evaluate(`axe.run(document).then((result) => result.violations.map((violation) =>
    violation.id + ': ' + violation.help + ' at ' + violation.nodes.map((node) => node.html).join(' | ')))`);
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
