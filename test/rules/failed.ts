/** No input makes a rule or an action fail: where one does, so does the test. */
export function failed(what: string): never {
  throw new Error(`It failed: ${what}`);
}
