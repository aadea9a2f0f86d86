import { Option } from 'commander';

/**
 * Which language is written. What this machine is set to is not asked: a check gives the same on every machine, and a script
 * that reads what is written needs to know nothing of the locale. Codes, levels, columns and keys are English always.
 */
export function languageOption(): Option {
  // Written out, for the core has not been loaded when the words of a command are read; a test holds it to the core's list.
  return new Option('--language <language>', 'say all in this language')
    .choices(['en', 'de', 'fr'])
    .default('en');
}
