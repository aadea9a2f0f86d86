import { commands, l10n, Uri, window, workspace } from 'vscode';

/** The files of the demo bakery by their paths, as the build put them together. */
type Demo = Readonly<Record<string, string>>;

/** Copies the demo bakery into a new folder that the user chooses a place for, and offers to open it. Nothing is written over. */
export async function openDemo(extensionUri: Uri): Promise<void> {
  const chosen = await window.showOpenDialog({
    canSelectFiles: false,
    canSelectFolders: true,
    canSelectMany: false,
    title: l10n.t('Where Shall the Demo Bakery Be Put?'),
    openLabel: l10n.t('Put It Here'),
  });
  const place = chosen?.[0];
  if (!place) return;
  if (workspace.fs.isWritableFileSystem(place.scheme) === false) {
    void window.showErrorMessage(
      l10n.t('Nothing can be written to {0}; choose another folder.', place.fsPath),
    );
    return;
  }
  const demo = await readDemo(extensionUri);
  const folder = await freeFolder(place, 'quay-lane');
  await workspace.fs.createDirectory(folder);
  const encoder = new TextEncoder();
  for (const [path, text] of Object.entries(demo)) {
    const file = Uri.joinPath(folder, ...path.split('/'));
    await workspace.fs.createDirectory(Uri.joinPath(file, '..'));
    await workspace.fs.writeFile(file, encoder.encode(text));
  }
  const here = l10n.t('Open Here');
  const other = l10n.t('Open in a New Window');
  const name = workspace.asRelativePath(folder, false);
  // A window with nothing in it loses nothing.
  const answer =
    workspace.workspaceFolders === undefined && window.visibleTextEditors.length === 0
      ? here
      : await window.showInformationMessage(l10n.t('The demo bakery is in {0}.', name), here, other);
  if (answer !== undefined) await commands.executeCommand('vscode.openFolder', folder, answer === other);
}

async function readDemo(extensionUri: Uri): Promise<Demo> {
  const bytes = await workspace.fs.readFile(Uri.joinPath(extensionUri, 'dist', 'demo.json'));
  return JSON.parse(new TextDecoder().decode(bytes)) as Demo;
}

/** A folder of that name that is not there yet: with a number behind it where it is. */
async function freeFolder(place: Uri, name: string): Promise<Uri> {
  const there = new Set((await workspace.fs.readDirectory(place)).map(([other]) => other.toLowerCase()));
  let free = name;
  for (let number = 2; there.has(free); number += 1) free = `${name}-${number}`;
  return Uri.joinPath(place, free);
}
