import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  extensionId,
  formulaName,
  formulaText,
  languageId,
  namesMass,
  openBatchSheetCommand,
  panelViewType,
  restartServerCommand,
  saltLine,
  unitlessLine,
  unitlessLineFixed,
  unitlessMessage,
  unknownIngredient,
  unknownIngredientLine,
  waterGrams,
  waterLine,
  writePercentFix,
} from '../expectations.ts';
import { appendLine, hintOfLine, openFormula, replaceLine, setText, wordsOf } from './documents.ts';
import { check, eventually, runAll } from './runner.ts';
import './navigation.ts';
import './tables-and-tasks.ts';
import './while-typing.ts';

/** Called by the editor inside its extension host, on the desktop and in the browser alike. */
export async function run(): Promise<void> {
  await runAll();
}

check('a .dough file has our language and starts the extension', async () => {
  const document = await openFormula();
  assert.equal(document.languageId, languageId);
  const extension = vscode.extensions.getExtension(extensionId);
  assert.ok(extension, `${extensionId} is not installed`);
  await eventually('the extension to be active', () => (extension.isActive ? true : undefined));
});

check('a sound formula has no findings', async () => {
  const document = await openFormula();
  // A finding that comes and goes proves that the server has looked; only then is silence an answer.
  await appendLine(document, unknownIngredientLine);
  await findingAt(document, unknownIngredient);
  await setText(document, formulaText);
  await noFindings(document);
});

check('a number without a unit is an error with a code, and its quick fix cures it', async () => {
  const document = await openFormula();
  await replaceLine(document, saltLine, `  ${unitlessLine}`);
  const finding = await findingOnLine(document, saltLine - 1);
  assert.equal(finding.severity, vscode.DiagnosticSeverity.Error);
  assert.match(finding.message, unitlessMessage);
  assert.ok(finding.code, 'the finding has no code');

  const actions = await eventually('the quick fix', async () => {
    const offered = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      finding.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fitting = offered.filter((action) => writePercentFix.test(action.title));
    return fitting.length > 0 ? fitting : undefined;
  });
  const edit = actions[0]?.edit;
  assert.ok(edit, 'the quick fix carries no edit');
  await vscode.workspace.applyEdit(edit);
  assert.match(document.lineAt(saltLine - 1).text, unitlessLineFixed);
  await noFindings(document);
});

check('an unknown ingredient is told at its name', async () => {
  const document = await openFormula();
  await appendLine(document, unknownIngredientLine);
  const finding = await findingAt(document, unknownIngredient);
  assert.ok(finding.message.includes(unknownIngredient), finding.message);
});

check('the hover on water tells its mass', async () => {
  const document = await openFormula();
  const text = await eventually('a hover on water', async () => {
    const place = document.lineAt(waterLine - 1).text.indexOf('water') + 1;
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      new vscode.Position(waterLine - 1, place),
    );
    const said = hovers
      .flatMap((hover) => hover.contents)
      .map(wordsOf)
      .join('\n');
    return said || undefined;
  });
  assert.ok(namesMass(text, waterGrams(0.69)), `${text} does not name ${waterGrams(0.69)} g`);
});

check('inlay hints follow a change of the water', async () => {
  const document = await openFormula();
  await hintOfLine(document, waterLine, (text) => namesMass(text, waterGrams(0.69)));
  await replaceLine(document, waterLine, '  water              72%');
  await hintOfLine(document, waterLine, (text) => namesMass(text, waterGrams(0.72)));
});

check('the outline names the formula', async () => {
  const document = await openFormula();
  const names = await eventually('document symbols', async () => {
    const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>(
      'vscode.executeDocumentSymbolProvider',
      document.uri,
    );
    return symbols?.length ? symbols.map((symbol) => symbol.name) : undefined;
  });
  assert.ok(
    names.some((name) => name.includes(formulaName)),
    `no ${formulaName} in ${names.join(', ')}`,
  );
});

