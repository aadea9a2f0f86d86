import type { Analysis } from '../analysis/analysis.ts';
import { waterLever } from '../analysis/water-axis.ts';
import { curvePhases } from '../facts/programme-curve.ts';
import type { ActionContext } from '../features/actions/action.ts';
import { otherFlours } from '../features/actions/flour-change.ts';
import type { WhatIfFields } from '../sheet/build/sheet-document.ts';
import type { Speaker } from '../words/speaker.ts';
import { secondsOf, timedLines } from './what-if.ts';

/** What of a formula can be tried, as its file has it and, of the water, as it is `tried`; undefined where there is nothing. */
export function whatIfFields(
  context: ActionContext,
  speaker: Speaker,
  tried?: Analysis,
): WhatIfFields | undefined {
  const analysis = context.analysis();
  if (analysis === undefined) return undefined;
  const lever = waterLever(analysis);
  const { amount } = lever?.line ?? {};
  const triedAmount = tried === undefined ? undefined : waterLever(tried)?.amount;
  const fields: WhatIfFields = {
    lines: linesOf(analysis, speaker),
    ...(lever === undefined || amount === undefined
      ? {}
      : {
          water: {
            name: lever.line.name,
            amount: lever.amount,
            ...(triedAmount === undefined ? {} : { tried: triedAmount }),
            measure: amount.kind === 'grams' ? ('grams' as const) : ('fraction' as const),
          },
        }),
    flours: floursOf(context, analysis),
  };
  const isEmpty = fields.lines.length === 0 && fields.water === undefined && fields.flours.length === 0;
  return isEmpty ? undefined : fields;
}

function linesOf(analysis: Analysis, speaker: Speaker): WhatIfFields['lines'] {
  const { doughMix } = analysis;
  const titles = new Map(
    doughMix.known ? curvePhases(doughMix.value).map(({ line, title }) => [line, speaker.say(title)]) : [],
  );
  return timedLines(analysis).flatMap(({ line, statement: { value } }, index) => {
    const [name, seconds] = [titles.get(line), secondsOf(value)];
    return name === undefined || seconds === undefined ? [] : [{ index, name, minutes: seconds / 60 }];
  });
}

function floursOf(context: ActionContext, { resolved, solved }: Analysis): WhatIfFields['flours'] {
  return (solved?.overall ?? []).flatMap(({ key, name, isFlour }) => {
    const ingredient = resolved.ingredients.get(key);
    if (!isFlour || ingredient?.flour === undefined) return [];
    const others = otherFlours(context, ingredient).map((one) => one.name);
    return others.length === 0 ? [] : [{ name, others }];
  });
}
