import { describe, expect, test } from 'vitest';
import { allergenOf, knownAllergens } from '../../core/calc/product/allergens.ts';
import { allergenName, entryMessage } from '../../core/facts/allergen-words.ts';
import { allergenWords, ingredientStretches, nutritionWords } from '../../core/facts/label-words.ts';
import { createService } from '../../core/index.ts';
import { german } from '../../core/words/de/german.ts';
import { plainSpeaker, speakerOf } from '../../core/words/speak.ts';
import type { Speaker } from '../../core/words/speaker.ts';
import { intlGrammar } from '../../server/host/grammar.ts';

const asRead = speakerOf(
  german,
  { mass: 'grams', temperature: 'celsius', decimalSign: 'comma' },
  intlGrammar('de'),
);

function labelOf(...lines: readonly string[]) {
  const service = createService();
  const uri = 'file:///quay/label.dough';
  const head = [
    'bakery Quay Lane:',
    '  label EU',
    'formula Quay Tin:',
    '  yield 2 pieces of 810 g',
    '  bake loss 10%',
  ];
  service.setText(uri, `${[...head, ...lines.map((line) => `  ${line}`)].join('\n')}\n`);
  return service.totals(uri).at(-1)!.label!;
}
const list = (speaker: Speaker, ...lines: readonly string[]): string => {
  const { ingredients, regime } = labelOf(...lines);
  return ingredientStretches(ingredients, regime, speaker)
    .map(({ text, allergen }) => (allergen ? `[${text}]` : text))
    .join('');
};

describe('the ingredient list in German', () => {
  // Regulation (EU) 1169/2011, article 21 and Annex II: the name of the allergen is emphasised in the list.
  test.each([
    [
      'the allergen within a compound',
      ['Weizenmehl 100%', 'Wasser 65%', 'Salz 2%'],
      '[Weizen]mehl, Wasser, Salz.',
    ],
    [
      'with its ending',
      ['Weizenmehl 100%', 'Wasser 65%', 'Walnüsse 10%', 'Mandeln 8%'],
      '[Weizen]mehl, Wasser, [Walnüsse], [Mandeln].',
    ],
    [
      'a short one where a word begins',
      ['Roggenmehl 100%', 'Wasser 65%', 'Eigelb 5%'],
      '[Roggen]mehl, Wasser, [Ei]gelb.',
    ],
    [
      'behind a name that does not say it',
      ['Dinkelmehl 100%', 'Wasser 65%', 'Butter 5%'],
      'Dinkelmehl ([Weizen]), Wasser, Butter ([Milch]).',
    ],
    [
      'a name in the words of the notation',
      ['bread flour 100%', 'water 65%', 'wheat bran 2%'],
      'bread flour ([Weizen]), water, [wheat] bran.',
    ],
  ])('marks %s', (_, lines, wanted) => {
    expect(list(asRead, ...lines)).toBe(wanted);
  });

  test('is in the words of the file where the language is that of the notation', () => {
    expect(list(plainSpeaker, 'bread flour 100%', 'water 65%', 'milk 5%')).toBe(
      'bread flour ([wheat]), water, [milk].',
    );
  });
});

describe('the label in German', () => {
  const label = labelOf('Weizenmehl 100%', 'Wasser 65%', 'Salz 2%', 'Walnüsse 10%');

  // Regulation (EU) 1169/2011, Annexes II and XV, in German: from memory.
  test('has the words of the Regulation', () => {
    expect(allergenWords(label, asRead)[0]).toBe(
      'Allergene nach Anhang II: glutenhaltiges Getreide und Schalenfrüchte.',
    );
    expect(nutritionWords(label, asRead).rows.map(({ name }) => name)).toEqual([
      ...['Brennwert', 'Brennwert', 'Fett', 'davon gesättigte Fettsäuren', 'Kohlenhydrate', 'davon Zucker'],
      ...['Ballaststoffe', 'Eiweiß', 'Salz'],
    ]);
  });

  test('prints the figures with a decimal comma, and the same ones', () => {
    const [own, english] = [asRead, plainSpeaker].map((speaker) => nutritionWords(label, speaker).rows);
    const cells = (rows: typeof own) => rows!.flatMap((row) => row.cells);
    expect(cells(own)).toEqual(
      cells(english).map((cell) => cell.replace('.', ',').replace('not known', 'nicht bekannt')),
    );
    expect(cells(own).some((cell) => cell.includes(','))).toBe(true);
  });
});

describe('every allergen of the lists', () => {
  test('has a name in German, and in English stands as it is written', () => {
    const eaten = knownAllergens.filter((word) => allergenName(word, asRead) === word);
    expect(eaten).toEqual(
      ['durum', 'emmer', 'einkorn', 'triticale', 'gluten'].filter((word) => eaten.includes(word)),
    );
    for (const word of knownAllergens) expect(allergenName(word, plainSpeaker)).toBe(word);
    for (const word of [...knownAllergens, 'eggs', 'almonds']) {
      const { eu } = allergenOf(word)!;
      if (eu === undefined) continue;
      expect(plainSpeaker.say(entryMessage(eu))).toBe(eu);
      expect(entryMessage(eu).code).not.toBe('allergens.other');
    }
  });
});

describe('a service in German', () => {
  const uri = 'file:///quay/day.dough';
  const asked = () => {
    const service = createService();
    service.setSettings({
      language: german,
      display: { mass: 'grams', temperature: 'celsius', decimalSign: 'comma' },
    });
    return service;
  };

  test('drafts the label, adds up the cost and says what an import took for what in German', () => {
    const service = asked();
    service.setText(
      uri,
      [
        ...['flour dock white:', '  like bread flour', '  price 0.80 EUR per kg', ''],
        ...[
          'formula Quay Tin:',
          '  yield 2 pieces of 810 g',
          '  dock white 100%',
          '  water 60%',
          '  salt 2%',
          '',
        ],
      ].join('\n'),
    );
    const { label, cost } = service.totals(uri)[0]!;
    expect(cost!.text).toBe(
      'Zutaten kosten mehr als 0,80 EUR je Teig: kein brauchbarer Preis oder kein Gewicht bei salt.',
    );
    expect(cost!.lines.flatMap(({ reason }) => reason ?? [])).toEqual([
      '„water“ hat keinen Preis',
      '„salt“ hat keinen Preis',
    ]);
    expect(label!.nutritionUnknown).toBe(
      'in der Rezeptur steht kein Backverlust; ihn hinschreiben, zum Beispiel: bake loss 12%',
    );
    const notes = service.importTable(uri, 'Zutat;g\nMehl;1000\nWasser;650\n').notes;
    expect(notes.filter(({ doubtful }) => doubtful).map(({ message }) => message)).toEqual([
      'Zeile 2, „Mehl“, ist als „bread flour“ genommen; in der Tabelle steht nicht, was davon es ist.',
    ]);
  });

  test('describes completions in German, and writes what it would write in English', () => {
    const [own, english] = [asked(), createService()].map((service) => {
      service.setText(uri, 'formula Quay Tin:\n  bread flour 100%\n  \n');
      return service.completions(uri, 2, 2);
    });
    expect(own!.map(({ label, insert, kind }) => [label, insert, kind])).toEqual(
      english!.map(({ label, insert, kind }) => [label, insert, kind]),
    );
    const details = (list: typeof own) => new Map(list!.map(({ label, detail }) => [label, detail]));
    expect(details(own).get('butter')).toBe('Fett, 17,9\u00a0% Wasser');
    expect(details(english).get('butter')).toBe('fat, 17.9% water');
  });
});
