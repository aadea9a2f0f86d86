/**
 * Whether fixtures are rewritten, `UPDATE=1`. A build server compares and never rewrites: what it would write down would
 * be read by nobody, and the test would hold for whatever the program says.
 */
export const updating: boolean = wantsUpdate(process.env);

/** Throws where fixtures would be rewritten on a build server. */
export function wantsUpdate({ UPDATE, CI }: Readonly<Record<string, string | undefined>>): boolean {
  if (UPDATE !== '1') return false;
  if (CI !== undefined && CI !== '' && CI !== 'false')
    throw new Error(
      'UPDATE=1 rewrites what tests expect, so it is refused where CI is set: take one of them away.',
    );
  return true;
}
