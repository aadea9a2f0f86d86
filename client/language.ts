import { env, workspace } from 'vscode';
import { languageId } from './names.ts';

/** The language that answers are in: that of the setting, else that of the editor where there is a catalogue of it. */
export function languageOfAnswers(): 'en' | 'de' {
  const set = workspace.getConfiguration(languageId).get<string>('language');
  const wanted = set === 'en' || set === 'de' ? set : env.language;
  return /^de\b/i.test(wanted) ? 'de' : 'en';
}
