import type { message } from '../../core/index.ts';

/** A message as the core makes it, for what is to be said before the core is loaded: plain data, worded later. */
export const said: typeof message = (code, ...args) => ({ code, args: args[0] ?? {} });
