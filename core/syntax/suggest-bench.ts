/** What a baker most likely meant with a line of an experiment or a reading that does not read; not yet looked at whether that reads. */

const time = String.raw`\d[\d.,]*\s*\p{L}+`;
const work = String.raw`speed \d+|knead|fold|stir|rest`;

/** Where a part of a dough line begins: behind a comma, or at the word that only such a part begins with. */
const partBegins = new RegExp(
  String.raw`\s*,\s*(?:then\s+|and\s+)?|\s+(?:then|and)\s+(?=(?:${work})\b)|\s+(?=(?:in|by)\s)|\s+(?=(?:${work})\b)`,
  'iu',
);

/** `Plain White in spiral speed 1 for 60 min`, `Plain White, hand, 20 min`, `Plain White, spiral, speed 1 60 min`. */
export function meantDough(text: string): string | undefined {
  const [name = '', ...parts] = text.split(partBegins);
  const isByHand = parts.some((part) => byHand.test(part));
  // A bare word is taken for a mixer beside a speed alone, and where none is named.
  const isFast = parts.some((part) => /^speed \d/iu.test(part));
  let isPlaced = isByHand || !isFast || parts.some((part) => inMixer.test(part));
  const meant: string[] = [];
  for (const part of parts) {
    const read = meantPart(part, isByHand, isPlaced);
    if (read === undefined) return undefined;
    isPlaced ||= read.startsWith('in ');
    meant.push(read);
  }
  return name.trim() === '' || parts.length === 0 ? undefined : [name, ...meant].join(', ');
}

const byHand = /^(?:by\s+)?hands?$/iu;
const inMixer = /^(?:in|on|with)\s+\S/iu;
const worked = new RegExp(String.raw`^(?:(${work})\s+)?(?:for\s+)?(${time})$`, 'iu');

function meantPart(part: string, isByHand: boolean, isPlaced: boolean): string | undefined {
  if (byHand.test(part)) return 'by hand';
  if (inMixer.test(part)) return part.replace(/^(?:in|on|with)\s+(?:the\s+)?/iu, 'in ');
  const [, how, long] = worked.exec(part) ?? [];
  if (long !== undefined) {
    // How fast a machine ran nobody can guess.
    const said = how?.toLowerCase() ?? (isByHand ? 'knead' : undefined);
    return said === undefined ? undefined : `${said}${said.startsWith('speed') ? ' for' : ''} ${long}`;
  }
  return isPlaced || /\d/.test(part) || part.trim() === '' ? undefined : `in ${part}`;
}

/** `8 and 16 min`, `8 min 16 min`, `8/16/30 min`. */
export function meantMinutes(text: string): string | undefined {
  const meant = text
    .replace(/\s*(?:,\s*)?(?:\band\b|&)\s*|\s*[;/]\s*/giu, ', ')
    .replace(/(\p{L})\s+(?=\d)/gu, '$1, ');
  return meant === text ? undefined : meant;
}

/** `3 kg of strong white`, `3 kg strong white`. */
export function meantStock(text: string): string | undefined {
  const [, mass, name] = /^(\d[\d.,]*\s*(?:kg|g|oz|lb))\s+(?:of\s+)?(\D+)$/iu.exec(text) ?? [];
  return mass === undefined ? undefined : `${name} ${mass}`;
}

/** `8 min, 24 °C smooth`: a comma stands behind the temperature, or where there is none behind the minutes. */
export function meantReading(text: string): string | undefined {
  const plain = text.replace(/\s+/gu, ' ');
  const found = /^(?:(\d[\d.,]* ?\p{L}+) ?[,:]? )?(-?\d[\d.,]* ?°? ?[CF])(?:[ ,;:–-]{1,3}(\p{L}.*))?$/iu.exec(
    plain,
  );
  if (found === null) return meantAlone(plain);
  const [, minutes, celsius = '', seen] = found;
  return `${minutes === undefined ? '' : `${minutes} `}${celsius}${seen === undefined ? '' : `, ${seen}`}`;
}

/** `8 min smooth`, `8 min: feels smooth`. */
function meantAlone(text: string): string | undefined {
  const found =
    /^(\d[\d.,]* ?(?:min|h|s))(?: ?[,:;–-]+)? (?:(?:feels?|felt|looks?|looked|was|is) )?(\p{L}[\p{L} ,-]*)$/u.exec(
      text,
    );
  return found === null ? undefined : `${found[1]}, ${found[2]}`;
}
