import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** An experiment: why a dough of it is not known, what is found of it, and its sheet. */
export const experiments = {
  'experiment.no-formula': () => 'no formula has this name, or several have',
  'experiment.no-mixer': () =>
    'in which mixer it is mixed is not known; write “in” and its name, or “by hand”',
  'experiment.no-run': () =>
    'its formula has no mixing programme; write how it is worked, “speed 1 for 20 min”',
  'experiment.no-run-by-hand': () => 'how long it is kneaded is not known; write “knead 12 min”',
  'experiment.no-run-in-mixer': () =>
    'its formula is kneaded by hand; write how the mixer works it, “speed 1 for 20 min”',
  'experiment.past-the-run': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `it is worked for ${say.minutes(minutes)} only`,

  'experiment-lacks.doughs': ({ example }: Args<'example'>) => `No dough is named. For example: ${example}`,
  'experiment-lacks.minutes': ({ example }: Args<'example'>) =>
    `Nothing states when the doughs are read. For example: ${example}`,
  'experiment-lacks.before-start': () =>
    'A reading stands after the start of mixing: write the minutes from there, 1 min at the least.',
  'experiment-lacks.same-minute': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `${say.duration(seconds)} is named twice; it is read once.`,
  'experiment-lacks.same-dough': ({ name }: Args<'name'>) =>
    `“${name}” is named above with the same mixer and the same work: it would be the same dough twice.`,
  'experiment-lacks.first': () => 'the first',
  'cannot-be-tested.because': ({ name, reason }: Args<'name' | 'reason'>, say: Speaker) =>
    `“${name}” cannot be predicted: ${say.say(reason)}.`,
  'cannot-be-tested.at': ({ name, minutes, reason }: Args<'name' | 'minutes' | 'reason'>, say: Speaker) =>
    `At ${say.minutes(minutes)} “${name}” cannot be predicted: ${say.say(reason)}.`,
  'cannot-be-tested.past-the-run': (
    { name, minutes, programmeMinutes, count }: Args<'name' | 'minutes' | 'programmeMinutes' | 'count'>,
    say: Speaker,
  ) =>
    `${say.count(count, { one: '# reading is planned', other: '# readings are planned' })} after “${name}” is done: it is worked for ${say.minutes(programmeMinutes)}, and the last reading is at ${say.minutes(minutes)}.`,
  'cannot-be-tested.fix-run': ({ meant }: Args<'meant'>) => `Write how it is worked: ${meant}`,
  'cannot-be-tested.bowl': ({ name, grams, mostGrams, otherName }: Bowl, say: Speaker) =>
    `“${name}” is ${say.mass(grams)}, and the bowl of ${otherName} takes ${say.mass(mostGrams)}. Write a smaller batch.`,
  'cannot-be-tested.bowl-little': (
    { name, grams, leastGrams, otherName }: Args<'name' | 'grams' | 'leastGrams' | 'otherName'>,
    say: Speaker,
  ) =>
    `“${name}” is ${say.mass(grams)}, and the bowl of ${otherName} wants ${say.mass(leastGrams)} at the least. Write a larger batch.`,
  'cannot-be-tested.hands': (
    { name, grams, mostGrams }: Args<'name' | 'grams' | 'mostGrams'>,
    say: Speaker,
  ) =>
    `“${name}” is ${say.mass(grams)}, and a pair of hands kneads some ${say.mass(mostGrams)} at a time. Write a smaller batch.`,
  'cannot-be-tested.flour': (
    { name, grams, otherGrams }: Args<'name' | 'grams' | 'otherGrams'>,
    say: Speaker,
  ) => `The doughs take ${say.mass(grams)} of “${name}”, and ${say.mass(otherGrams)} is on hand.`,
  'cannot-be-tested.not-taken': ({ name }: Args<'name'>) => `None of the doughs takes “${name}”.`,
  'cannot-be-tested.not-taken-near': ({ name, meant }: Args<'name' | 'meant'>) =>
    `None of the doughs takes “${name}”. Is it “${meant}”?`,
  'read-past-gone.gone': ({ name, minutes, lowMinutes, highMinutes }: Gone, say: Speaker) =>
    `At ${say.minutes(minutes)} “${name}” is expected to be broken down, from about ${say.minutesBand(lowMinutes, highMinutes)}. That reading shows what such a dough is like.`,

  'experiment.not-predicted': ({ name, sentence }: Args<'name' | 'sentence'>) =>
    `“${name}” cannot be predicted: ${sentence}.`,
  'experiment.not-predicted-at': (
    { name, minutes, sentence }: Args<'name' | 'minutes' | 'sentence'>,
    say: Speaker,
  ) => `At ${say.minutes(minutes)} “${name}” cannot be predicted: ${sentence}.`,
  'experiment.unread': ({ written }: Args<'written'>) =>
    `One line could not be read, so its dough is left out: ${written}`,
  'experiment.note': () => 'note',
  'experiment.done-before': ({ minutes, names }: Args<'minutes' | 'names'>, say: Speaker) =>
    `Nothing is read after ${say.minutes(minutes)}, when the work is done: ${say.list(names)}.`,
  'experiment.date': () => 'day',
  'experiment.room': () => 'room',
  'experiment.flour': () => 'flour',
  'experiment.water': () => 'water',
  'experiment.tap-assumed': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `${say.celsius(celsius)}, assumed`,
  'experiment.to-fetch': () => 'to fetch',
  'experiment.drawing': () => 'All doughs, minute by minute',
  'experiment.drawing-told': ({ names }: Args<'names'>, say: Speaker) =>
    `How warm ${say.list(names)} get while they are mixed, with what was measured, and the stages that each goes through.`,
  'experiment.expected': () => 'what to expect',
  'experiment.order': () => 'the order, with a clock from the first dough',
  'experiment.weigh': () => 'to weigh',
  'experiment.readings': () => 'readings',
  'experiment.loaf': () => 'the loaf',
  'experiment.results': () => 'measured and expected',
  'experiment.lessons': () => 'what the readings say',
  'experiment.next': () => 'what one more reading would settle',
  'experiment-column.dough': () => 'dough',
  'experiment-column.mixed': () => 'mixed',
  'experiment-column.minute': ({ minutes }: Args<'minutes'>, say: Speaker) => say.minutes(minutes),
  'experiment-column.minutes': () => 'min',
  'experiment-column.ingredient': () => 'ingredient',
  'experiment-column.weight': () => 'weight',
  'experiment-column.begins': () => 'begins',
  'experiment-column.stops': () => 'stop and read at',
  'experiment-column.ends': () => 'ends',
  'experiment-column.expected': () => 'expected',
  'experiment-column.celsius': () => '°C',
  'experiment-column.feel': () => 'feel, stage',
  'experiment-column.measured': () => 'measured',
  'experiment-column.apart': () => 'apart',
  'experiment-column.trial': () => 'trial',
  'experiment-column.grams': () => 'g',
  'experiment-column.stage': () => 'stage',
  'experiment-column.expected-celsius': () => 'expected °C',
  'experiment-column.band-celsius': () => '± °C',
  'experiment-column.apart-celsius': () => 'apart °C',
  'experiment-column.height': () => 'height of the loaf',
  'experiment-column.score': () => 'score',
  'experiment.water-is': () => 'the water is',
  'experiment.total': () => 'together',
  'experiment.dough-twice-named': ({ name, place }: Args<'name' | 'place'>, say: Speaker) =>
    `${name}, ${say.say(place)}`,
  'experiment.cell': (
    { celsius, bandCelsius, stage }: Args<'celsius' | 'bandCelsius' | 'stage'>,
    say: Speaker,
  ) => `${say.celsiusBand(celsius, bandCelsius)}, ${say.say(stage)}`,
  'experiment.cell-plain': ({ celsius, bandCelsius }: Args<'celsius' | 'bandCelsius'>, say: Speaker) =>
    say.celsiusBand(celsius, bandCelsius),
  'experiment.stage-span': ({ stage, otherStage }: Args<'stage' | 'otherStage'>, say: Speaker) =>
    `${say.say(stage)} to ${say.say(otherStage)}`,
  'experiment.measured-seen': ({ celsius, facts }: Args<'celsius' | 'facts'>, say: Speaker) =>
    [say.celsius(celsius), ...facts.map(say.say)].reduce((all, one) => `${all}, ${one}`),
  'experiment.seen': ({ facts }: Args<'facts'>, say: Speaker) => facts.map(say.say).join(', ') || '–',
  'experiment.within': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}, within the band`,
  'experiment.outside': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}, outside the band`,
  'experiment.beside': (
    { celsius, apartCelsius, stage }: Args<'celsius' | 'apartCelsius' | 'stage'>,
    say: Speaker,
  ) => `${say.celsius(celsius)} ± ${say.celsiusApart(apartCelsius)}, ${say.say(stage)}`,
  'experiment.beside-plain': ({ celsius, apartCelsius }: Args<'celsius' | 'apartCelsius'>, say: Speaker) =>
    `${say.celsius(celsius)} ± ${say.celsiusApart(apartCelsius)}`,
  'experiment.stage-as-expected': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}; the stage agrees`,
  'experiment.stage-sooner': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}; but further on than expected`,
  'experiment.stage-later': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}; but not as far as expected`,
  'experiment.seen-as-expected': () => 'the stage agrees',
  'experiment.seen-sooner': () => 'further on than expected',
  'experiment.seen-later': () => 'not as far as expected',
  'experiment.order-note': () =>
    'One mixer takes one dough after another, white before wholemeal and stiff before wet, so that the bowl needs no washing between; hands come last. Five minutes lie between two doughs.',
  'experiment.stop-first': () => 'Stop the mixer before a probe or a hand goes in.',
  'experiment.mixer-misses': ({ name, apartCelsius, laterCelsius }: Misses, say: Speaker) =>
    `${name}: the readings miss what is expected by ${say.celsiusApart(apartCelsius)}; once it is calibrated by ${say.celsiusApart(laterCelsius)}.`,
  'experiment.mixer-not-yet': ({ name, reason }: Args<'name' | 'reason'>, say: Speaker) =>
    `${name}: ${say.say(reason)}.`,
  'experiment.mixer-doubt': ({ name, parts }: Args<'name' | 'parts'>, say: Speaker) =>
    `${name}: ${parts.map(say.say).join(' ')}`,
  'experiment.learned': (
    { name, title, figures, difference }: Args<'name' | 'title' | 'figures' | 'difference'>,
    say: Speaker,
  ) => `${name}, ${say.say(title)}: ${say.say(figures)} ± ${say.say(difference)}, one standard error.`,
  'experiment.kind-alone': ({ name, example }: Args<'name' | 'example'>) =>
    `${name}: a kind of mixer is no mixer of your own, so readings teach it nothing for the next dough. A section that begins “${example}”, and that name in the dough lines and the trials, lets them.`,
  'experiment.develops': ({ name, figures }: Args<'name' | 'figures'>, say: Speaker) =>
    `${name} develops dough ${say.say(figures)} as fast as believed: several flours show it, so it is the mixer’s.`,
  'experiment.develops-so': ({ name, figures }: Args<'name' | 'figures'>, say: Speaker) =>
    `${name} and the flour: by the stages seen the dough develops ${say.say(figures)} as fast as believed, which agrees, flours being as different as they are.`,
  'experiment.develops-either': ({ name, figures }: Args<'name' | 'figures'>, say: Speaker) =>
    `On ${name} the dough developed ${say.say(figures)} as fast as believed: one flour alone shows it, so it may be the flour’s or the mixer’s.`,
  'experiment.develops-unclear': ({ name, reason }: Args<'name' | 'reason'>, say: Speaker) =>
    `How fast ${name} develops dough: ${say.say(reason)}.`,
  'experiment.flour-develops': ({ name, lowFactor, highFactor, count }: FlourDevelops, say: Speaker) =>
    `“${name}” develops ${say.number(lowFactor, 2)} to ${say.number(highFactor, 2)} times as fast as believed: ${say.count(count, { one: '# mixer shows it', other: '# mixers show it' })}, so it is the flour’s.`,
  'experiment.next-parameter': ({ name, title, reason }: Args<'name' | 'title' | 'reason'>, say: Speaker) =>
    `${name}, ${say.say(title)}: ${say.say(reason)}.`,
  'experiment.next-flour': ({ name }: Args<'name'>) =>
    `Whether it is the flour or ${name}: the stage of a dough of another flour on ${name}, or of the same dough by hand or on another mixer.`,
  'experiment.next-stage': ({ name }: Args<'name'>) =>
    `How fast ${name} develops dough: the stage, or the feel, beside a temperature.`,
  'experiment.next-reading': ({ name, minutes }: Args<'name' | 'minutes'>, say: Speaker) =>
    `${name}: no reading yet. The one at ${say.minutes(minutes)} tells most, for there the band is widest.`,
  'experiment.next-first': ({ name, minutes }: Args<'name' | 'minutes'>, say: Speaker) =>
    `${name}: no reading yet. Take two or three, one of them at ${say.minutes(minutes)}, where the band is widest.`,
  'experiment.nothing-yet': () =>
    'No trial names this experiment yet: write “experiment” and its name into one.',

  'overlay.title': ({ names }: Args<'names'>, say: Speaker) => `${say.list(names)} laid over each other`,
  'overlay.at': ({ name, written }: Args<'name' | 'written'>) => `${name}, ${written}`,
  'overlay.drawing': () => 'Mixing, laid over each other',
  'overlay.drawing-told': ({ names }: Args<'names'>, say: Speaker) =>
    `How warm ${say.list(names)} get while they are mixed, and the stages that each goes through.`,
  'overlay.figures': () => 'side by side',
  'overlay.figure': () => 'figure',
  'overlay.not-known': ({ name, sentence }: Args<'name' | 'sentence'>) =>
    `“${name}” has no curve: ${sentence}.`,
  'overlay.too-few': () => 'Name two formulas at least, or one and a revision of git that it is laid over.',
  'overlay.too-many': ({ count, number }: Args<'count' | 'number'>, say: Speaker) =>
    `${say.count(count, { one: '# formula', other: '# formulas' })} cannot be told apart in one chart: name ${say.number(number, 0)} at most.`,
  'overlay.not-there': ({ name, revision }: Args<'name' | 'revision'>) =>
    `“${name}” is not in the file as ${revision} has it.`,

  'experiment.lens': ({ count }: Args<'count'>, say: Speaker) =>
    `${say.count(count, { one: '# dough', other: '# doughs' })} · sheet and bench`,
  'bench.run': () => 'Run it at the bench',
  'bench.run-hint': () => 'One timer a dough, in large type; two taps log a reading',
  'bench.as-sheet': () => 'Back to its sheet',
  'bench.blanks': () => 'Room to write',
  'bench.hidden': () => 'Predictions hidden',
  'bench.doughs': () => 'Doughs',
  'bench.begin': () => 'Mixing begins',
  'bench.stopped': () => 'Stopped',
  'bench.go-on': () => 'Mixing goes on',
  'bench.mixed-so-far': () => 'Mixed so far',
  'bench.stop-mixer': () => 'Stop the mixer',
  'bench.stop-hands': () => 'Stop kneading',
  'bench.stop-in': ({ written, otherWritten }: Args<'written' | 'otherWritten'>) =>
    `${written} in ${otherWritten}`,
  'bench.stop-now': ({ written }: Args<'written'>) => `${written} now`,
  'bench.read-at': ({ written }: Args<'written'>) => `reading at ${written}`,
  'bench.none-left': () => 'No reading is left of this dough.',
  'bench.minute': () => 'Minute of the reading',
  'bench.by-timer': ({ written }: Args<'written'>) => `${written}, by the timer`,
  'bench.minute-first': () => 'First let mixing begin, or choose the minute of the reading.',
  'bench.planned': () => 'Readings of this dough',
  'bench.expected': ({ written }: Args<'written'>) => `expected ${written}`,
  'bench.clear-sure': () => 'Clear all timers of this experiment?',
};

type Bowl = Args<'name' | 'grams' | 'mostGrams' | 'otherName'>;
type Gone = Args<'name' | 'minutes' | 'lowMinutes' | 'highMinutes'>;
type Misses = Args<'name' | 'apartCelsius' | 'laterCelsius'>;
type FlourDevelops = Args<'name' | 'lowFactor' | 'highFactor' | 'count'>;
