import fc from 'fast-check';

/**
 * Random cases are the same in every run, so that a build that goes red does so by its change. `SEED=7 npm run test:unit` takes
 * others, and `npm run fuzz` looks for faults with new ones each time.
 */
fc.configureGlobal({ seed: Number(process.env.SEED ?? 20_261_130) });
