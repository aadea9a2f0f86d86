import type { RulePages } from '../rule-page-words.ts';

/** Regeln, die sagen, wie eine Zeile geschrieben wird. */
export const linePages: RulePages = {
  'after-amount': {
    title: 'Worte hinter der Menge',
    explanation: 'Hinter der Menge stehen nur ein Komma und ein Zusatz. Andere Worte gehören hinter ein `#`.',
  },
  'amount-first': { title: 'Die Menge vor dem Namen', explanation: 'Zuerst kommt der Name, dann die Menge.' },
  'beyond-limit': {
    title: 'Eine Zahl jenseits dessen, was gemeint sein kann',
    explanation:
      'Vermutlich ein Tippfehler: eine Stockgare von zehn Millionen Stunden, hunderttausend Tonnen Salz. Die Zahl bleibt aus den Summen. Die Grenzen stehen in der Übersicht des Leitfadens; sie sind weit.',
  },
  'line-too-long': {
    title: 'Eine viel zu lange Zeile',
    explanation:
      'Eine Zeile von mehr als 4000 Zeichen bleibt stehen und wird nicht gelesen. Teilen oder mit `#` davor zum Kommentar machen.',
  },
  'missing-amount': {
    title: 'Eine Zutat ohne Menge',
    explanation:
      'Hinter den Namen gehören Prozent vom Mehl, ein Gewicht, ein Volumen, Stück, `balance`, `to 69% hydration` oder `remaining`.',
  },
  'missing-colon': {
    title: 'Eine Kopfzeile ohne Doppelpunkt',
    explanation:
      'Die Zeile, die einen Abschnitt beginnt, endet mit einem Doppelpunkt; ohne ihn gilt nur als Kopf, was nichts anderes heißen kann.',
  },
  'missing-comma': {
    title: 'Eine Temperatur ohne Komma davor',
    explanation: 'Ein Zusatz folgt der Menge nach einem Komma: `butter 4%, at 8 °C`.',
  },
  'missing-date': {
    title: 'Ein Knetversuch ohne Datum',
    explanation:
      'Ein Knetversuch beginnt mit dem Tag, das Jahr zuerst: `trial 2026-03-14:`. Nach einem Komma dürfen Worte folgen.',
  },
  'missing-mixer': {
    title: 'Ein Knetprogramm, das nicht sagt, worin geknetet wird',
    explanation:
      '`mix in big spiral:` oder `mix by hand:` schreiben; ein Teil wird mit `mix poolish by hand:` gemischt.',
  },
  'missing-name': {
    title: 'Etwas ohne Namen',
    explanation:
      'Ein Abschnitt trägt seinen Namen hinter seinem Wort, eine Zutat steht vor ihrer Menge, und ein Schritt beginnt mit dem, was getan wird.',
  },
  'missing-unit': {
    title: 'Eine Zahl ohne Einheit',
    explanation: 'Eine bloße Zahl kann Prozent, Gramm oder Stück sein; es wird gefragt und nie geraten.',
  },
  'missing-value': {
    title: 'Eine Eigenschaft ohne Wert',
    explanation: 'Der Befund zeigt, wie sich die ganze Zeile liest.',
  },
  'negative-amount': {
    title: 'Eine Menge mit Vorzeichen',
    explanation:
      'Mit einem Minuszeichen lässt sich nichts abwiegen, und `+5%` sagt nicht, wovon es mehr ist. Eine Menge ist alles, was es von der Zeile gibt.',
  },
  'no-amount': {
    title: 'Eine Angabe, die keine Menge ist',
    explanation:
      'Temperatur, Zeit und Preis sagen nicht, wie viel. Prozent vom Mehl, ein Gewicht, ein Volumen oder Stück schreiben.',
  },
  'no-formula': {
    title: 'Ein Teil ohne Rezeptur',
    explanation:
      'Vorteige, Quellstücke, Knetprogramme, Abläufe und Knetversuche gehören zur Rezeptur darüber; jeder andere Abschnitt beendet sie. Den Abschnitt nach oben zu seiner Rezeptur setzen.',
  },
  'outside-section': {
    title: 'Eine Zeile vor jedem Abschnitt',
    explanation:
      'Jede Zeile gehört zum Abschnitt darüber. Einen beginnen: `formula Morning Tin:`. Notizen aus Mengen und Schritten macht die Abhilfe zur ' +
      'Rezeptur, mit dem Namen ihrer Überschrift oder ihrer Datei.',
  },
  'point-or-thousand': {
    title: 'Ein Punkt vor drei Ziffern',
    explanation:
      'Er gilt als Dezimalzeichen; in vielen Ländern trennt er Tausender. So schreiben, dass es niemand anders liest.',
  },
  range: {
    title: 'Ein Bereich, wo ein Wert gebraucht wird',
    explanation: 'Ein Ende wählen oder die Mitte, und den Bereich als Kommentar behalten.',
  },
  'said-twice': {
    title: 'Dasselbe zweimal angegeben',
    explanation:
      'Ein Abschnitt gibt jede seiner Eigenschaften einmal an (ein Kneter jeden seiner Gänge). Die erste gilt. Meist stammt die zweite aus zusammengeführten Dateien: eine entfernen.',
  },
  'stray-colon': {
    title: 'Ein Doppelpunkt, wo keiner hingehört',
    explanation:
      'Ein Doppelpunkt beendet nur die Zeile, die einen Abschnitt beginnt. Zwischen Name und Menge stehen Leerzeichen.',
  },
  'two-readings': {
    title: 'Eine Zahl, die sich auf zwei Arten lesen lässt',
    explanation:
      'Ein Komma oder ein Leerzeichen vor drei Ziffern kann Tausender trennen, Dezimalzeichen sein oder den Namen von der Menge trennen. So schreiben, dass es nur eine Lesart gibt.',
  },
  'two-steps': {
    title: 'Zwei Schritte in einer Zeile',
    explanation:
      'Jeder Schritt eines Ablaufs hat seine eigene Zeile und eine Zeit: ein zweiter gälte sonst als Worte des ersten, und seine Zeit ginge verloren. Zeiten, die die des Schritts aufteilen, `bake 45 min, 20 min with lid, 25 min without`, und was darin geschieht, `steam for 10 min`, dürfen stehen.',
  },
  'cold-without-degrees': {
    title: 'Ein kalter Schritt ohne seine Temperatur',
    explanation:
      'Ein `retard` oder ein Schritt im Kühlschrank, dessen Temperatur nicht dasteht, gilt als bei 5 °C, denn bei der des Raums ginge der Teig in einer Stunde auf. Die Temperatur gehört dazu, denn an ihr hängt, ob der Teig aufgeht oder stillsteht.',
  },
  'fold-times': {
    title: 'Faltungen, für die keine Zeit feststeht',
    explanation:
      '`fold 3 times` und `fold every 40 min` verteilen sich auf die Zeit ihres Schritts, die dabeistehen muss: `bulk 2 h, fold 3 times`.',
  },
  'fold-past-end': {
    title: 'Eine Faltung nach dem Ende ihres Schritts',
    explanation:
      'Eine Faltung steht in dem Schritt, den sie unterbricht, mit ihrer Zeit ab seinem Beginn: `bulk 2 h, 4 folds every 30 min` wird zum letzten Mal gefaltet, wenn er endet. Was später käme, zählt nicht. Die Zeit des Schritts oder der Faltung berichtigen; was nach dem Schritt geschieht, steht in einer eigenen Zeile.',
  },
  'which-kind': {
    title: 'Ein Name für zweierlei',
    explanation:
      '`yeast`, `spelt flour`, `oil` und `malt` können je zweierlei sein, das anders wiegt, gärt oder gekennzeichnet wird. Die Zeile wird als das erste gelesen und sagt es, bis sie eines nennt.',
  },
  'unknown-accept': {
    title: 'Ein „accept“ für einen Befund, den es nicht gibt',
    explanation:
      'Hinter `accept` steht der Code eines Befunds, wie ihn der Editor und `doughwright check` neben dem Text zeigen.',
  },
  'unknown-option': {
    title: 'Ein Zusatz, den niemand kennt',
    explanation:
      'Nach dem Komma nimmt eine Zutat eine Temperatur (`at 8 °C`), eine Zeile eines Plans eine Zeit (`ready 07:15`). Andere Worte gehören hinter ein `#`.',
  },
  'unknown-property': {
    title: 'Eine Eigenschaft, die der Abschnitt nicht hat',
    explanation:
      'Jede Art von Abschnitt hat ihre eigenen Eigenschaften. Eigene Worte gehören hinter `note` oder `#`.',
  },
  'unknown-section': {
    title: 'Ein Abschnitt, den niemand kennt',
    explanation:
      'Die Zeilen darunter bleiben stehen und werden nicht gelesen. Abschnitte sind formula, flour, ingredient, mixer, bakery, plan, und in einer Rezeptur preferment, soaker, scald, part, filling, topping, bath, mix, process und trial. ' +
      'Wie Bäcker einen Teil sonst nennen, zum Beispiel `biga:` oder `levain:`, beginnt ihn ebenfalls; es fehlt ihm nur ein Wort.',
  },
  unreadable: {
    title: 'Ein Zeichen, das hier nicht stehen kann',
    explanation:
      'Entfernen oder den ganzen Namen in Anführungszeichen setzen. Aufzählungszeichen, Nummern einer Liste, Tabellen, Trennlinien, typografische Anführungszeichen und Kommentare anderer Schreibweisen werden als solche genannt, mit Abhilfe; ebenso Zeilen eines nicht beendeten Merges und Buchstaben einer Datei, die nicht als UTF-8 gespeichert ist.',
  },
  'unused-accept': {
    title: 'Ein „accept“, das nichts zum Schweigen bringt',
    explanation:
      '`# accept CODE: Grund` bringt einen Befund auf der eigenen Zeile zum Schweigen, oder auf der Zeile darunter, wo es allein steht. Hier gibt es keinen mit diesem Code: die Ursache ist behoben, oder es steht auf der falschen Zeile. ' +
      'Ein Fehler in der Schreibweise einer Zeile lässt sich nicht annehmen. Die Kopfzeile einer Rezeptur, eines Mehls oder Kneters nimmt es an ihrem Ende, nicht von oben.',
  },
  'wrong-value': {
    title: 'Ein Wert, der nicht zu seiner Eigenschaft passt',
    explanation:
      'Der Wert ist von anderer Art, ist keines der Worte, die die Eigenschaft kennt, oder kann nicht sein. Der Befund zeigt, wie sich die Zeile liest.',
  },
};
