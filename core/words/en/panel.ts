import type { Args } from '../args.ts';

/** What the panel of the batch sheet itself says: its fields, its buttons and what it asks. `written` stands for what it fills in. */
export const panel = {
  'panel.show-line': () => 'Show this line in the editor',
  'panel.line': ({ written }: Args<'written'>) => `line ${written}`,
  'panel.tried': () => 'tried today, not as in the file',
  'panel.today-instead': ({ written }: Args<'written'>) => `today; ${written} in the file`,
  'panel.as-in-file': () => 'as in the file',

  'panel.held-by': ({ written, otherWritten }: Args<'written' | 'otherWritten'>) =>
    `Line ${written} holds this up: ${otherWritten}`,
  'panel.held': () => 'Not everything is known yet.',
  'panel.last-figures': () => 'The figures below are the last that were whole.',
  'panel.known-so-far': () => 'What is known so far stands below.',
  'panel.no-ingredients': ({ example }: Args<'example'>) =>
    `No ingredients yet. One line makes a start: ${example}`,

  'panel.try': () => 'Try for today',
  'panel.reset': () => 'As in the file',
  'panel.keep': () => 'Keep in the file',
  'panel.keep-hint': () => 'Writes what is tried here into the file; undo takes it back',
  'panel.pin': () => 'Pin',
  'panel.pinned': () => 'Pinned',
  'panel.pin-hint': () => 'Stays with this formula; else the sheet follows the cursor',
  'panel.work': () => 'Work from this',
  'panel.work-hint': () => 'One moment at a time, in large type',
  'panel.not-done': () => 'What could not be tried',
  'panel.day-fold': () => 'The day: temperatures, scale, mixer, clock',
  'panel.day': () => 'The day',
  'panel.not-a-number': () => 'not a number',
  'panel.clock': () => 'Clock',
  'panel.mixing-starts': () => 'Mixing starts at',
  'panel.ready-at': () => 'Ready at',
  'panel.time-of-day': () => 'Time of day',
  'panel.size': () => 'Size of the batch',
  'panel.size-by': () => 'Size by',
  'panel.of-what': () => 'Of what',
  'panel.on-hand': () => 'On hand',
  'panel.bowls': () => 'Bowls',
  'panel.above-zero': () => 'Type a number above 0.',

  'panel.temperature-why': () => 'How this temperature comes about',
  'panel.ends-at': ({ written }: Args<'written'>) => `ends at ${written}`,

  'panel.whole-sheet': () => 'Whole sheet',
  'panel.nothing-to-do': () => 'Nothing to do yet.',
  'panel.moments': () => 'Moments of the work',
  'panel.back': () => 'Back',
  'panel.next': () => 'Next',
  'panel.anew': () => 'Begin anew',
  'panel.anew-sure': () => 'Clear ticks and timers?',
  'panel.batch': () => 'Batch',
  'panel.of': ({ written, otherWritten }: Args<'written' | 'otherWritten'>) =>
    `${written} of ${otherWritten}`,
  'panel.reads': ({ written }: Args<'written'>) => `scale reads ${written}`,
  'panel.together': ({ written }: Args<'written'>) => `together ${written}`,
  'panel.time-left': () => 'Time left',
  'panel.start-timer': () => 'Start the timer',
  'panel.stop-timer': () => 'Stop the timer',
  'panel.over-since': ({ written }: Args<'written'>) => `over since ${written}`,
  'panel.over': ({ written }: Args<'written'>) => `${written} is over.`,

  'panel.log': () => 'Log a reading',
  'panel.log-at': ({ written }: Args<'written'>) => `at ${written} from the start of mixing`,
  'panel.log-end': () => 'at the end of mixing',
  'panel.degrees': ({ unit }: Args<'unit'>) => `Temperature of the dough, ${unit}`,
  'panel.or-degrees': ({ unit }: Args<'unit'>) => `or ${unit}`,
  'panel.stages': () => 'Stage of the dough; logs the reading',
  'panel.no-stage': () => 'no stage',
  'panel.temperature-first': () => 'First the temperature, then the stage.',
  'panel.no-reading': ({ written, otherWritten }: Args<'written' | 'otherWritten'>) =>
    `Type what the thermometer says, a number from ${written} to ${otherWritten}. Nothing is logged yet.`,
};
