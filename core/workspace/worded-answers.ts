import { type Display, worded } from '../text/display.ts';
import type { Service } from './service.ts';

/**
 * The service with every figure in its answers written out as it is set now. What is kept inside does not know how it
 * will be shown, so a change of these settings computes nothing anew. This is the only way out of the core.
 */
export function wordedAnswers(display: () => Display, service: Service): Service {
  const members = Object.entries(service).map(([name, member]: [string, unknown]) => [
    name,
    typeof member === 'function'
      ? (...args: unknown[]) => worded((member as (...args: unknown[]) => unknown)(...args), display())
      : member,
  ]);
  return Object.fromEntries(members) as Service;
}
