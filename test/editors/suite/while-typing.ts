import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { languageId, unknownIngredientLine, waterLine } from '../expectations.ts';
import { appendLine, hintOfLine, openFormula, replaceLine, wordsOf } from './documents.ts';
import { check, eventually } from './runner.ts';

check('completion tells what an ingredient is made of, with the source, when it is looked at', async () => {
  const document = await openFormula();
  await appendLine(document, 'but');
  const last = document.lineAt(document.lineCount - 1).range.end;
  await eventually('the composition of butter', async () => {
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      last,
      undefined,
      200,
    );
    const butter = list.items.find((item) => item.label === 'butter');
    const said = butter?.documentation;
    const text = said === undefined ? '' : wordsOf(said);
    return /fat 81/.test(text) && /Figures: /.test(text) ? true : undefined;
  });
});

check('every word is known for what it is', async () => {
  const document = await openFormula();
  await appendLine(document, unknownIngredientLine);
  const legend = await eventually('the legend of the words', async () =>
    vscode.commands.executeCommand<vscode.SemanticTokensLegend | undefined>(
      'vscode.provideDocumentSemanticTokensLegend',
      document.uri,
    ),
  );
  await eventually('an unknown name and a flour', async () => {
    const tokens = await vscode.commands.executeCommand<vscode.SemanticTokens | undefined>(
      'vscode.provideDocumentSemanticTokens',
      document.uri,
    );
    const types = new Set([...(tokens?.data ?? [])].filter((_, at) => at % 5 === 3));
    const names = [...types].map((type) => legend.tokenTypes[type]);
    return ['keyword', 'class', 'type', 'variable', 'number', 'unknownName'].every((name) =>
      names.includes(name),
    )
      ? true
      : undefined;
  });
});

check('the forms of a line are told while it is typed', async () => {
  const document = await openFormula();
  await replaceLine(document, waterLine, '  water              to 69% ');
  const help = await eventually('the forms', async () => {
    const found = await vscode.commands.executeCommand<vscode.SignatureHelp | undefined>(
      'vscode.executeSignatureHelpProvider',
      document.uri,
      document.lineAt(waterLine - 1).range.end,
      ' ',
    );
    return found && found.signatures.length > 0 ? found : undefined;
  });
  const active = help.signatures[help.activeSignature];
  assert.match(active?.label ?? '', /^water {2}to PERCENT hydration/);
  const label = active?.parameters[active.activeParameter ?? help.activeParameter]?.label;
  assert.ok(Array.isArray(label), 'the parameter is not told by its place');
  assert.equal(active?.label.slice(label[0], label[1]), 'hydration');
});

check('units follow the settings without a restart', async () => {
  const document = await openFormula();
  await hintOfLine(document, waterLine, (text) => / kg$/.test(text));
  const settings = vscode.workspace.getConfiguration(languageId);
  const target = vscode.ConfigurationTarget.Global;
  await settings.update('units.mass', 'ounces', target);
  try {
    await hintOfLine(document, waterLine, (text) => / lb$/.test(text));
  } finally {
    await settings.update('units.mass', undefined, target);
  }
  await hintOfLine(document, waterLine, (text) => / kg$/.test(text));
});
