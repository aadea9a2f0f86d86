import type { Definition } from '../../model/scope.ts';
import { mixerCanBeCalibrated } from '../../rules/trials/mixer-can-be-calibrated.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';

export const teachMixer: Action = {
  id: 'teach-mixer',
  kind: 'rewrite',
  variants: true,
  name: 'Teach the mixer what the trials of a formula say',
  explanation:
    'Offered on a trial, and on the mix of a formula that has trials, where the readings miss what is computed: writes into the section of the mixer how fast ' +
    'it warms dough and, where that shows, how fast it develops it, as its trials have it, each with its standard error. It is the fix of the finding ' +
    '`mixer-can-be-calibrated`, offered where the readings stand.',
  example:
    'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\n' +
    'mix in hook:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n\n' +
    'trial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 14 °C\n  mixed in hook\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n  ‸at 3 min  20.5 °C\n  at 6 min  22.2 °C\n  end  24.5 °C\n',
  *offers(context) {
    const definition = taughtMixer(context);
    if (definition === undefined) return;
    const { block, firstLine, uri } = definition;
    for (const { fixes = [] } of mixerCanBeCalibrated.check?.({ uri, block, scope: context.scope }) ?? []) {
      const [fix] = fixes;
      if (fix === undefined) continue;
      const edits = fix.edits.map(({ line, endLine, start, end, insert }) => ({
        line: firstLine + line,
        ...(endLine === undefined ? {} : { endLine: firstLine + endLine }),
        start,
        end,
        insert,
      }));
      yield {
        title: message('teach-mixer.teach', { name: definition.name.text }),
        argument: definition.name.folded,
        edits: () => [{ uri, edits }],
      };
    }
  },
};

/** The section of the mixer that the trial or the mix at a place is of; undefined where no file has one. */
export function taughtMixer(context: ActionContext): Definition | undefined {
  const folded = mixerAt(context);
  return folded === undefined ? undefined : context.scope.find('mixer', folded)[0]?.[0];
}

/** The mixer that the trial or the mix at the cursor is of. */
function mixerAt({ block, line, analysis }: ActionContext): string | undefined {
  const section = block.subs.findLast(({ headerLine, endLine }) => headerLine <= line && line < endLine);
  if (section === undefined || (section.kind !== 'trial' && section.kind !== 'mix')) return undefined;
  const resolved = analysis()?.resolved;
  if (resolved === undefined || resolved.model.trials.length === 0) return undefined;
  for (let at = section.headerLine; at < section.endLine; at++) {
    const { statement } = block.lines[at]!;
    if (statement.kind === 'header' && statement.mixer !== undefined) return statement.mixer.folded;
    if (statement.kind === 'property' && statement.value?.form === 'mixedIn')
      return statement.value.name?.folded;
  }
  return resolved.model.mixes[0]?.header.mixer?.folded;
}
