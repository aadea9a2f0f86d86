import { l10n, type Uri, window, workspace } from 'vscode';
import { languageId } from '../names.ts';
import { bakeryText, type HouseTemperatures, readTemperature } from './bakery-text.ts';

/**
 * Asks once, with the first formula of a folder, what every dough of the house depends on, and gives the text of a bakery
 * that says so; `undefined` where the baker would rather not. A question that is passed over leaves its line out.
 */
export async function askForBakery(folder: Uri): Promise<string | undefined> {
  const unit = workspace.getConfiguration(languageId).get('units.temperature') === 'fahrenheit' ? '°F' : '°C';
  const answer = await window.showInformationMessage(
    l10n.t(
      'How warm is it where you bake? With the temperatures of room, flour and tap the water of every dough can be worked out.',
    ),
    l10n.t('Tell Now'),
    l10n.t('Later'),
  );
  if (answer !== l10n.t('Tell Now')) return undefined;
  const questions: readonly [keyof HouseTemperatures, string, string][] = [
    ['room', l10n.t('How warm is the bakery when you mix?'), unit === '°C' ? '21' : '70'],
    ['flour', l10n.t('How warm is the flour?'), unit === '°C' ? '20' : '68'],
    ['tap water', l10n.t('How cold does the water come from the tap?'), unit === '°C' ? '12' : '54'],
  ];
  const said: { -readonly [Key in keyof HouseTemperatures]?: string } = {};
  for (const [index, [key, prompt, example]] of questions.entries()) {
    const typed = await window.showInputBox({
      title: l10n.t('Your Bakery ({0} of {1})', index + 1, questions.length + 1),
      prompt: `${prompt} (${unit})`,
      placeHolder: example,
      ignoreFocusOut: true,
      validateInput: (text) =>
        text.trim() === '' || readTemperature(text, unit) !== undefined
          ? undefined
          : l10n.t('A temperature such as {0}, or nothing to leave it out.', `${example} ${unit}`),
    });
    if (typed === undefined) return undefined;
    const read = readTemperature(typed, unit);
    if (read !== undefined) said[key] = read;
  }
  const ice = await window.showQuickPick([l10n.t('Yes'), l10n.t('No')], {
    title: l10n.t('Your Bakery ({0} of {1})', questions.length + 1, questions.length + 1),
    placeHolder: l10n.t('Is there ice to hand for hot days?'),
    ignoreFocusOut: true,
  });
  if (ice === undefined) return undefined;
  return bakeryText(workspace.getWorkspaceFolder(folder)?.name ?? '', said, ice === l10n.t('Yes'));
}
