import { Option } from 'commander';

/**
 * Which language is written. What this machine is set to is not asked: a check gives the same on every machine, and a script
 * that reads what is written needs to know nothing of the locale. Codes, levels, columns and keys are English always.
 */
export function languageOption(): Option {
  // Written out, for the core has not been loaded when the words of a command are read; a test holds it to the core's list.
  return new Option(
    '--language <language>',
    'say all in this language; else in that of the project, else en',
  ).choices(['en', 'de', 'fr']);
}

/** In which units weights are shown to people. */
export function massOption(): Option {
  return new Option('--mass <unit>', 'show weights in this unit').choices(['grams', 'ounces']);
}

/** In which unit temperatures are shown to people. */
export function temperatureOption(): Option {
  return new Option('--temperature <unit>', 'show temperatures in this unit').choices([
    'celsius',
    'fahrenheit',
  ]);
}
