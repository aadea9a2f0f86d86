import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { WorkState } from '../../client/preview/messages.ts';
import type { SheetDocument } from '../../server/protocol.ts';
import { launchChromium } from '../editors/code-server.ts';
import { projectFolder } from '../editors/places.ts';
import { computedSheet, crowdedComputedSheet } from './computed-sheets.ts';
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
  const ferry = computedSheet('Ferry Loaf', {
    size: { by: 'pieces', pieces: 120 },
    today: { roomCelsius: 26 },
    clock: { by: 'ready', minutes: 390 },
  });
  for (const width of [320, 800, 1600]) await picture(`computed-${width}`, 'light', width, [ferry]);
  await picture('computed-dark', 'dark', 800, [ferry]);
  await picture('computed-high-contrast', 'high-contrast', 800, [ferry]);
  for (const width of [320, 700, 1600])
    await picture(`computed-crowded-${width}`, 'light', width, [crowdedComputedSheet()]);
  for (const width of [320, 1000]) {
    for (const moment of [0, 1, 2]) {
      const { id: key } = ferry.moments[moment]!;
      const timers =
        moment === 2 ? { [key]: { label: 'speed 1', startedAt: Date.now() - 50_000, seconds: 180 } } : {};
      await picture(`working-${moment}-${width}`, width === 320 ? 'dark' : 'light', width, [ferry], {
        ...{ moment: key, ticked: [], timers },
      });
    }
  }
  const sized: SheetDocument = {
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
  sheets: readonly SheetDocument[],
  work?: WorkState,
): Promise<void> {
  const panel = await openPanel(browser, {
    ...{ theme, width, height: work ? 800 : 1000 },
    ...(work ? { state: { mode: 'working' as const } } : {}),
  });
  if (sheets.length === 0)
    await panel.send({
      type: 'nothing',
      sequence: 1,
      what: 'No formula at the cursor.',
      cure: 'Put the cursor into one.',
    });
  for (const sheet of sheets) await panel.show(sheet, work ? { work } : {});
  await panel.page.evaluate(`for (const one of document.querySelectorAll('.day')) one.open = true`);
  await panel.page.screenshot({ path: join(folder, `${name}.png`), fullPage: !work });
  await panel.page.close();
  for (const complaint of panel.wrong) console.error(`${name}: ${complaint}`);
}
