import { expect, it } from 'vitest';
import { createService, type SheetOptions, withEdits } from '../../core/index.ts';
import { exampleFiles } from '../syntax/texts.ts';
import { weighedOf } from './parts.ts';

const sizes: readonly SheetOptions['size'][] = [
  undefined,
  { by: 'pieces', pieces: 7 },
  { by: 'pieces', pieces: 48 },
  { by: 'dough', grams: 12_345 },
  { by: 'flour', grams: 7_777 },
  { by: 'baked', grams: 9000 },
  { by: 'bowl', batches: 2 },
];
const waters = [undefined, 0.55, 0.723];
// At a tenth of a gram the last figure may turn, for what is written has five figures behind the point of a kilogram.
const scaleSteps = [undefined, 1, 5];
const extras = ['', '  keep back 3%\n', '  salt flakes  0.05 g\n  keep back 250 g\n'];

// The formulas of the demo, each as it is and with what is easily lost: kept back, and weights of hardly anything.
const formulas = exampleFiles().filter(({ text }) => /^formula /m.test(text));

it.each(formulas)(
  '$path: what is kept is the sheet that was shown',
  { timeout: 120_000 },
  ({ path, text }) => {
    const uri = `file:///quay/${path}`;
    const service = createService();
    service.setRoots(['file:///quay/']);
    const texts = new Map(exampleFiles().map((one) => [`file:///quay/${one.path}`, one.text]));
    const different: string[] = [];
    let kept = 0;
    for (const [turn, extra] of extras.entries()) {
      texts.set(
        uri,
        text.replace(/^formula .*\n(?: .*\n)*?(?= +[\w ]+\d+ ?%)/m, (head) => head + extra),
      );
      for (const [index, size] of sizes.entries()) {
        for (const [file, one] of texts) service.setText(file, one);
        const [water, scaleStepGrams] = [waters[(turn + index) % 3], scaleSteps[(2 * turn + index) % 3]];
        const asked: SheetOptions = {
          ...(size && { size }),
          ...(water && { whatIf: { water } }),
          ...(scaleStepGrams && { today: { scaleStepGrams } }),
        };
        const shown = service.sheet(uri, headerLine(service.lines(uri)), asked);
        const edits = service.panelEdits(uri, headerLine(service.lines(uri)), { kind: 'keep', asked });
        if (shown === undefined || shown.notDone.length > 0 || 'refused' in edits) continue;
        for (const one of edits) service.setText(one.uri, withEdits(texts.get(one.uri) ?? '', one.edits));
        kept++;
        const before = JSON.stringify(weighedOf(shown));
        const after = JSON.stringify(weighedOf(service.sheet(uri, headerLine(service.lines(uri)), {})!));
        if (before !== after) different.push(`${extra.trim()} ${JSON.stringify(asked)}\n${before}\n${after}`);
      }
    }
    expect(kept).toBeGreaterThan(10);
    expect(different.slice(0, 3).join('\n\n'), `${different.length} of ${kept} differ`).toBe('');
  },
);

const headerLine = (lines: readonly string[]): number => lines.findIndex((one) => one.startsWith('formula '));
