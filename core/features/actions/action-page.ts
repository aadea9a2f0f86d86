import type { Action, ActionKind } from './action.ts';

const headings: Readonly<Record<ActionKind, string>> = {
  rewrite: 'Writing it another way',
  extract: 'Taking lines out into a part',
  inline: 'Taking a part back in',
  sort: 'Order of lines',
  fix: 'Fixing and accepting findings',
  fixAll: 'Fixing a whole file',
};

/** The page of the guide that lists every action, in Markdown; `kindOf` says how an editor names its kind. */
export function actionsPage(actions: readonly Action[], kindOf: (action: Action) => string): string {
  const lines = [
    '# Light bulb and refactor menu',
    '',
    'What an editor can do to the text for you. Put the cursor on a line, or select some, and open the menu: in VS Code the light',
    'bulb, where a line has a finding, or <kbd>Ctrl</kbd>+<kbd>.</kbd> anywhere, for the rewritings <kbd>Ctrl</kbd>+<kbd>Shift</kbd>+<kbd>R</kbd>; in other editors their menu of',
    'code actions. Fixes of single findings stand on the [page of each rule](../rules/README.md). This page is made from the table',
    'of actions itself.',
    '',
    'Each has a kind of its own, given below, by which an editor can bind it to a key or take it when saving. In VS Code:',
    '',
    '```json',
    '{ "key": "ctrl+alt+g", "command": "editor.action.codeAction", "args": { "kind": "refactor.rewrite.section-in-grams" } }',
    '```',
    '',
    '```json',
    '"[doughwright]": { "editor.codeActionsOnSave": { "source.fixAll.doughwright": "explicit" } }',
    '```',
    '',
    'What rewrites a formula leaves the overall formula as it was, but for what its own words say. Figures are written as short',
    'as that allows, so some have many places.',
  ];
  for (const [kind, heading] of Object.entries(headings)) {
    const ofKind = actions.filter((one) => one.kind === kind);
    if (ofKind.length === 0) continue;
    lines.push('', `## ${heading}`);
    for (const action of ofKind)
      lines.push('', `### ${action.name}`, '', action.explanation, '', `Kind: \`${kindOf(action)}\``);
  }
  return `${lines.join('\n')}\n`;
}
