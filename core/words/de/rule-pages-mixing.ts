import type { RulePages } from '../rule-page-words.ts';

/** Regeln rund um Kneten, Teigtemperatur, Kneter und Knetversuche. */
export const mixingPages: RulePages = {
  'bowl-overfull': {
    title: 'Mehr Teig, als der Kessel fasst',
    explanation:
      'Der Teig ist mehr, als der Kessel laut Abschnitt des Kneters fasst. In gleichen Kesseln nacheinander kneten oder einen größeren nehmen. ' +
      'Ein überfüllter Kessel knetet ungleichmäßig und belastet die Maschine; es gilt ihre Betriebsanleitung. Fester Teig belastet stärker: was ein Kessel fasst, ' +
      'ist für Teig mit etwa 60 g Wasser auf 100 g Mehl gemeint. Hersteller mindern es bei weniger Wasser im gleichen Verhältnis, bei kleberstarkem Mehl ' +
      '(ab 13,5 % Eiweiß) um ein Zehntel, bei kaltem Schüttwasser oder Eis um 15 bis 20 %. Das erscheint als Information.',
  },
  'bowl-too-little': {
    title: 'Zu wenig Teig für den Kessel',
    explanation:
      'Der Teig ist weniger, als das Knetwerkzeug laut Abschnitt des Kneters erfasst. Der Haken läuft daran vorbei und knetet wenig. Mehr Teig machen oder einen kleineren Kneter nehmen.',
  },
  'broken-down': {
    title: 'Der Teig wird geknetet, bis sein Kleber reißt',
    explanation:
      'Jenseits des Nachlassens ist der Kleber zerrissen: der Teig ist überknetet, läuft breit, gibt Wasser ab und ist nicht zu retten. Früher aufhören, einen langsameren Gang, ' +
      'weniger Wasser oder ein stärkeres Mehl nehmen. Das Band ist ±20 % (gängige Praxis), bis der Kneter kalibriert ist. Endet ein Knetprogramm in der zweiten Hälfte des Bands, kann der Teig ' +
      'überknetet sein; davor gilt er als nachlassend.',
  },
  'fast-for-stiff': {
    title: 'Ein sehr fester Teig im zweiten Gang',
    explanation:
      'Bis 50 g Wasser auf 100 g Mehl ist ein Teig so fest, dass ein schneller Gang Motor und Getriebe überlastet, den Teig zerreißt statt ihn zu entwickeln und ihn rasch erwärmt. ' +
      'Betriebsanleitungen von Knetmaschinen lassen solchen Teig nur im ersten Gang. Fett und Zucker machen weicher: sie zählen wie halb so viel Wasser, flüssiges Ei zählt ganz (gängige Praxis). ' +
      'Die Anleitung der eigenen Maschine geht vor.',
  },
  'flour-can-be-calibrated': {
    title: 'Knetversuche zeigen, wie schnell Teige aus diesem Mehl sich entwickeln',
    explanation:
      'Die Stufen, die in Knetversuchen mit Teigen allein aus diesem Mehl gesehen wurden, kommen früher oder später als berechnet, und das auf zwei Knetern oder mehr (Hände zählen als einer): ' +
      'dann liegt es am Mehl. Die Abhilfe schreibt den `peak`, der dazu passt, die Teigentwicklungszeit des Farinographen in Minuten; die Zeit, die ein Teig braucht, folgt ihrer Wurzel (gängige Praxis). ' +
      'Was nur ein Kneter zeigt, kann an beiden liegen: es verbreitert das Band und wird in keinen der beiden Abschnitte geschrieben. Eine Angabe der Mühle ist besser als unsere, wo es sie gibt.',
  },
  'hot-water': {
    title: 'Das Schüttwasser ist so heiß, dass es Hefe und Händen schadet',
    explanation:
      'Wasser über etwa 45 °C schadet der Hefe, auf die es trifft, und kann verbrühen (gängige Praxis). Mehl oder Backstube wärmer halten oder den Teig kühler führen. ' +
      'Brühstücke sind gewollt und stehen in einem eigenen `part`. Heißer als 60 °C wird Schüttwasser nie ausgerechnet, von Hand nie über 40 °C; wo das nicht reicht, erscheint eine Information.',
  },
  'ice-above-half': {
    title: 'Mehr als die Hälfte des Wassers müsste Eis sein',
    explanation:
      'Eis wird nie für mehr als die Hälfte des Wassers eingeplant: so viel schmilzt spät, nach einem kurzen Knetprogramm liegen womöglich noch Stücke im Teig, und er bleibt anfangs fest. ' +
      'Das Mehl kühlen, kürzer oder langsamer kneten oder einen wärmeren Teig hinnehmen. Die Grenze ist gängige Praxis.',
  },
  'ice-needed': {
    title: 'Die Leitung ist zu warm für die gewünschte Teigtemperatur',
    explanation:
      'Mit Wasser aus der Leitung wird der Teig über 1 °C wärmer als gewünscht; Eis senkt ihn. Wie viel, folgt aus der Temperatur der Leitung: `tap water` in den Abschnitt der Bäckerei schreiben, ' +
      'sonst gelten 15 °C. Mit `ice to hand` dort wird das Eis eingeplant. Ist der Teig über 2 °C zu warm, erscheint stattdessen too-warm.',
  },
  'idle-rest': {
    title: 'Eine Ruhe im Knetprogramm, die dem Teig nichts bringt',
    explanation:
      'Mehl und Wasser, die vor dem Kneten zusammen ruhen (Autolyse), brauchen bis zu einem Fünftel weniger davon (30 Minuten, gängige Praxis). Eine Ruhe, bevor beide im Kessel sind, leistet das nicht; ' +
      'mit dem Salz darin leistet sie weit weniger; ein ausgekneteter Teig gewinnt vor weiterem Kneten nichts, und eine Ruhe am Ende gehört zur Stockgare. Alle bringen den Teig der Raumtemperatur näher. ' +
      'Ruhen zwischen Faltungen, vor einer Zugabe und unter fünf Minuten bleiben unerwähnt.',
  },
  'let-down': {
    title: 'Der Teig wird geknetet, bis er nachlässt',
    explanation:
      'Ist der Teig ausgeknetet, hält er sich eine Weile, dann lässt er nach: er wird schlaff, glänzend und klebrig. Starkes Mehl bei mäßiger Hydration hält lange; schwaches Mehl, Vollkorn und sehr weiche Teige nicht. ' +
      'Früher aufhören, einen langsameren Gang, weniger Wasser oder ein stärkeres Mehl nehmen. Das Band ist ±20 % (gängige Praxis), bis der Kneter kalibriert ist. Endet ein Knetprogramm nur innerhalb des Bands, ' +
      'lässt der Teig vielleicht nach; in der ersten Hälfte des Bands ist das eine Information.',
  },
  'mixed-past-need': {
    title: 'Der Teig wird weit länger geknetet, als er braucht',
    explanation:
      'Der Teig hat mehr als das Doppelte der Arbeit einer verbesserten Knetung hinter sich: anderthalb solcher Knetungen mehr, als sein Knetgrad verlangt (`develop` im Knetprogramm). Die Minuten erwärmen ihn nur und bleichen die Krume. ' +
      'Nicht gezählt wird, was eine späte Zugabe zum Unterkneten braucht: drei Minuten, bei viel Butter oder Wasser mehr (gängige Praxis). Lässt der Teig nach oder reißt sein Kleber, erscheint stattdessen das.',
  },
  'mixer-can-be-calibrated': {
    title: 'Knetversuche zeigen, wie dieser Kneter den Teig erwärmt',
    explanation:
      'Die Messungen der Knetversuche mit diesem Kneter passen zu einer anderen Erwärmung, als sein Abschnitt angibt oder seine Bauart erwarten lässt. Die Abhilfe schreibt, was sie ergeben: wie ein Gang erwärmt (`warms`), ' +
      'wie träge der Teig dem Raum folgt (`settles`), bei Händen, worauf sie ihn erwärmen; und wie schnell er den Teig entwickelt (`develops`), wo die gesehenen Stufen das eingrenzen, es von der Annahme abweicht und zwei Mehle oder mehr es zeigen. ' +
      'Was ein Mehl auf einem Kneter zeigt, kann an beiden liegen und wird in keinen der beiden Abschnitte geschrieben. Hände brauchen keinen Abschnitt: die Abhilfe legt einen mit dem Namen `mixer by hand` an, nach dem sich dann jedes `mix by hand` richtet. ' +
      'Jede Zahl trägt ihren Standardfehler (`within`), und keine Vorhersage ist danach sicherer als er; eine Messung weitab von allen anderen zählt kaum und wird genannt, und was die Messungen nicht festlegen, bleibt, wie es ist, und wird genannt. ' +
      'Nichts erscheint, solange die Abweichungen in 0,3 °C bleiben, so gut, wie ein Einstechthermometer ist. ' +
      'Den Kneter anhalten, bevor ein Fühler oder eine Hand hineingeht.',
  },
  'no-mixer-kind': {
    title: 'Der Kneter sagt nicht, welcher Bauart er ist',
    explanation:
      'Wie ein Kneter den Teig erwärmt und entwickelt, hängt von der Bauart ab. Ohne Angabe wird ein Spiralkneter angenommen.',
  },
  'no-such-speed': {
    title: 'Der Kneter hat diesen Gang nicht',
    explanation:
      'Wie schnell das Knetwerkzeug in diesem Gang läuft, ist nicht bekannt; weder Erwärmung noch Auskneten lassen sich berechnen. Den Gang in den Abschnitt des Kneters schreiben (`speed 3 180 rpm`) ' +
      'oder einen vorhandenen nehmen. Von Hand gibt es keine Gänge: dort steht `knead`, `fold` oder `stir`. Das bleibt Arbeit von Hand, auch wo ein Kneter genannt ist: dort gehört sein `speed` hin.',
  },
  'not-in-dough': {
    title: 'Das Knetprogramm gibt etwas zu, das der Teig nicht hat',
    explanation:
      'Eine Zeile `load` oder `add` nennt eine Zutat, einen Teil oder eine Rolle, die in keiner Zeile der Rezeptur steht. Dafür kommt nichts in den Kessel. Den Namen schreiben wie in der Rezeptur oder die Zeile dort ergänzen. ' +
      'Im Programm, das ein Knetversuch festhält, ist es nur eine Information: der Teig jenes Tages hatte vielleicht, was die Rezeptur nicht mehr hat.',
  },
  'not-loaded': {
    title: 'Das Knetprogramm gibt eine Zutat des Teigs nie zu',
    explanation:
      'Was keine Zeile `load` oder `add` nennt, gilt als zuerst in den Kessel gegeben. Es zu nennen, zeigt auf dem Blatt, wann es wirklich hineinkommt.',
  },
  'portions-off': {
    title: 'Die Portionen, die zugegeben werden, ergeben nicht die ganze Zeile',
    explanation:
      'Eine Zutat, die nach und nach hineinkommt (`load water 66%`, `add water 8%`, Nachschütten), muss am Ende ganz im Kessel sein. Bei der letzten Portion `add remaining water` schreiben: sie nimmt den Rest, was auch immer die Rezeptur sagt. Eine Portion ist ein Prozentsatz vom Mehl (`water 66%`), ein Anteil (`90% of the water`, `half the water`) oder ein Gewicht (`water 1300 g`); „most of the water“ wiegt nichts.',
  },
  'too-warm': {
    title: 'Der Teig kommt zu warm aus dem Kneter',
    explanation:
      'Kneten erwärmt den Teig, schnelle Gänge am meisten. Bei starkem Mehl und mäßiger Hydration ist der Teig zu warm, lange bevor er überknetet ist. Kälteres Schüttwasser oder Eis nehmen, kürzer oder langsamer kneten, das Mehl kühlen. ' +
      'Ist die Leitung zu warm für die gewünschte Temperatur, wird der Teig beurteilt, wie er mit Leitungswasser herauskommt; Eis hilft dann. Gezeigt wird ein Teig über 2 °C über seiner Temperatur ' +
      '(3 °C über 25 °C, wo keine steht). Die Erwärmung ist gängige Praxis, bis ein Knetversuch den Kneter kalibriert: das ± hinter der Temperatur sagt, wie sicher sie ist; liegt die Grenze darin, oder genügte eine kältere Leitung als die angenommene, ist es nur eine Information.',
  },
  'trial-contradicts': {
    title: 'Ein Knetversuch sagt, was nicht gewesen sein kann',
    explanation:
      'Ein Knetversuch wird am Programm gemessen, das gelaufen ist (am eigenen, wo er eines festhält), und aus ihm wird der Kneter kalibriert; ein Versehen verdirbt mehr als eine Zahl. Eine Temperatur, die nicht gewesen sein kann, bleibt dort außer Acht. ' +
      'Gezeigt werden: ein Teig kälter als alles, was hineinkam, zusammengeschüttet, oder als der Raum, oder heißer, als Kneten ihn macht; Stufen, die rückwärts laufen, ohne dass etwas zugegeben wird; ' +
      'ein Teig, der mehr wiegt als seine Zutaten, oder ein Brot, das mehr wiegt als sein Teig; Messungen, deren Zeiten rückwärts laufen oder hinter dem Ende des Programms liegen. Zeiten zählen ab Knetbeginn mit den Ruhen. ' +
      'Das Versehen berichtigen oder ergänzen, was fehlt: Eis als kälteres Wasser, ein größeres Gewicht bei `water`, das Programm, das wirklich gelaufen ist.',
  },
  'trial-of-other': {
    title: 'Ein Knetversuch sagt, er sei von einer anderen Rezeptur',
    explanation:
      'Ein Knetversuch gehört zu der Rezeptur, unter der er steht, was auch hinter seinem Tag steht: Seine Messungen stehen neben dem, was für sie berechnet ist, und lehren ihren Kneter und ihre Gare. ' +
      'Ihn unter die Zeilen der Rezeptur setzen, die gemacht wurde; was hinter dem Tag steht, ist eine Beschriftung, für das Mehl oder das Wetter.',
  },
  'trial-without-programme': {
    title: 'Ein Knetversuch sagt nicht, was gelaufen ist',
    explanation:
      'Ein Knetversuch ohne eigenes Programm wird mit dem Programm gelesen, das die Rezeptur jetzt hat: ändern sich dessen Minuten, ändert sich, woran der Versuch gemessen wird, und die Kalibrierung des Kneters mit. ' +
      'In den Versuch schreiben, was gelaufen ist: `mixed in big spiral` oder `mixed by hand`, dann die Zeilen `load`, `add`, `speed`, `rest`, `knead`, `fold` und `stir`. Die Abhilfe schreibt das jetzige Programm; liegt eine Messung hinter dessen Ende, ' +
      'ist etwas anderes gelaufen, und was, weiß nur, wer dabei war. Was ein Programm ändert oder eine Messung einträgt, schreibt diese Zeilen von selbst. Den Kneter anhalten, bevor ein Fühler oder eine Hand hineingeht.',
  },
  'unknown-feel': {
    title: 'Eine Messung hat ein Wort, das weder Teigstufe noch Anfühlen ist',
    explanation:
      'Was am Teig zu sehen und zu fühlen war, lehrt, wie schnell Kneter und Mehl ihn entwickeln, und steht darum in Wörtern, die etwas bedeuten: eine Teigstufe wie `developed`, ' +
      'oder wie er sich anfühlt, etwa `smooth`, `shiny`, `clears the bowl`, jedes hinter einem Komma. Ein anderes Wort bleibt stehen, wie es geschrieben ist, und zählt nicht; was sonst ' +
      'zu merken ist, gehört in eine `note`.',
  },
  'under-developed': {
    title: 'Das Knetprogramm endet, bevor der Teig ausgeknetet ist',
    explanation:
      'Nach Mehl, Wasser und Kneter braucht der Teig mehr Arbeit, als das Programm ihm gibt. Faltungen und Stockgare zählen mit: eine Faltung wie 15 % der Arbeit einer verbesserten Knetung, drei Stunden Stockgare wie 10 % und jede weitere Stunde wie 12 % (gängige Praxis): ' +
      'eine Nacht macht einen nur verrührten Teig fertig. Gezeigt wird, wenn alles zusammen unter 80 % des Gewünschten liegt: einer verbesserten Knetung, oder was `develop short` oder `develop intensive` im Knetprogramm sagt. ' +
      'Die Zeit ist gängige Praxis, ±20 %, bis der Kneter kalibriert ist; liegt genug Arbeit im Band, ist es nur eine Information. Ab einem Viertel Roggen ist es immer nur eine Information, über 40 % Roggen entfällt der Befund: solcher Teig wird gemischt, bis er gleichmäßig ist.',
  },
  'unknown-mixer': {
    title: 'Ein Kneter, der nicht definiert ist',
    explanation:
      'Erwärmung und Auskneten kommen vom Kneter; ohne ihn lässt sich beides nicht berechnen. Den Namen schreiben wie im Kopf seines Abschnitts, eine Bauart nennen (`spiral` Spiralkneter, `planetary` Planetenrührer, `fork` Gabelkneter, ' +
      '`twin arm` Doppelarm- oder Hubkneter, `horizontal` liegender Kneter), oder ihn definieren.',
  },
  'yeast-in-the-hot': {
    title: 'Die Hefe trifft auf etwas, das ihr zu heiß ist',
    explanation:
      'Hefe, die mit heißer Milch, geschmolzener Butter oder einem frischen Brühstück in den Kessel kommt, trifft auf deren Hitze, bevor das Mehl sie aufnimmt. Über etwa 40 °C leidet sie, bei 45 °C endet ihr Wachstum ' +
      '(veröffentlicht: Salvadó und andere, 2011), mehr tötet sie. Zuerst Mehl und Wasser mischen und die Hefe in den kühleren Teig geben, oder das Heiße abkühlen lassen. Heißes Schüttwasser hat einen eigenen Befund.',
  },
};
