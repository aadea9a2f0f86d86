import { env, workspace } from 'vscode';
import { languageId } from './names.ts';

/** The languages that there are words of. */
const languages = ['en', 'de', 'fr'] as const;

/** The language that answers are in: that of the setting, else that of the editor where it is one of these. */
export function languageOfAnswers(): (typeof languages)[number] {
  const set = workspace.getConfiguration(languageId).get<string>('language');
  const wanted = typeof set === 'string' && set !== 'editor' ? set : env.language;
  const [first] = wanted.toLowerCase().split(/[-_]/);
  return languages.find((one) => one === first) ?? 'en';
}
