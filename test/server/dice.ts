/** Numbers that look random and are the same for the same seed: the generator of Park and Miller (1988), 48271 for 16807. */
export class Dice {
  #state: number;

  constructor(seed: number) {
    this.#state = ((seed * 48_271) % 2_147_483_647) + 1;
    for (let turn = 0; turn < 5; turn++) this.below(2);
  }

  /** A whole number from 0 up to, and without, the limit. */
  below(limit: number): number {
    this.#state = (this.#state * 48_271) % 2_147_483_647;
    return Math.floor((this.#state / 2_147_483_647) * limit);
  }

  one<T>(of: readonly T[]): T {
    return of[this.below(of.length)]!;
  }
}
