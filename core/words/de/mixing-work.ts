import type { Args } from '../args.ts';
import type { mixingWork as english } from '../en/mixing-work.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Wie weit ein Knetprogramm einen Teig bringt, und was die Maschine verträgt. */
export const mixingWork: Translation<typeof english> = {
  'stage.pick-up': () => 'vermengt',
  'stage.clean-up': () => 'vom Kessel gelöst',
  'stage.developing': () => 'in Entwicklung',
  'stage.developed': () => 'ausgeknetet',
  'stage.let-down': () => 'nachlassend',
  'stage.breakdown': () => 'überknetet',
  'stage.other': ({ name }) => `„${name}“`,

  'mix.flour': ({ name }) => `das Mehl „${name}“`,
  'mix.flour-stability': ({ name, minutes }, say) =>
    `das Mehl „${name}“, Stabilität ${say.number(minutes, 1)} min`,
  'mix.water': () => 'das Wasser',
  'mix.mixer': () => 'der Kneter',
  'mix.mixer-named': ({ name }) => `der Kneter „${name}“`,
  'mix.bowl': () => 'sein Kessel',
  'mix.guess': () => 'Wie lange ein so weicher Teig hält, ist grob geschätzt.',
  'mix.fix-shorten': ({ choices }) => {
    const [only] = choices;
    return choices.length === 1
      ? `${only} schreiben: ausgeknetet, und nicht weiter`
      : `Kürzen auf ${choices.join(', dann ')}: ausgeknetet, und nicht weiter`;
  },

  'let-down.is': (past, say) =>
    `Lässt nach ab etwa ${ends(past, say)}: der Teig hat nachgelassen, ist weich und klebrig. ${developed(past, say)}`,
  'let-down.may-be': (past, say) =>
    `Lässt nach ab etwa ${ends(past, say)}: der Teig hat vielleicht nachgelassen, ist weich und klebrig. ${developed(past, say)}`,

  'broken-down.is': (past, say) =>
    `Überknetet ab etwa ${ends(past, say)}: der Kleber des Teigs ist zerrissen, und er ist nicht zu retten. ${developed(past, say)}`,
  'broken-down.may-be': (past, say) =>
    `Überknetet ab etwa ${ends(past, say)}: der Kleber des Teigs ist vielleicht zerrissen. ${developed(past, say)}`,

  'degree.short': () => 'einer kurzen Knetung',
  'degree.improved': () => 'einer verbesserten Knetung',
  'degree.intensive': () => 'einer intensiven Knetung',
  'under-developed.is': (work, say) =>
    `Der Teig ist am Ende des Knetprogramms nicht ausgeknetet: ${done(work, say)}.`,
  'under-developed.may-be': (work, say) =>
    `Der Teig ist am Ende des Knetprogramms vielleicht nicht ausgeknetet: ${done(work, say)}.`,
  'under-developed.is-later': (work, say) =>
    `Der Teig ist am Ende des Knetprogramms nicht ausgeknetet: ${done(work, say)}, und ${later(work, say)}.`,
  'under-developed.may-be-later': (work, say) =>
    `Der Teig ist am Ende des Knetprogramms vielleicht nicht ausgeknetet: ${done(work, say)}, und ${later(work, say)}.`,
  'under-developed.needs': ({ lowMinutes, highMinutes }, say) =>
    `Nötig sind ${say.minutesBand(lowMinutes, highMinutes)} mehr im letzten Gang, oder Dehnen und Falten in der Stockgare.`,
  'under-developed.fix-fold': () => 'Stattdessen in der Stockgare zweimal dehnen und falten',
  'under-developed.fix-mix-on': ({ meant }) => `${meant} schreiben: am Ende ausgeknetet`,

  'mixed-past-need.longer': (past, say) =>
    `Der Teig ist ausgeknetet nach etwa ${ends(past, say)}. Die letzten ${say.minutes(past.minutes)} oder mehr bringen ihm nichts.`,
  'mixed-past-need.warms': (past, say) =>
    `Der Teig ist ausgeknetet nach etwa ${ends(past, say)}. Die letzten ${say.minutes(past.minutes)} oder mehr bringen ihm nichts und erwärmen ihn um ${say.celsiusApart(past.apartCelsius)}.`,

  'fast-for-stiff.too-stiff': (dough, say) => `Teig mit ${lean(dough, say)} ist zu fest für ${stay(dough)}`,
  'fast-for-stiff.edge': (dough, say) => `Teig mit ${lean(dough, say)} ist fast zu fest für ${stay(dough)}`,
  'fast-for-stiff.too-stiff-rich': (dough, say) =>
    `Teig mit ${lean(dough, say)}, durch Fett und Zucker so weich wie mit ${say.number(dough.softPerHundred, 0)} g, ist zu fest für ${stay(dough)}`,
  'fast-for-stiff.edge-rich': (dough, say) =>
    `Teig mit ${lean(dough, say)}, durch Fett und Zucker so weich wie mit ${say.number(dough.softPerHundred, 0)} g, ist fast zu fest für ${stay(dough)}`,
  'fast-for-stiff.too-stiff-egg': (dough, say) =>
    `Teig mit ${lean(dough, say)}, durch Ei, Fett und Zucker so weich wie mit ${say.number(dough.softPerHundred, 0)} g, ist zu fest für ${stay(dough)}`,
  'fast-for-stiff.edge-egg': (dough, say) =>
    `Teig mit ${lean(dough, say)}, durch Ei, Fett und Zucker so weich wie mit ${say.number(dough.softPerHundred, 0)} g, ist fast zu fest für ${stay(dough)}`,

  'idle-rest.before-both': ({ seconds }, say) =>
    `${say.duration(seconds)} Ruhe, bevor Mehl und Wasser beide im Kessel sind. Zuerst beide zugeben.`,
  'idle-rest.at-end': ({ seconds }, say) =>
    `${say.duration(seconds)} Ruhe am Ende des Knetprogramms: das ist schon Stockgare. Sie gehört in den Ablauf.`,
  'idle-rest.developed': ({ seconds }, say) =>
    `${say.duration(seconds)} Ruhe, nachdem der Teig ausgeknetet ist, und danach weiteres Kneten: sie bringt ihm nichts.`,
  'idle-rest.salted': ({ seconds }, say) =>
    `${say.duration(seconds)} Ruhe mit dem Salz im Kessel: nach einer Autolyse, einer Ruhe von Mehl und Wasser allein, wäre bis zu einem Fünftel weniger Kneten nötig. Das Salz danach zugeben.`,
  'idle-rest.fix-take-out': () => 'Die Ruhe entfernen',

  'bowl-overfull.more': ({ doughGrams, name, mostGrams }, say) =>
    `${say.mass(doughGrams)} Teig, und der Kessel von „${name}“ fasst ${say.mass(mostGrams)}.`,
  'bowl-overfull.stiff': (bowl, say) =>
    `${say.mass(bowl.doughGrams)} fester Teig, wie mit ${lean(bowl, say)}: ${machine(bowl, say)}`,
  'bowl-overfull.stiff-with': (bowl, say) =>
    `${say.mass(bowl.doughGrams)} fester Teig mit ${say.list(bowl.facts.map(say.say))}, wie mit ${lean(bowl, say)}: ${machine(bowl, say)}`,
  'bowl-overfull.dough-with': (bowl, say) =>
    `${say.mass(bowl.doughGrams)} Teig mit ${say.list(bowl.facts.map(say.say))}: ${machine(bowl, say)}`,
  'bowl-overfull.high-gluten': () => 'kleberstarkem Mehl',
  'bowl-overfull.cold': () => 'kaltem Wasser',
  'bowl-overfull.divide': ({ count, grams }, say) =>
    `Aufteilen auf ${say.count(count, { one: '# Kessel', other: '# Kessel' })} zu ${say.mass(grams)}.`,
  'bowl-overfull.no-batches': () => 'Auch in gleiche Teile geteilt passt der Teig nicht zu diesem Kessel.',

  'bowl-too-little.less': ({ doughGrams, name, leastGrams }, say) =>
    `${say.mass(doughGrams)} Teig, und „${name}“ braucht ${say.mass(leastGrams)}, um ihn zu erfassen. Mehr Teig machen oder einen kleineren Kneter nehmen.`,

  'fermentation-time.off': (time, say) =>
    `Vom Kneten bis zum Ofen gärt der Teig so viel wie ${worth(time, say)}; üblich sind etwa ${say.duration(time.usualSeconds)}.`,
  'fermentation-time.off-observed': (time, say) =>
    `Vom Kneten bis zum Ofen gärt der Teig so viel wie ${worth(time, say)}, nach dem Aufgehen in den eigenen Knetversuchen; üblich sind etwa ${say.duration(time.usualSeconds)}.`,
  'fermentation-time.shorten': () => 'Kürzen oder kühler stehen lassen.',
  'fermentation-time.lengthen': () => 'Länger oder wärmer stehen lassen.',
  'fermentation-time.yeast': ({ fraction }, say) =>
    `Für diese Zeiten sind etwa ${say.percent(fraction)} Frischhefe üblich.`,
};

