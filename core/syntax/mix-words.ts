/** The words in which bakers say what is done in a mix, as patterns. Common practice, no source. */

/** Speeds by their names in the trade. Common practice, no source. */
export const speeds: readonly (readonly [RegExp, number])[] = [
  [/\b(?:on |at |in )?(?:medium[ -]low|low[ -]medium)(?: speed)?(?![\p{L}\d])/iu, 2],
  [
    /\b(?:on |at |in )?(?:speed (?:1|one)|(?<=(?:on|at) )1(?![.,]|\s*[°%])|(?:first|1st|1\.|slow|low)(?: speed| gear)?|frasage)(?![\p{L}\d])/iu,
    1,
  ],
  [
    /\b(?:on |at |in )?(?:speed (?:2|two)|(?<=(?:on|at) )2(?![.,]|\s*[°%])|(?:second|2nd|2\.|fast|high|quick|medium|med)(?: speed| gear)?|pétrissage)(?![\p{L}\d])/iu,
    2,
  ],
  [
    /\b(?:on |at |in )?(?:speed (?:3|three)|(?<=(?:on|at) )3(?![.,]|\s*[°%])|(?:third|3rd)(?: speed| gear)?)(?![\p{L}\d])/iu,
    3,
  ],
];
export const rests =
  /^(?:(?:let|leave|allow) (?:it |the dough |to )?(?:to )?(?:sit|rest|stand)|sit|autoly[sz]e|autolysis|rest(?! of)|stand|wait|pause|leave)\b/i;
export const loads = /^(?:add(?:ing)?|put in|fold in|incorporate|work in|mix in|pour in|sprinkle in)\b\s*/i;
export const works =
  /^(?:mix(?:ing)?|combine|knead(?:ing)?|stir|beat|blend|run|spiral|mixer|load|frasage|pétrissage)(?![\p{L}])\s*:?\s*/iu;
/** Words that say how and not what. */
export const manners =
  /(?:^|\s)(?:until\s.*|(?:if|as|when) (?:needed|wanted|required|necessary)|(?:(?:bit by bit|little by little|slowly|gradually)(?: (?:over|during|within))?|over|during|within|(?:in )?(?:the )?last minutes?|an? \p{L}+ at a time|in (?:small )?(?:pieces|cubes|chunks|knobs)(?: (?:over|during|within))?|at the (?:end|start)|one at a time|in a (?:thin )?stream|gently|thoroughly|well|together|in (?:two|three|several|\d+) (?:additions|lots|parts|steps|goes|times|stages|batches|portions)|in (?:the |a )?(?:stand )?(?:mixer|machine|bowl)|with (?:the |a )?(?:stand )?(?:mixer|machine|dough hook|hook|paddle)|by (?:hand|machine)|to (?:a|an)\s.*|(?:but |still )?without\s.*))$/iu;
export const fillers = /^(?:for|then|and|at|on|of|the|in|with|[-–—+&/:.])$/i;
export const everything =
  /^(?:all|everything)(?: in)?(?=$|\s+(?:but|except|without)\s)|^all (?:the )?(?:ingredients|of it)$/i;

/** `butter in`, `the butter goes in`. */
export const goesIn = /(?<=\S\s+)(?:(?:goes|go) )?in(?: (?:now|last))?\.?$/i;

/** A name short of the words behind it that say how it goes in, `butter bit by bit`, and those words. */
export function mannerApart(text: string): { readonly name: string; readonly manner?: string } {
  const found = manners.exec(text);
  if (found === null || text.slice(0, found.index).trim() === '') return { name: text };
  return { name: text.slice(0, found.index).trimEnd(), manner: found[0].trim() };
}

const number = String.raw`\d+(?:[.,]\d+)?`;
/** A time, with the units that bakers write. */
export const time = new RegExp(
  String.raw`(?<![\p{L}\d.,−-])(${number}(?:\s*[-–]\s*${number})?)\s*(hours?|hrs?|h|minutes?|mins?|m|'|′|seconds?|secs?|sec|s)(?![\p{L}\d])\.?`,
  'iu',
);
