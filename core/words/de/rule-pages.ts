import type { RulePages } from '../rule-page-words.ts';
import { linePages } from './rule-pages-lines.ts';
import { mixingPages } from './rule-pages-mixing.ts';

/** Die Regeln nach ihrem Code. */
export const rulePages: RulePages = {
  ...linePages,
  ...mixingPages,
  'added-by-part': {
    title: 'Ein Teil mit Entnahme hat eine Zutat, die den Zeilen der Rezeptur fehlt',
    explanation:
      'Was ein Teil entnimmt, kommt aus den Zeilen der Rezeptur. Eine Zutat, die nur er hat, zum Beispiel seine Hefe, hat dort keine Zeile und kommt zu den Summen hinzu. Das ist üblich; der Hinweis sagt nur, dass sie mitzählt. Bei einem Mehl ist es eine Warnung, denn die Mehle der Rezeptur ergeben schon ohne es 100 %.',
  },
  'amount-does-not-fit': {
    title: 'Eine Menge in einer Zeile, die sie nicht haben kann',
    explanation:
      '`balance` gehört zu einem Mehl, `to N% hydration` zum Wasser (`to N% effective hydration` zu allem, was überwiegend Wasser ist) und `remaining` zu einem Teil, der in derselben Rezeptur gemacht wird. In anderen Zeilen Prozent oder ein Gewicht schreiben.',
  },
  'bake-loss-unknown': {
    title: 'Ein Gebäckgewicht und kein Backverlust',
    explanation:
      'Um nach dem Gebäckgewicht zu teilen, muss bekannt sein, was der Ofen nimmt. Einige Brote vor und nach dem Backen wiegen und `bake loss` schreiben: etwa 9 % bei großen Kastenbroten bis 15 % und mehr bei kleinen freigeschobenen (gängige Praxis). Die Abhilfe schreibt, was für das Stückgewicht und die Form (`form`, Kasten oder freigeschoben) üblich ist.',
  },
  'cannot-be-planned': {
    title: 'Eine Zeile eines Plans, die sich nicht ausrechnen lässt',
    explanation:
      'Ein Plan muss wissen, wann sein Brot fertig sein soll, und von jeder Rezeptur, was sie wiegt: Stück brauchen ein Stückgewicht, `baked` braucht den Backverlust. Die Zeile bleibt aus dem Plan, bis die Rezeptur es sagt.',
  },
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
  'draws-contradict': {
    title: 'Eine Entnahme passt nicht zu dem, was den Teil schon festlegt',
    explanation:
      'Wie groß der Teil ist, folgt aus einer Entnahme oder aus Gewichten in seinen Zeilen. Eine zweite, die eine andere Größe verlangt, lässt sich nicht erfüllen. Eine davon behalten.',
  },
  'far-too-much': {
    title: 'Mehr als das Zehnfache des Mehls',
    explanation:
      'Ein Prozentsatz bezieht sich auf das Mehl seines Abschnitts. Über 1000 % fehlt meist ein Komma, oder ein Gewicht in Gramm hat die falsche Einheit. Berichtigen; Befunde über das Übliche schweigen bis dahin.',
  },
  'fermentation-time': {
    title: 'Der Teig gärt weit länger oder kürzer als üblich',
    explanation:
      'Aus Hefe oder Sauerteig, Salz, Zucker und der eigenen Temperatur des Teigs durch alle Schritte wird die Zeit bis zum Ofen gezählt, umgerechnet auf 27 °C und einen Teig mit 2 % Frischhefe und 2 % Salz: ein solcher füllt seine Stockgare in 60 bis 75 Minuten (gängige Praxis) und braucht bis zum Ofen etwa das 1,7-Fache davon, ein reicher Teig bis zum Dreifachen. Erst jenseits des Zweieinhalbfachen erscheint etwas, nie bei Teigen überwiegend aus Roggen. Teig, der vor dem Teilen in die Kälte kommt, kann dort flach liegen und rasch abkühlen oder als ein Klumpen stehen: gezeigt wird nur, was auf beide Arten zu lang ist. Eine Zeile `rise` in einem Knetversuch der Rezeptur ersetzt die angenommene Gärgeschwindigkeit durch die gesehene.',
  },
  'flour-not-hundred': {
    title: 'Die Mehle eines Abschnitts ergeben nicht 100 %',
    explanation:
      'Bäckerprozente beziehen sich auf das gesamte Mehl; die Mehlzeilen eines Abschnitts ergeben also zusammen 100 %. Eine berichtigen, oder an eine `balance` schreiben: sie nimmt, was fehlt.',
  },
  'grams-exceed-total': {
    title: 'Zeilen in Gewicht wiegen mehr als das Ganze',
    explanation:
      'Die Zeilen in Gewicht sind mehr, als der Abschnitt insgesamt wiegen darf; für das Mehl bliebe nichts. Die Ausbeute erhöhen oder diese Zeilen in Prozent schreiben.',
  },
  'hydration-range': {
    title: 'Mehr oder weniger Wasser, als das Mehl bindet',
    explanation:
      'Das Wasser, das dem Mehl frei zur Verfügung steht (das von Milch, Eiern und Butter zählt, das in gequollenen Saaten gebundene nicht), wird an der Wasseraufnahme der Mehle gemessen. Über 25 Prozentpunkte darüber, 18 bei schwachem Mehl, läuft der Teig breit; ' +
      'über 18 darunter bleibt er trocken. Beide Grenzen sind gängige Praxis. Flüssiges Ei zählt ganz, bevor ein Teig trocken genannt wird. Nichts erscheint bei Teigen überwiegend aus Roggen, bei trockenem Gebäck ohne Hefe oder mit viel Fett und Zucker, und bei einer Rezeptur ohne Salz und Knetprogramm: das ist ein Sauerteig.',
  },
  'impossible-amount': {
    title: 'Eine Menge, die nicht sein kann',
    explanation:
      'Die Zahl liegt jenseits von allem, was sich abwiegen lässt, vermutlich ein Tippfehler. Sie bleibt aus den Summen.',
  },
  'keeps-back-too-much': {
    title: 'Es wird mehr zurückbehalten, als gemacht wird',
    explanation:
      'Der Teil wird nach Gewicht gemacht und behält mehr zurück, als er wiegt. Bis das berichtigt ist, gilt nichts als zurückbehalten.',
  },
  loop: {
    title: 'Etwas ist Zutat seiner selbst',
    explanation:
      'Ein Teil wird aus sich selbst gemacht, auf dem Weg über andere Teile oder Rezepturen; so lässt er sich nie abwiegen. Anstellgut der eigenen Art steht als `ripe culture 20%` im Vorteig, nicht als Zeile mit dessen eigenem Namen.',
  },
  'moist-flour': {
    title: 'Ein Mehl, feuchter als Mehl sein darf',
    explanation:
      'Der Codex Alimentarius erlaubt bei Weizenmehl 15,5 % Feuchte (CXS 152-1985), das italienische Recht 14,5 %: feuchteres Mehl hält sich nicht. Meist ist die Zahl ein Versehen, und mit ihr wird jede Zahl falsch, die auf 14 % Feuchte umgerechnet wird. Üblich sind 13 bis 15 %.',
  },
  'no-density': {
    title: 'Ein Volumen von etwas, dessen Dichte nicht bekannt ist',
    explanation:
      'Ein Volumen wird mit der Dichte zum Gewicht, und für diese Zutat ist keine bekannt. Abwiegen und das Gewicht schreiben, oder die Zutat mit ihrer `density` in g/ml definieren.',
  },
  'no-flour': {
    title: 'Prozent vom Mehl und kein Mehl',
    explanation:
      'Ein Prozentsatz bezieht sich auf die Mehlzeilen des eigenen Abschnitts. Hat ein Abschnitt keine, steht eine Zeile mit 100 % an ihrer Stelle (ein Quellstück: `linseed 100%`). Das Mehl ergänzen oder Gewichte schreiben.',
  },
  'no-piece-weight': {
    title: 'Stück von etwas, dessen Gewicht nicht bekannt ist',
    explanation:
      'Eine Stückzahl wird mit dem Gewicht eines Stücks zum Gewicht, und für diese Zutat ist keines bekannt. Das Gewicht schreiben, oder die Zutat mit ihrem `piece weight` definieren.',
  },
  'no-pieces': {
    title: 'So viel je Stück und keine Stückzahl',
    explanation:
      'Eine Menge je Stück (`a piece`) braucht eine Ausbeute in Stück: `yield 24 pieces of 880 g`.',
  },
  'no-salt': {
    title: 'Ein Teig ohne Salz',
    explanation:
      'Manche Brote werden mit Absicht ohne Salz gemacht. Wurde es vergessen: üblich sind 1,5 bis 2,5 % vom Mehl. Gezeigt wird es, sobald die Rezeptur ein Knetprogramm oder einen Ablauf hat.',
  },
  'no-scale': {
    title: 'Nichts legt fest, wie viel gemacht wird',
    explanation:
      'Prozente neben Gewichten brauchen eines, das festlegt, wie viel Mehl es ist: eine Ausbeute oder ein Mehl in Gewicht. Ein Teil braucht eine Zeile, die ihn nimmt, ein `draws` oder eigene Gewichte. Eine Variante ohne das eine Mehl in Gewicht, das ihre Grundrezeptur bemisst, wird für 1 kg Mehl gerechnet; davor wird gewarnt.',
  },
  'not-ready-in-time': {
    title: 'Ein Plan, dessen Brot nicht rechtzeitig fertig wird',
    explanation:
      'Kneter und Ofen machen eine Charge nach der anderen, und kein Teig wird vor dem `begin` des Plans geknetet. Was dadurch zu spät wird, wird gezeigt, und um wie viel. Früher beginnen, weniger verlangen oder der Zeile ein späteres `ready` geben.',
  },
  'nothing-left': {
    title: 'Die anderen Mehle lassen für „balance“ nichts übrig',
    explanation:
      '`balance` nimmt, was die anderen Mehle an 100 % übrig lassen. Sie ergeben schon 100 % oder mehr. Eines davon senken oder diese Zeile entfernen.',
  },
  'experiment-lacks': {
    title: 'Einer Versuchsreihe fehlt ein Teig oder eine Minute, oder eines steht zweimal da',
    explanation:
      'Eine Versuchsreihe nennt ihre Teige, jeden einmal je Kneter und Art des Knetens, und die Minuten ab Beginn des Knetens, zu denen jeder gemessen wird: `dough Plain White, by hand, knead 30 min` und `read at 8 min, 16 min, 30 min`.',
  },
  'cannot-be-tested': {
    title: 'Eine Versuchsreihe, die so nicht laufen kann',
    explanation:
      'Ein Teig der Versuchsreihe lässt sich nicht vorhersagen, ist vor seiner letzten Messung fertig, passt nicht in den Kessel oder braucht mehr von einer Zutat, als da ist. Was zu schreiben ist, steht dabei: `dough Plain White, in spiral, speed 1 for 60 min` sagt, wie lange er geknetet wird, `batch 900 g`, wie viel von jedem.',
  },
  'read-past-gone': {
    title: 'Eine Versuchsreihe misst einen Teig, der bis dahin überknetet ist',
    explanation:
      'Der Teig ist voraussichtlich überknetet, wenn er gemessen wird. In einer Versuchsreihe kann das gerade der Sinn sein: es zeigt, wie ein solcher Teig ist. Es ist eine Information und keine Warnung.',
  },
  'not-in-base': {
    title: 'Eine Abwandlung lässt weg, was ihre Vorlage nicht hat',
    explanation:
      'Nach `without` steht, was eine Abwandlung von ihrer Vorlage nicht übernimmt: eine Zutatenzeile oder ein Teil, mit dem Namen von dort. Den Namen schreiben wie in der Vorlage oder die Zeile herausnehmen.',
  },
  'not-in-experiment': {
    title: 'Ein Knetversuch nennt eine Versuchsreihe, die seinen Teig nicht hat',
    explanation:
      'Ein Knetversuch, der eine Versuchsreihe nennt, steht neben dem, was dort vom Teig seiner Rezeptur erwartet wird. Nennt die Versuchsreihe keinen solchen Teig, oder hat sie ihn zweimal und in anderen Knetern, stehen die Messungen in keiner ihrer Tabellen: die Rezeptur in einer Zeile `dough` nennen, den benutzten Kneter schreiben, oder `experiment` aus dem Knetversuch nehmen.',
  },
  'nothing-to-draw': {
    title: 'Ein Teil entnimmt, was nicht da ist',
    explanation:
      '`draws 22% of flour` nimmt einen Anteil der Zeilen der Rezeptur in den Teil. Beide müssen ihn haben: die Rezeptur eine Zeile, der entnommen wird, und der Teil eine Zeile, in der er abgewogen wird.',
  },
  'part-amounts-differ': {
    title: 'Von einem Teil wird mehr oder weniger genommen, als gemacht wird',
    explanation:
      'Der Teil wird nach Gewicht gemacht, und die Zeilen, die ihn nehmen, verlangen ein anderes. Den Teil in Prozent schreiben, damit so viel gemacht wird, wie gebraucht wird, `remaining` nehmen oder eines der Gewichte berichtigen.',
  },
  'parts-above-whole': {
    title: 'Die Bestandteile eines Lebensmittels sind mehr als das Ganze',
    explanation:
      'Wasser, Eiweiß, Fett, Kohlenhydrate und Asche ergeben ein Lebensmittel ganz; gesättigte Fettsäuren sind Teil des Fetts, Zucker, Stärke und Ballaststoffe Teil der Kohlenhydrate, die hier mit Ballaststoffen gemeint sind. Zwei Prozent bleiben für das Runden. Was darüber liegt, ist ein Versehen und brächte falsche Zahlen in die Kennzeichnung.',
  },
  'salt-range': {
    title: 'Salz außerhalb des Üblichen',
    explanation:
      'Brot hat 1,5 bis 2,5 % Salz vom Mehl, süßer Teig auch nur 1 % (gängige Praxis). Gezeigt wird über 3 % und unter 1 %, bei süßem Teig unter 0,4 %: meist ist das Komma verrutscht.',
  },
  'same-ingredient-twice': {
    title: 'Eine Zutat steht zweimal in einem Abschnitt',
    explanation:
      'Beide Zeilen zählen: sie werden zusammengezählt. Zusammengeführte Dateien machen solche Zeilen, ein rascher Nachtrag auch. Eine Zeile daraus machen oder den Befund annehmen.',
  },
  'same-name-twice': {
    title: 'Ein Name ist zweimal vergeben',
    explanation:
      'Zwei Rezepturen, Mehle, Zutaten, Kneter oder Pläne eines Ordners heißen gleich, oder zwei Teile einer Rezeptur. Welches gemeint ist, lässt sich nicht sagen; von zwei Teilen gilt der erste. Jedes braucht einen eigenen Namen.',
  },
  'several-definitions': {
    title: 'Ein Name ist dort, wo er gesucht wird, mehrfach definiert',
    explanation:
      'Ein Name wird im Ordner der Datei gesucht, dann in jedem Ordner darüber, dann überall sonst. An der nächstgelegenen Stelle, die ihn hat, ist er mehrfach definiert, und welche Definition gemeint ist, bleibt offen. Eine entfernen oder ihr einen eigenen Namen geben.',
  },
  'two-scales': {
    title: 'Eine Ausbeute und daneben Mehl in Gewicht',
    explanation:
      'Eine Ausbeute legt fest, wie viel Teig gemacht wird, ein Mehl in Gewicht ebenso. Beides zugleich passt nur durch Zufall zusammen. Die Mehle in Prozent schreiben oder die Ausbeute entfernen.',
  },
  'unknown-formula': {
    title: 'Ein Plan, eine Abwandlung oder eine Versuchsreihe verlangt eine Rezeptur, die nicht da ist',
    explanation:
      'Was gemacht werden soll, lässt sich nicht zählen, und eine Abwandlung davon nicht berechnen. Den Namen schreiben wie in der Kopfzeile der Rezeptur, oder die Rezeptur schreiben.',
  },
  'unknown-ingredient': {
    title: 'Eine Zutat, die nicht definiert ist',
    explanation:
      'Die Zutat wird abgewogen, zählt aber weder als Mehl noch als Wasser: was sie in den Teig bringt, ist nicht bekannt. Den Namen schreiben wie in ihrem Abschnitt, einen des Katalogs wählen oder sie definieren.',
  },
  'unknown-part': {
    title: 'Die Rezeptur hat diesen Teil nicht',
    explanation:
      'Ein Knetprogramm, ein Ablauf oder ein Knetversuch nennt einen Vorteig, ein Quellstück oder einen Teil, den die Rezeptur nicht hat. Den Namen schreiben wie in der Kopfzeile seines Abschnitts oder den Abschnitt ergänzen.',
  },
  'unused-part': {
    title: 'Ein Teil, den niemand nimmt',
    explanation:
      'Der Teil entnimmt nichts und keine Zeile nennt ihn; nichts davon kommt in den Teig. `draws 20% of flour` schreiben, um ihn der Rezeptur zu entnehmen, oder eine Zeile mit seinem Namen, um ihn zuzugeben.',
  },
  'weighs-nothing': {
    title: 'Eine Zutat, von der nichts abgewogen wird',
    explanation:
      'In der Zeile steht 0: sie ändert nichts, und auf dem Backzettel ist sie eine Zeile zum Übersehen. Schreiben, wie viel es ist, die Zeile entfernen, oder `# accept weighs-nothing: …`, wo sie für einen künftigen Versuch steht.',
  },
  'wet-already': {
    title: 'Die anderen Zeilen bringen mehr Wasser mit, als die Hydration verlangt',
    explanation:
      '`to N% hydration` gibt das fehlende Wasser zu. Vorteige, Quellstücke oder andere Zeilen bringen schon mehr mit; zuzugeben wäre weniger als nichts. Eine höhere Hydration verlangen oder weniger vom Feuchten nehmen.',
  },
  'worked-out-twice': {
    title: 'Zwei Zeilen eines Abschnitts sind auf dieselbe Weise auszurechnen',
    explanation:
      '`balance`, `to N% hydration` und `remaining` nehmen, was die anderen Zeilen übrig lassen. Zwei derselben Art in einem Abschnitt lassen offen, wie viel jede bekommt: die erste gilt, die zweite hat keine Menge. An eine davon eine Menge schreiben.',
  },
  'yeast-range': {
    title: 'Mehr Hefe als üblich',
    explanation:
      'Als Frischhefe gezählt (1 : 0,4 : 0,33 für Frischhefe, aktive Trockenhefe und Instanthefe) hat ein magerer Teig bis 5 % vom Mehl, ein süßer bis 8 %; ein Vorteig, der acht Stunden oder länger bei Raumtemperatur steht, bis 1 %. Alles ist gängige Praxis. Meist ist das Komma verrutscht.',
  },
};