/** Ab wann eine Stufe vorbei ist, wann das Programm endet, und ein weiterer Zeitpunkt. */
type Past = Args<'lowMinutes' | 'highMinutes' | 'programmeMinutes' | 'minutes'>;

function ends({ lowMinutes, highMinutes, programmeMinutes }: Past, say: Speaker): string {
  return `${say.minutesBand(lowMinutes, highMinutes)}; dieses Programm endet bei ${say.minutes(programmeMinutes)}`;
}

function developed({ minutes }: Past, say: Speaker): string {
  return `Ausgeknetet ist er nach etwa ${say.minutes(minutes)}.`;
}

function done({ fraction, degree }: Args<'fraction' | 'degree'>, say: Speaker): string {
  return `etwa ${say.percent(fraction, 0)} der Knetarbeit ${say.say(degree)}`;
}

function later({ laterFraction }: Args<'laterFraction'>, say: Speaker): string {
  return `Falten und Stockgare bringen noch etwa ${say.percent(laterFraction, 0)}`;
}

type Stiff = Args<'number' | 'slowestNumber'>;

function lean({ waterPerHundred }: Args<'waterPerHundred'>, say: Speaker): string {
  return `${say.number(waterPerHundred, 0)} g Wasser auf 100 g Mehl`;
}

function stay({ number, slowestNumber }: Stiff): string {
  return `Gang ${number}: das belastet die Maschine und zerreißt den Teig. In Gang ${slowestNumber} bleiben; es gilt die Betriebsanleitung der Maschine.`;
}

type Bowl = Args<'name' | 'mostGrams'>;

function machine({ name, mostGrams }: Bowl, say: Speaker): string {
  return `die Maschine von „${name}“ verträgt davon etwa ${say.mass(mostGrams)}.`;
}

type Time = Args<'seconds' | 'celsius' | 'fraction'>;

function worth({ seconds, celsius, fraction }: Time, say: Speaker): string {
  return `in ${say.duration(seconds)} bei ${say.celsius(celsius)} mit ${say.percent(fraction)} Frischhefe`;
}
