import { describe, expect, it } from 'vitest';
import { createService, type Service } from '../../core/index.ts';
import { withEdits } from '../../core/text/edits.ts';
import { tablesIn } from './parts.ts';

// Invented mixer, formula and readings: those of the page of the rule, and a second trial that misses by less.
const uri = 'file:///quay/tin.dough';
const mixerUri = 'file:///quay/mixers.dough';
const mixer = 'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n';
const programme = '  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n';
const day = '  room 21 °C\n  flour 20 °C\n  water 14 °C\n  mixed in hook\n';
const formula =
  `formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in hook:\n${programme}` +
  `\ntrial 2026-03-03:\n${day}${programme}  at 3 min  20.5 °C\n  at 6 min  22.2 °C\n  end  24.5 °C\n` +
  `\ntrial 2026-03-04:\n${day}${programme}  at 3 min  19.4 °C\n`;

describe('a trial on the sheet that can teach its mixer', () => {
  it('says so at the trial that misses most, and nowhere else', () => {
    const [first, second] = trialsOf(serviceWith(mixer));
    expect(first?.teach).toEqual({ mixer: 'hook', words: 'Teach “hook” what its trials say' });
    expect(first?.notes?.join(' ')).toMatch(/miss/);
    expect(second?.teach).toBeUndefined();
  });

  it('writes what the action at the trial writes, and once more after undo', () => {
    const service = serviceWith(mixer);
    const line = formula.split('\n').indexOf('trial 2026-03-03:');
    const action = service.actionEdits(uri, { line, start: 0, endLine: line, end: 0 }, 'teach-mixer', 'hook');
    for (const _ of ['first', 'after undo']) {
      service.setText(mixerUri, mixer);
      const edits = service.panelEdits(uri, 0, { kind: 'teach', line });
      if ('refused' in edits) throw new Error(edits.refused);
      expect(edits).toEqual(action);
      const taught = withEdits(mixer, edits[0]!.edits);
      expect(taught).toMatch(/speed 1 100 rpm, warms [\d.]+ °C\/min within/);
      service.setText(mixerUri, taught);
      expect(trialsOf(service).map(({ teach }) => teach)).toEqual([undefined, undefined]);
      expect(service.panelEdits(uri, 0, { kind: 'teach', line })).toEqual({
        refused: 'The mixer says what its trials say already; nothing was written.',
      });
    }
  });

  it('keeps the line ends of the mixer’s file', () => {
    const service = serviceWith(mixer.replaceAll('\n', '\r\n'));
    const line = formula.split('\n').indexOf('trial 2026-03-03:');
    const edits = service.panelEdits(uri, 0, { kind: 'teach', line });
    if ('refused' in edits) throw new Error(edits.refused);
    const taught = withEdits(mixer.replaceAll('\n', '\r\n'), edits[0]!.edits);
    expect(taught).toMatch(/warms/);
    expect(taught.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('is silent where no file has the mixer', () => {
    expect(trialsOf(serviceWith('')).map(({ teach }) => teach)).toEqual([undefined, undefined]);
  });
});

function serviceWith(text: string): Service {
  const service = createService();
  service.setText(uri, formula);
  service.setText(mixerUri, text);
  return service;
}

const trialsOf = (service: Service) => tablesIn(service.sheet(uri, 0, {})!.sections, 'trial');
