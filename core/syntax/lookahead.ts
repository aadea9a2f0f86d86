import { type ILookaheadStrategy, LLkLookaheadStrategy } from 'chevrotain';

/**
 * Works out what a place of the grammar looks ahead for when a line comes there first. All places together take as long as
 * everything else that happens until the first findings, and a file comes to a third of them.
 */
export class LookaheadWhenNeeded extends LLkLookaheadStrategy {
  override buildLookaheadForAlternation(
    place: Parameters<ILookaheadStrategy['buildLookaheadForAlternation']>[0],
  ): Choice {
    return whenNeeded(() => super.buildLookaheadForAlternation(place));
  }

  override buildLookaheadForOptional(
    place: Parameters<ILookaheadStrategy['buildLookaheadForOptional']>[0],
  ): () => boolean {
    return whenNeeded(() => super.buildLookaheadForOptional(place));
  }
}

type Choice = ReturnType<ILookaheadStrategy['buildLookaheadForAlternation']>;

/** The function that is made at the first call. The parser is `this` of each call, for its tokens are looked at. */
function whenNeeded<A extends unknown[], R>(make: () => (...args: A) => R): (...args: A) => R {
  let made: ((...args: A) => R) | undefined;
  return function (this: unknown, ...args: A): R {
    made ??= make();
    return made.apply(this, args);
  };
}
