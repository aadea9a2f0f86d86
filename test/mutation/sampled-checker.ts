import { relative } from 'node:path';
import { type CheckResult, CheckStatus } from '@stryker-mutator/api/check';
import type { Mutant, MutantResult } from '@stryker-mutator/api/core';
import { declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { isTaken } from './sample.ts';
import { tell } from './tell.ts';

/**
 * Lets through the mutants of the sample and none of those that lie within them. The others are reported as not compiling, which no
 * score counts.
 */
export const strykerPlugins = [
  declareFactoryPlugin(PluginKind.Checker, 'sampled', sampledChecker),
  declareFactoryPlugin(PluginKind.Reporter, 'survivors', survivorsAtOnce),
];

const passed: CheckResult = { status: CheckStatus.Passed };
const notTaken: CheckResult = { status: CheckStatus.CompileError, reason: 'not sampled' };

sampledChecker.inject = tokens();
survivorsAtOnce.inject = tokens();

/** Tells of each survivor when it is known, for a long run may be ended before its end. */
function survivorsAtOnce() {
  let run = 0;
  return {
    onMutantTested: (mutant: MutantResult): void => {
      if (mutant.status === 'CompileError') return;
      run++;
      if (mutant.status === 'Survived' || mutant.status === 'NoCoverage')
        console.log(`${run}: ${tell(mutant)}`);
    },
  };
}

function sampledChecker() {
  const asked = {
    share: Number(process.env.MUTATION_SHARE ?? 1),
    seed: process.env.MUTATION_SEED ?? '1',
  };
  const project = process.env.MUTATION_PROJECT ?? process.cwd();
  return {
    init: async (): Promise<void> => undefined,
    check: async (mutants: Mutant[]) =>
      Object.fromEntries(
        mutants.map((mutant) => [
          mutant.id,
          isTaken(mutant, relative(project, mutant.fileName), asked) ? passed : notTaken,
        ]),
      ),
    group: async (mutants: Mutant[]) => [mutants.map(({ id }) => id)],
  };
}
