import type { Arg, NoArgs } from './args.ts';
import type { subjects } from './en/english.ts';
import type { Speaker } from './speaker.ts';

type EnglishSubjects = typeof subjects;

/** Each of several types at once. */
type Both<U> = (U extends unknown ? (one: U) => void : never) extends (one: infer B) => void ? B : never;

type English = Both<EnglishSubjects[keyof EnglishSubjects]>;

/** Which message it is. The list is closed: English has a sentence for each, and every language the same ones. */
export type Code = keyof English;

/** What a message is given. */
export type ArgsOf<C extends Code> = C extends Code
  ? Parameters<English[C]>[0] extends Partial<Arg>
    ? Parameters<English[C]>[0]
    : NoArgs
  : never;

/**
 * A message before it is worded: plain data, which a debugger and a test read and a program may steer by its code. That its
 * arguments are those of its code is held where it is made, by `message`. As a union of all messages it would say so
 * everywhere, and the compiler would compare each with each in every list of them: minutes instead of seconds.
 */
export interface Message<C extends Code = Code> {
  readonly code: C;
  readonly args: object;
}

/** The words of a language: a sentence for every message, by subject. */
export type Subjects = { readonly [S in keyof EnglishSubjects]: Translation<EnglishSubjects[S]> };

/** The same messages in another language. A message that is missing, or is not there in English, does not compile. */
export type Translation<S extends Partial<Record<Code, unknown>>> = {
  readonly [C in keyof S & Code]: (args: ArgsOf<C>, say: Speaker) => string;
};

/** All of several arguments at once: a code chosen while it runs needs what any of its messages takes. */
type All<C extends Code> = (C extends Code ? (args: ArgsOf<C>) => void : never) extends (
  args: infer A,
) => void
  ? A
  : never;

/** A message with its arguments. */
export function message<C extends Code>(code: C, ...args: NoArgs extends All<C> ? [] : [All<C>]): Message<C> {
  return { code, args: args[0] ?? none };
}

const none: NoArgs = {};
