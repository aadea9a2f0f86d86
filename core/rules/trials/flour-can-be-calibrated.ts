import { flourTrials } from '../../analysis/flour-trials.ts';
import { agreesWithBelieved } from '../../calc/calibration/calibration-development.ts';
import { propertiesOf } from '../../model/properties.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { lineBelowFix, replaceFix } from '../engine/fixes.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';

/** No flour of a known protein is so many times as quick, or as slow, as is usual of it; our own choice. */
const believable = 4;

const programme = '  load flour, water, salt\n  speed 1 for 6 min\n';

const triedIn = (mixer: string, name: string, day: number): string =>
  `formula ${name}:\n  yield 10 kg\n  Tide White  100%\n  water  65%\n  salt  2%\n\nmix in ${mixer}:\n${programme}\n` +
  `trial 2026-03-0${day}:\n  room 21 °C\n  flour 20 °C\n  water 20 °C\n  mixed in ${mixer}\n${programme}` +
  '  at 3 min  23 °C, developing\n  at 4 min  23.5 °C, developed\n';

const example = (peak: string): string =>
  `flour Tide White:\n  grain wheat\n  milling white\n  protein 13%\n${peak}\n` +
  `${triedIn('spiral', 'Quay Tin', 3)}\n${triedIn('planetary', 'Quay Batch', 4)}`;

export const flourCanBeCalibrated: Rule = {
  code: 'flour-can-be-calibrated',
  level: 'hint',
  title: 'Trials tell how fast doughs of this flour develop',
  explanation:
    'The stages seen in trials of doughs of this flour alone come sooner, or later, than worked out, and on two mixers or more (hands are one): ' +
    'then it is the flour’s. The fix writes the `peak` that agrees with them, the development time of the farinograph in minutes; the time that a dough ' +
    'needs goes with its root (common practice). What one mixer alone shows may be either’s: it widens the band and is written into neither. ' +
    'A mill’s own figure is better than ours, where you have it.',
  bad: example(''),
  good: example('  peak 2 min\n'),
  *check({ block, scope }) {
    const { top } = block;
    if (top?.kind !== 'flour' || top.header.name === undefined) return;
    const seen = flourTrials(block, top.header.name, scope);
    if (seen === undefined) return;
    const { least, most, mixers, readings, peakMinutes, formulas } = seen;
    if (agreesWithBelieved(seen)) return;
    const factor = Math.sqrt(least * most);
    const isOdd = factor > believable || factor < 1 / believable;
    const peak = `peak ${trimmed(peakMinutes / factor ** 2, 1)} min`;
    const line = propertiesOf(block, top).get('peak')?.[0]?.line;
    const title = message('flour-can-be-calibrated.fix', { meant: peak });
    const statement = line === undefined ? undefined : elementAt(block.lines, line).statement;
    const fix =
      line !== undefined && statement?.kind === 'property'
        ? replaceFix(title, line, { start: statement.keyword.start, end: statement.valueSpan.end }, peak)
        : lineBelowFix(
            title,
            block,
            block.lines.findLastIndex((one) => !one.empty),
            `  ${peak}`,
          );
    yield {
      ...headerPlace(block, top.headerLine),
      message: paragraph(
        message('flour-can-be-calibrated.flour', {
          count: readings,
          otherCount: mixers,
          name: top.header.name.text,
          lowFactor: least,
          highFactor: most,
          minutes: peakMinutes,
        }),
        isOdd ? message('flour-can-be-calibrated.far-off') : undefined,
      ),
      related: formulas.map((definition) => ({
        definition,
        message: message('flour-can-be-calibrated.trial'),
      })),
      // A figure that somebody wrote, the mill’s perhaps, is not replaced without a look.
      fixes: [isOdd || line !== undefined ? fix : { ...fix, preferred: true }],
    };
  },
};
