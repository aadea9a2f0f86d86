import type { RulePageWords } from '../rule-page-words.ts';

/** Was auf der Seite einer Regel um ihre eigenen Worte steht. */
export const rulePageWords: RulePageWords = {
  levels: { error: 'Fehler', warning: 'Warnung', info: 'Information', hint: 'Hinweis' },
  usualLevel: 'Vorgegebene Stufe',
  fires: 'Das beanstandet sie',
  silent: 'Hier schweigt sie',
  allRules: 'Alle Regeln',
  list: {
    title: 'Regeln',
    text:
      'Was die Befunde sagen, nach ihrem Code. `# accept CODE: Grund` bringt einen Befund auf einer Zeile zum Schweigen (nicht aber einen Fehler in der Schreibweise einer Zeile), ' +
      'die Einstellung `doughwright.rules` überall, auf der Kommandozeile `check --rule CODE=off`.',
    columns: ['Code', 'Stufe', 'was sie findet'],
  },
};
