import { type Display, worded } from '../text/display.ts';
import type { Steps } from '../text/steps.ts';
import type { Service } from './service.ts';

/**
 * The service with every figure in its answers written out as it is set now. What is kept inside does not know how it
 * will be shown, so a change of these settings computes nothing anew. This is the only way out of the core.
 */
export function wordedAnswers(display: () => Display, service: Service): Service {
  const members = Object.entries(service).map(([name, member]: [string, unknown]) => [
    name,
    typeof member === 'function'
      ? (...args: unknown[]) => {
          const answer = (member as (...args: unknown[]) => unknown)(...args);
          return isSteps(answer) ? wordedSteps(answer, display) : worded(answer, display());
        }
      : member,
  ]);
  return Object.fromEntries(members) as Service;
}

function* wordedSteps(steps: Steps<unknown>, display: () => Display): Steps<unknown> {
  return worded(yield* steps, display());
}

function isSteps(answer: unknown): answer is Steps<unknown> {
  return typeof (answer as { next?: unknown } | undefined | null)?.next === 'function';
}
