import type { RulePages } from '../rule-page.ts';
import { linePages } from './rule-pages-lines.ts';
import { mixingPages } from './rule-pages-mixing.ts';

/** Die Regeln nach ihrem Code. */
export const rulePages: RulePages = {
  ...linePages,
  ...mixingPages,
  'added-by-part': { title: 'Ein Teil mit Entnahme hat eine Zutat, die den Zeilen der Rezeptur fehlt' },
  'amount-does-not-fit': { title: 'Eine Menge in einer Zeile, die sie nicht haben kann' },
  'bake-loss-unknown': { title: 'Ein Gebäckgewicht und kein Backverlust' },
  'cannot-be-planned': { title: 'Eine Zeile eines Plans, die sich nicht ausrechnen lässt' },
  'drawn-and-added': {
    title: 'Ein Teil wird entnommen und auch in einer Zeile genannt',
    explanation:
      'Mit `draws` wird ein Teil aus den Summen entnommen und kommt von selbst in den Teig. Ohne wird er in einer Zeile genannt und zugegeben. Dieser Teil tut beides und wäre zweimal im Teig. Die Zeile entfernen, oder das `draws`.',
  },
  'drawn-too-much': {
    title: 'Was entnommen wird, bringt mehr mit, als die Rezeptur hat',
    explanation:
      'Ein Teil mit `draws` wird den Zeilen der Rezeptur entnommen. Dieser bringt mehr von einer Zutat mit, als deren Zeile hat; zum Abwiegen bliebe weniger als nichts. Weniger entnehmen, den Teil mit weniger davon machen oder die Zeile der Rezeptur erhöhen.',
  },
  'draws-contradict': { title: 'Eine Entnahme passt nicht zu dem, was den Teil schon festlegt' },
  'far-too-much': { title: 'Mehr als das Zehnfache des Mehls' },
  'fermentation-time': { title: 'Der Teig gärt weit länger oder kürzer als üblich' },
  'flour-not-hundred': {
    title: 'Die Mehle eines Abschnitts ergeben nicht 100 %',
    explanation:
      'Bäckerprozente beziehen sich auf das gesamte Mehl; die Mehlzeilen eines Abschnitts ergeben also zusammen 100 %. Eine berichtigen, oder an eine `balance` schreiben: sie nimmt, was fehlt.',
  },
  'grams-exceed-total': { title: 'Zeilen in Gewicht wiegen mehr als das Ganze' },
  'hydration-range': {
    title: 'Mehr oder weniger Wasser, als das Mehl bindet',
    explanation:
      'Das Wasser, das dem Mehl frei zur Verfügung steht (das von Milch, Eiern und Butter zählt, das in gequollenen Saaten gebundene nicht), wird an der Wasseraufnahme der Mehle gemessen. Über 25 Prozentpunkte darüber, 18 bei schwachem Mehl, läuft der Teig breit; ' +
      'über 18 darunter bleibt er trocken. Beide Grenzen sind gängige Praxis. Flüssiges Ei zählt ganz, bevor ein Teig trocken genannt wird. Nichts erscheint bei Teigen überwiegend aus Roggen, bei trockenem Gebäck ohne Hefe oder mit viel Fett und Zucker, und bei einer Rezeptur ohne Salz und Knetprogramm: das ist ein Sauerteig.',
  },
  'impossible-amount': { title: 'Eine Menge, die nicht sein kann' },
  'keeps-back-too-much': { title: 'Es wird mehr zurückbehalten, als gemacht wird' },
  loop: { title: 'Etwas ist Zutat seiner selbst' },
  'moist-flour': { title: 'Ein Mehl, feuchter als Mehl sein darf' },
  'no-density': { title: 'Ein Volumen von etwas, dessen Dichte nicht bekannt ist' },
  'no-flour': { title: 'Prozent vom Mehl und kein Mehl' },
  'no-piece-weight': { title: 'Stück von etwas, dessen Gewicht nicht bekannt ist' },
  'no-pieces': { title: 'So viel je Stück und keine Stückzahl' },
  'no-salt': {
    title: 'Ein Teig ohne Salz',
    explanation:
      'Manche Brote werden mit Absicht ohne Salz gemacht. Wurde es vergessen: üblich sind 1,5 bis 2,5 % vom Mehl. Gezeigt wird es, sobald die Rezeptur ein Knetprogramm oder einen Ablauf hat.',
  },
  'no-scale': { title: 'Nichts legt fest, wie viel gemacht wird' },
  'not-ready-in-time': { title: 'Ein Plan, dessen Brot nicht rechtzeitig fertig wird' },
  'nothing-left': { title: 'Die anderen Mehle lassen für „balance“ nichts übrig' },
  'nothing-to-draw': { title: 'Ein Teil entnimmt, was nicht da ist' },
  'part-amounts-differ': { title: 'Von einem Teil wird mehr oder weniger genommen, als gemacht wird' },
  'parts-above-whole': { title: 'Die Bestandteile eines Lebensmittels sind mehr als das Ganze' },
  'salt-range': {
    title: 'Salz außerhalb des Üblichen',
    explanation:
      'Brot hat 1,5 bis 2,5 % Salz vom Mehl, süßer Teig auch nur 1 % (gängige Praxis). Gezeigt wird über 3 % und unter 1 %, bei süßem Teig unter 0,4 %: meist ist das Komma verrutscht.',
  },
  'same-ingredient-twice': { title: 'Eine Zutat steht zweimal in einem Abschnitt' },
  'same-name-twice': { title: 'Ein Name ist zweimal vergeben' },
  'several-definitions': { title: 'Ein Name ist dort, wo er gesucht wird, mehrfach definiert' },
  'two-scales': { title: 'Eine Ausbeute und daneben Mehl in Gewicht' },
  'unknown-formula': { title: 'Ein Plan verlangt eine Rezeptur, die nicht da ist' },
  'unknown-ingredient': { title: 'Eine Zutat, die nicht definiert ist' },
  'unknown-part': { title: 'Die Rezeptur hat diesen Teil nicht' },
  'unused-part': { title: 'Ein Teil, den niemand nimmt' },
  'weighs-nothing': { title: 'Eine Zutat, von der nichts abgewogen wird' },
  'wet-already': { title: 'Die anderen Zeilen bringen mehr Wasser mit, als die Hydration verlangt' },
  'worked-out-twice': { title: 'Zwei Zeilen eines Abschnitts sind auf dieselbe Weise auszurechnen' },
  'yeast-range': {
    title: 'Mehr Hefe als üblich',
    explanation:
      'Als Frischhefe gezählt (1 : 0,4 : 0,33 für Frischhefe, aktive Trockenhefe und Instanthefe) hat ein magerer Teig bis 5 % vom Mehl, ein süßer bis 8 %; ein Vorteig, der acht Stunden oder länger bei Raumtemperatur steht, bis 1 %. Alles ist gängige Praxis. Meist ist das Komma verrutscht.',
  },
};
