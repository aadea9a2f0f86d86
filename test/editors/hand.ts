import type { Page } from 'playwright-core';
import { after } from './processes.ts';

/** Types as a hand does: 110 to 170 ms a key, and Enter pressed with whatever list is open. */
export async function typeByHand(page: Page, text: string): Promise<void> {
  let key = 0;
  for (const character of text) {
    if (character === '\n') await page.keyboard.press('Enter');
    else await page.keyboard.type(character);
    // Deterministic, and as uneven as a hand.
    await after(110 + ((key++ * 37) % 61));
  }
}