check('completion offers a catalogue name on a half-typed line', async () => {
  const document = await openFormula();
  await appendLine(document, 'but');
  const last = document.lineAt(document.lineCount - 1).range.end;
  await eventually('butter among the completions', async () => {
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      last,
    );
    const labels = list.items.map((item) => (typeof item.label === 'string' ? item.label : item.label.label));
    return labels.includes('butter') ? true : undefined;
  });
});

check('the formula folds', async () => {
  const document = await openFormula();
  const ranges = await eventually('folding ranges', async () => {
    const found = await vscode.commands.executeCommand<vscode.FoldingRange[]>(
      'vscode.executeFoldingRangeProvider',
      document.uri,
    );
    return found?.length ? found : undefined;
  });
  assert.ok(
    ranges.some((range) => range.start === 0 && range.end >= saltLine),
    JSON.stringify(ranges),
  );
});

check('the command opens the batch sheet beside the editor', async () => {
  await openFormula();
  await vscode.commands.executeCommand(openBatchSheetCommand);
  const tab = await eventually('a tab of the panel', () => panelTabs()[0], allTabs);
  assert.notEqual(tab.group.viewColumn, vscode.ViewColumn.One);
  await vscode.window.tabGroups.close(tab);
});

check('after a restart the server tells its findings again', async () => {
  const document = await openFormula();
  await appendLine(document, unknownIngredientLine);
  await findingAt(document, unknownIngredient);
  // A restart takes the old server's findings away first: that they change at all shows that there was one.
  let changes = 0;
  const watch = vscode.languages.onDidChangeDiagnostics((event) => {
    if (event.uris.some((uri) => uri.toString() === document.uri.toString())) changes += 1;
  });
  await vscode.commands.executeCommand(restartServerCommand);
  await findingAt(document, unknownIngredient);
  await eventually('the findings to be told anew', () => (changes > 0 ? true : undefined));
  watch.dispose();
  await replaceLine(document, saltLine, `  ${unitlessLine}`);
  await findingOnLine(document, saltLine - 1);
  await setText(document, formulaText);
  await noFindings(document);
});

check('findings go when the file is closed', async () => {
  const document = await openFormula();
  await appendLine(document, unknownIngredientLine);
  await findingAt(document, unknownIngredient);
  await setText(document, formulaText);
  await document.save();
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await eventually(
    'no findings of the closed file',
    () => (vscode.languages.getDiagnostics(document.uri).length === 0 ? true : undefined),
    () => messages(document),
  );
});

function findingAt(document: vscode.TextDocument, words: string): Promise<vscode.Diagnostic> {
  const find = () =>
    vscode.languages
      .getDiagnostics(document.uri)
      .find((finding) => document.getText(finding.range).includes(words));
  return eventually(`a finding at "${words}"`, find, () => messages(document));
}

function findingOnLine(document: vscode.TextDocument, line: number): Promise<vscode.Diagnostic> {
  const find = () =>
    vscode.languages.getDiagnostics(document.uri).find((finding) => finding.range.start.line === line);
  return eventually(`a finding on line ${line + 1}`, find, () => messages(document));
}

function noFindings(document: vscode.TextDocument): Promise<true> {
  const none = () => (vscode.languages.getDiagnostics(document.uri).length === 0 ? true : undefined);
  return eventually('no findings', none, () => messages(document));
}

function messages(document: vscode.TextDocument): string[] {
  return vscode.languages
    .getDiagnostics(document.uri)
    .map((finding) => `${finding.range.start.line + 1}: ${finding.message}`);
}

function panelTabs(): vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap((group) => group.tabs)
    .filter((tab) => tab.input instanceof vscode.TabInputWebview && panelViewType.test(tab.input.viewType));
}

function allTabs(): string[] {
  return vscode.window.tabGroups.all.flatMap((group) => group.tabs).map((tab) => tab.label);
}
