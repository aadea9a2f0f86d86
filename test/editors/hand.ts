import type { Locator, Page } from 'playwright-core';
import { Dice } from '../server/dice.ts';
import { after, waitUntil } from './processes.ts';

/** What a hand takes from key to key, in milliseconds. */
const quickestKey = 110;
const slowestKey = 170;
/** And what it takes from the mouse to the first key. */
const fromMouseToKeys = 400;

/** Whatever a test draws by chance is drawn by this; the environment variable SEED puts another in its place. */
export const seed = Number(process.env.SEED ?? 17);

/**
 * Types as a hand does, 110 to 170 ms a key, as uneven as a hand and the same for the same seed. Enter is pressed with whatever list is
 * open.
 *
 * @param each is told after each key how many there have been
 */
export async function typeByHand(
  page: Page,
  text: string,
  each: (typed: number) => void = () => {},
): Promise<void> {
  const dice = new Dice(seed);
  let typed = 0;
  for (const letter of text) {
    if (letter === '\n') await page.keyboard.press('Enter');
    else await page.keyboard.type(letter);
    await after(quickestKey + dice.below(slowestKey - quickestKey + 1));
    each(++typed);
  }
}

/** Presses keys that write nothing, such as `Shift+Home`, at the pace of a hand. */
export async function pressByHand(page: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) {
    await page.keyboard.press(key);
    await after(slowestKey);
  }
}

/** Clicks into a field and types over what it holds; a line break at the end is Enter. */
export async function fillByHand(field: Locator, text: string): Promise<void> {
  const page = field.page();
  // Who types looks for the caret first: the keyboard comes into a panel a moment after the mouse, and an editor that has just opened a
  // file may take it back once more.
  const hasKeyboard = async () =>
    (await field.evaluate((one) => one.ownerDocument.activeElement === one)) &&
    // Of a window that is made to think it has the focus each frame thinks so: the workbench’s own says which one has it.
    (await page.evaluate("document.activeElement?.localName === 'iframe'"));
  const keepsKeyboard = async () => {
    await field.click();
    await after(fromMouseToKeys);
    return (await hasKeyboard()) ? true : undefined;
  };
  await waitUntil('the field to take the keyboard', keepsKeyboard, 20_000);
  await pressByHand(page, 'Control+A');
  await typeByHand(page, text);
}

/** Types over the line of the cursor but for its leading blanks, as a hand does; the cursor stays at its end. */
export async function retypeByHand(page: Page, text: string): Promise<void> {
  await pressByHand(page, 'End', 'Shift+Home');
  await typeByHand(page, text);
}

/** The lines of a text as they were typed: without indentation, blank lines and doubled blanks, which are the editor’s. */
export function typedLines(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim().replace(/\s+/g, ' '))
    .filter((line) => line !== '');
}
