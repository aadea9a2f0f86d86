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
];
const waters = [undefined, 0.55, 0.723];
const scaleSteps = [undefined, 0.1, 5];
const extras = ['', '  keep back 3%\n', '  keep back 250 g\n', '  saffron threads  0.05 g\n', '  salt flakes  0.05 g\n  keep back 120 g\n'];

// The formulas of the demo, each as it is and with what is easily lost: kept back, and weights of hardly anything.
const formulas = exampleFiles().filter(({ text }) => /^formula /m.test(text));

it.each(formulas)('$path: what is kept is the sheet that was shown', ({ path, text }) => {
  const uri = `file:///quay/${path}`;
  const service = createService();
  service.setRoots(['file:///quay/']);
  const texts = new Map(exampleFiles().map((one) => [`file:///quay/${one.path}`, one.text]));
  const different: string[] = [];
  let kept = 0;
  for (const extra of extras) {
    texts.set(uri, text.replace(/^formula .*\n(?: .*\n)*?(?= +[\w ]+\d+ ?%)/m, (head) => head + extra));
    for (const size of sizes)
      for (const water of waters)
        for (const scaleStepGrams of scaleSteps) {
          for (const [file, one] of texts) service.setText(file, one);
          const asked: SheetOptions = {
            ...(size && { size }),
            ...(water && { whatIf: { water } }),
            ...(scaleStepGrams && { today: { scaleStepGrams } }),
          };
          const line = service.lines(uri).findIndex((one) => one.startsWith('formula '));
          const shown = service.sheet(uri, line, asked);
          const edits = service.panelEdits(uri, line, { kind: 'keep', asked });
          if (shown === undefined || shown.notDone.length > 0 || 'refused' in edits) continue;
          for (const one of edits) service.setText(one.uri, withEdits(texts.get(one.uri) ?? '', one.edits));
          const now = service.lines(uri).findIndex((one) => one.startsWith('formula '));
          kept++;
          const before = JSON.stringify(weighedOf(shown));
          const after = JSON.stringify(weighedOf(service.sheet(uri, now, {})!));
          if (before !== after) different.push(`${extra.trim()} ${JSON.stringify(asked)}\n${before}\n${after}`);
        }
  }
  expect(kept).toBeGreaterThan(20);
  expect(different.slice(0, 3).join('\n\n'), `${different.length} of ${kept} differ`).toBe('');
});
