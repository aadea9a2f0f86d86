import { mostMoisture } from '../../catalogue/flour-types.ts';
import { fractionOf, propertiesOf } from '../../model/properties.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { quantityPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const moistFlour: Rule = {
  code: 'moist-flour',
  level: 'warning',
  title: 'A flour wetter than flour may be',
  explanation:
    'The Codex Alimentarius allows wheat flour 15.5% of moisture (CXS 152-1985), Italian law 14.5%: wetter flour does not keep. Most often the ' +
    'number is a slip, and every figure that is taken to 14% moisture goes wrong with it. Flour comes at 13 to 15%.',
  bad: 'flour dock white:\n  protein 12.5%\n  moisture 24%\n',
  good: 'flour dock white:\n  protein 12.5%\n  moisture 14.2%\n',
  *check({ block }) {
    const { top } = block;
    if (top?.kind !== 'flour') return;
    const said = propertiesOf(block, top);
    for (const property of ['moisture', 'water']) {
      const moisture = fractionOf(said, property);
      const line = said.get(property)?.[0]?.line;
      if (moisture === undefined || line === undefined || moisture <= mostMoisture.Codex + 1e-9) continue;
      yield {
        line,
        span: quantityPlace(block, line, 'fraction') ?? wordsOf(block, line),
        message: message('moist-flour.above', { fraction: moisture, limitFraction: mostMoisture.Codex }),
      };
      return;
    }
  },
};
