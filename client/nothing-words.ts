import { l10n } from 'vscode';

/** What is so where a panel has nothing to show, and what to do. */
export interface NothingWords {
  readonly what: string;
  readonly cure: string;
}

export function noServerWords(): NothingWords {
  return {
    what: l10n.t('The language server is not running.'),
    cure: l10n.t('The command “Doughwright: Restart Language Server” starts it again.'),
  };
}

export function noFormulaWords(): NothingWords {
  return {
    what: l10n.t('No formula at the cursor.'),
    cure: l10n.t('Put the cursor into a formula of a .dough file; its batch sheet stands here.'),
  };
}
