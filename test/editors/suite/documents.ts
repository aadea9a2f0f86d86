import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { formulaFile, formulaText } from '../expectations.ts';
import { eventually } from './runner.ts';

export async function openFormula(): Promise<vscode.TextDocument> {
  const folder = vscode.workspace.workspaceFolders?.[0];
  assert.ok(folder, 'no folder is open');
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder.uri, formulaFile));
  await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
  await setText(document, formulaText);
  return document;
}

export async function setText(document: vscode.TextDocument, text: string): Promise<void> {
  if (document.getText() === text) return;
  const everything = new vscode.Range(0, 0, document.lineCount, 0);
  await applyText(document, everything, text);
}

export async function replaceLine(
  document: vscode.TextDocument,
  lineFromOne: number,
  text: string,
): Promise<void> {
  await applyText(document, document.lineAt(lineFromOne - 1).range, text);
}

export async function appendLine(document: vscode.TextDocument, text: string): Promise<void> {
  const end = document.lineAt(document.lineCount - 1).range.end;
  await applyText(document, new vscode.Range(end, end), `  ${text}`);
}

async function applyText(document: vscode.TextDocument, range: vscode.Range, text: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, range, text);
  assert.ok(await vscode.workspace.applyEdit(edit), 'the edit was refused');
}

export async function hintOfLine(
  document: vscode.TextDocument,
  lineFromOne: number,
  fits: (text: string) => boolean,
): Promise<void> {
  let seen: string[] = [];
  const find = async () => {
    const hints = await vscode.commands.executeCommand<vscode.InlayHint[]>(
      'vscode.executeInlayHintProvider',
      document.uri,
      new vscode.Range(0, 0, document.lineCount, 0),
    );
    seen = hints.filter((hint) => hint.position.line === lineFromOne - 1).map(labelOf);
    return seen.some(fits) ? true : undefined;
  };
  await eventually(`a fitting hint on line ${lineFromOne}`, find, () => seen);
}

function labelOf(hint: vscode.InlayHint): string {
  return typeof hint.label === 'string' ? hint.label : hint.label.map((part) => part.value).join('');
}

export function wordsOf(content: vscode.MarkedString | vscode.MarkdownString | string): string {
  return typeof content === 'string' ? content : content.value;
}
