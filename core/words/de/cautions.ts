import type { Args } from '../args.ts';
import type { cautions as english } from '../en/cautions.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Die übliche Vorsicht bei der Arbeit. */
export const cautions: Translation<typeof english> = {
  'caution.hot-water': ({ waterCelsius }, say) =>
    `Wasser mit ${say.celsius(waterCelsius)} kann verbrühen und tötet Hefe, auf die es trifft: von den Händen weg gießen und von der Hefe fernhalten.`,
  'caution.dough-stands': (standing, say) => `Der Teig steht ${stands(standing, say)}`,
  'caution.part-stands': (standing, say) => `„${standing.part}“ steht ${stands(standing, say)}`,
  'caution.step': ({ written }) => `„${written}“`,
  'caution.core': ({ celsius, limitCelsius }, say) =>
    `Durchgebacken bei etwa ${say.celsius(celsius)} bis ${say.celsius(limitCelsius)} im Kern, gemessen in der Mitte eines Brotes.`,
  'caution.dark-wheat': ({ microgramsPerKilogram }, say) =>
    `Eine dunkle Kruste enthält mehr Acrylamid: ${acrylamide} Weizenbrot liegt bei ${level(microgramsPerKilogram, say)}`,
  'caution.dark-other': ({ microgramsPerKilogram }, say) =>
    `Eine dunkle Kruste enthält mehr Acrylamid: ${acrylamide} Brot, das nicht vorwiegend aus Weizen ist, liegt bei ${level(microgramsPerKilogram, say)}`,
  'caution.dark-wheat-at': ({ celsius, microgramsPerKilogram }, say) =>
    `Bei bis zu ${say.celsius(celsius)} gebacken, enthält eine dunkle Kruste mehr Acrylamid: ${acrylamide} Weizenbrot liegt bei ${level(microgramsPerKilogram, say)}`,
  'caution.dark-other-at': ({ celsius, microgramsPerKilogram }, say) =>
    `Bei bis zu ${say.celsius(celsius)} gebacken, enthält eine dunkle Kruste mehr Acrylamid: ${acrylamide} Brot, das nicht vorwiegend aus Weizen ist, liegt bei ${level(microgramsPerKilogram, say)}`,
  'caution.lye': () =>
    'Lauge verätzt die Haut und kann blind machen: Schutzbrille, lange Handschuhe, Schürze. Lauge ins kalte Wasser, niemals Wasser auf Lauge; nichts aus Aluminium; beschriftet und eingeschlossen. Spritzer lange unter fließendem Wasser spülen und einen Arzt rufen.',
  'caution.boiling': () =>
    'Kochende Flüssigkeit und ihr Dampf verbrühen: den Topf nie mehr als halb füllen, Teigstücke mit der Schaumkelle vom Körper weg einlegen, trockener Boden und freier Weg.',
  'caution.frying': () =>
    'Heißes Fett verbrennt und kann sich entzünden: nie allein lassen, das Thermometer beachten, nur Trockenes einlegen, Deckel und Löschdecke bereithalten. Kein Wasser auf brennendes Fett.',
  'caution.machines': ({ facts }, say) =>
    `Schutz geschlossen, keine Hand in die laufende Maschine, vor dem Räumen und Reinigen ausschalten und Stecker ziehen: ${say.list(facts.map(say.say))}.`,
  'caution.sheeter': () => 'die Ausrollmaschine zieht Finger ein',
  'caution.divider': () => 'die Teigteilmaschine quetscht und schneidet',
  'caution.slicer': () => 'die Schneidemaschine schneidet bis auf den Knochen',
  'caution.raw': () => 'Rohes Mehl und roher Teig werden nicht gekostet.',
  'caution.raw-egg': () => 'Rohes Mehl, roher Teig und rohes Ei werden nicht gekostet.',
  'caution.by-hand': () => `Mehl tief und langsam schütten: ${dust}`,
  'caution.machine': () =>
    `Keine Hände in den laufenden Kessel; der Schutz bleibt geschlossen. Den Kneter anhalten, bevor ein Fühler oder eine Hand hineingeht. Langsam anlaufen lassen, damit kein Mehl stäubt: ${dust}`,
  'caution.heat-and-weight': () =>
    'Ofen, Bleche und Dampf verbrennen. Säcke, Kessel und volle Bleche sind schwer: die Hilfen nutzen, die da sind.',
  'caution.allergens': () =>
    'Allergene sind so angegeben, wie sie in den Dateien stehen; für das Etikett ist der Hersteller verantwortlich. Es gelten die Betriebsanleitung der Maschine, das örtliche Lebensmittelrecht und fachlicher Rat.',
};

const dust = 'Mehlstaub verursacht Bäckerasthma, und eine Wolke davon kann explodieren.';

const acrylamide =
  'lieber goldgelb als braun backen. Der Richtwert der Verordnung (EU) 2017/2158 für weiches';

function level(microgramsPerKilogram: number, say: Speaker): string {
  return `${say.number(microgramsPerKilogram, 0)} µg/kg; er ist kein Grenzwert, und den Wert eines Brotes kennt nur das Labor.`;
}

type Standing = Args<'names' | 'seconds' | 'celsius' | 'limitCelsius' | 'facts'>;

function stands({ names, seconds, celsius, limitCelsius, facts }: Standing, say: Speaker): string {
  return `${say.duration(seconds)} zwischen ${say.celsius(celsius)} und ${say.celsius(limitCelsius)} (${say.list(facts.map(say.say))}), mit ${say.list(names)} darin: solche Zeiten kurz und den Tisch sauber halten; es gilt das örtliche Lebensmittelrecht.`;
}
