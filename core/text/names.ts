const plainName = /^[a-z0-9]+(?: [a-z0-9]+)*$/;
/** Of letters that are one sign each however they are written, without ß: only their case is to be folded. */
const latinName =
  /^[A-Za-z0-9.%&/+'\u00C0-\u00DE\u00E0-\u024F-]+(?: [A-Za-z0-9.%&/+'\u00C0-\u00DE\u00E0-\u024F-]+)*$/;

/**
 * The form in which two spellings of one name are equal: NFC, case folded without a locale, every kind of hyphen
 * and apostrophe alike, quotes dropped, blanks folded to one.
 */
export function foldName(name: string): string {
  if (plainName.test(name)) return name;
  if (latinName.test(name)) return name.toLowerCase();
  return name
    .normalize('NFC')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/ς/g, 'σ')
    .replace(/["“”]/g, '')
    .replace(/[\u2010-\u2015\u2212\uFE63\uFF0D]/g, '-')
    .replace(/[\u2018\u2019\u02BC\u2032]/g, "'")
    .replace(/[\s\u00A0\uFEFF]+/g, ' ')
    .trim();
}
