import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { check, eventually } from './runner.ts';

const table =
  'Quay Tin\n\nIngredient\tg\t%\nstrong white\t1000\t100\nwater\t650\t65\nsalt\t20\t2\nTotal\t1670\t167\n';
const formula =
  'formula Quay Tin:\n  yield 1670 g\n\n  strong white       100%\n  water              65%\n  salt               2%\n';

check('a table on the clipboard becomes a formula of a new text, its name selected', async () => {
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await vscode.env.clipboard.writeText(table);
  await vscode.commands.executeCommand('doughwright.importClipboard');
  const editor = await eventually('the new formula', () => vscode.window.activeTextEditor);
  assert.equal(editor.document.languageId, 'doughwright');
  assert.equal(editor.document.getText(), formula);
  await eventually('the name to be selected', () =>
    editor.document.getText(editor.selection) === 'Quay Tin' ? true : undefined,
  );
});

check('a selected table in a formula is replaced by the formula it says', async () => {
  const document = await vscode.workspace.openTextDocument({
    language: 'doughwright',
    content: `# from the old book\n${table}# and so on\n`,
  });
  const editor = await vscode.window.showTextDocument(document);
  const end = document.positionAt(document.getText().indexOf('# and'));
  editor.selection = new vscode.Selection(new vscode.Position(1, 0), end);
  await vscode.commands.executeCommand('doughwright.importSelection');
  await eventually(
    'the formula in place of the table',
    () => (document.getText() === `# from the old book\n${formula}# and so on\n` ? true : undefined),
    () => document.getText(),
  );
});

check(
  'the sheet opened from the first steps, which have no cursor, is that of the formula worked on last',
  async () => {
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    const document = await vscode.workspace.openTextDocument({ language: 'doughwright', content: formula });
    await vscode.window.showTextDocument(document);
    await vscode.commands.executeCommand('workbench.action.openWalkthrough', 'doughwright.doughwright#start');
    await eventually('the first steps to be in front', () =>
      vscode.window.activeTextEditor === undefined ? true : undefined,
    );
    await vscode.commands.executeCommand('doughwright.openSheet');
    const titles = () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
    await eventually(
      'the sheet of the formula',
      () => (titles().includes('Quay Tin · Batch Sheet') ? true : undefined),
      () => titles().join(', '),
    );
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  },
);

check('the task checks the folder with the program that comes along', async () => {
  const folder = vscode.workspace.workspaceFolders![0]!;
  const bad = vscode.Uri.joinPath(folder.uri, 'unit.dough');
  await vscode.workspace.fs.writeFile(
    bad,
    new TextEncoder().encode('formula A:\n  rye flour 100%\n  salt 2\n'),
  );
  try {
    const found = await vscode.tasks.fetchTasks({ type: 'doughwright' });
    assert.equal(found.length, 1);
    const ended = new Promise<number | undefined>((resolve) => {
      const watch = vscode.tasks.onDidEndTaskProcess(({ exitCode, execution }) => {
        if (execution.task.definition.type !== 'doughwright') return;
        watch.dispose();
        resolve(exitCode);
      });
    });
    await vscode.tasks.executeTask(found[0]!);
    assert.equal(await ended, 1);
    const problem = await eventually('the problem of the task', () =>
      vscode.languages.getDiagnostics(bad).find(({ code }) => codeOf(code) === 'missing-unit'),
    );
    assert.equal(problem.range.start.line, 2);
    assert.equal(problem.severity, vscode.DiagnosticSeverity.Error);
  } finally {
    await vscode.workspace.fs.delete(bad);
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  }
});

function codeOf(code: vscode.Diagnostic['code']): unknown {
  return typeof code === 'object' ? code.value : code;
}
