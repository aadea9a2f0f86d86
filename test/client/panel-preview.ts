import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { SheetView } from '../../server/protocol.ts';
import { launchChromium } from '../editors/code-server.ts';
import { projectFolder } from '../editors/places.ts';
import { openPanel } from './panel-page.ts';
import {
  crowdedSheet,
  emptyFormula,
  harbourTin,
  harbourTinHeld,
  rightToLeftSheet,
  withFindings,
} from './sheets.ts';
import { type ThemeName, themes } from './themes.ts';

/**
 * Takes pictures of the panel in every theme and width, and in every state, for a person to look at:
 *
 *   node test/client/panel-preview.ts
 */
const folder = join(projectFolder, 'test', 'screenshots', 'panel');
mkdirSync(folder, { recursive: true });
const browser = await launchChromium();
try {
  for (const theme of Object.keys(themes) as ThemeName[]) {
    for (const width of [320, 800, 1600])
      await picture(`sheet-${theme}-${width}`, theme, width, [withFindings]);
  }
  await picture('held', 'dark', 800, [harbourTin, harbourTinHeld]);
  await picture('held-light', 'light', 320, [harbourTin, harbourTinHeld]);
  await picture('empty', 'light', 800, [emptyFormula]);
  await picture('nothing', 'light', 800, []);
  await picture('crowded', 'light', 800, [crowdedSheet]);
  await picture('crowded-narrow', 'light', 320, [crowdedSheet]);
  await picture('right-to-left', 'light', 800, [rightToLeftSheet]);
  const sized: SheetView = {
    ...harbourTin,
    size: { ...harbourTin.size, asked: { by: 'pieces', pieces: 24 } },
  };
  await picture('sized', 'dark', 800, [sized]);
} finally {
  await browser.close();
}

async function picture(
  name: string,
  theme: ThemeName,
  width: number,
  sheets: readonly SheetView[],
): Promise<void> {
  const panel = await openPanel(browser, { theme, width });
  if (sheets.length === 0) await panel.send({ type: 'nothing', sequence: 1, why: 'no-formula' });
  for (const sheet of sheets) await panel.show(sheet);
  await panel.page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
  await panel.page.close();
  for (const complaint of panel.wrong) console.error(`${name}: ${complaint}`);
}
