import { describe, expect, it } from 'vitest';
import { createFollower, type Follower } from '../../client/preview/follower.ts';
import { formulaKey } from '../../client/preview/messages.ts';
import type { SheetDocument, SheetOptions, SheetParams, SheetResult } from '../../server/protocol.ts';
import { emptyFormula, harbourTin } from './sheets.ts';

const place = { uri: harbourTin.uri, line: 5 };
const pieces48: SheetOptions = { size: { by: 'pieces', pieces: 48 } };

describe('following the formula at the cursor', () => {
  it('asks for the sheet as in the file and shows it', async () => {
    const { follower, asked, shown } = following(answerByLine);
    await follower.follow(place);
    expect(asked).toEqual([{ textDocument: { uri: place.uri }, line: 5 }]);
    expect(shown).toEqual([[1, harbourTin]]);
    expect(follower.sheet).toBe(shown[0]?.[1]);
  });

  it('shows nothing where no formula stands', async () => {
    const { follower, shown } = following(async () => null);
    await follower.follow(place);
    expect(shown).toEqual([[1, 'no-formula']]);
  });

  it('keeps what it shows of a file with another name until the server knows that name', async () => {
    const moved = 'file:///quay-lane/quay-ferry.dough';
    let isKnown = false;
    const { follower, shown } = following(async ({ textDocument }) =>
      textDocument.uri === place.uri ? harbourTin : isKnown ? { ...harbourTin, uri: moved } : null,
    );
    await follower.follow({ ...place, formula: harbourTin.formula });
    await follower.renamed(place.uri, moved);
    expect(shown).toEqual([[1, harbourTin]]);
    isKnown = true;
    await follower.changed([moved]);
    expect(shown.at(-1)?.[1]).toMatchObject({ uri: moved });
  });

  it('never shows an answer that comes in after a newer one', async () => {
    const answers: ((sheet: SheetResult) => void)[] = [];
    const { follower, shown } = following(() => new Promise((resolve) => answers.push(resolve)));
    const first = follower.follow(place);
    const second = follower.follow({ ...place, line: 41 });
    answers[1]!(emptyFormula);
    await second;
    answers[0]!(harbourTin);
    await first;
    expect(shown).toEqual([[2, emptyFormula]]);
  });

  it('tells the server that an overtaken answer is not wanted', async () => {
    const signals: AbortSignal[] = [];
    const { follower } = following(async (_, signal) => {
      signals.push(signal);
      return harbourTin;
    });
    await Promise.all([follower.follow(place), follower.follow({ ...place, line: 6 })]);
    expect(signals.map((signal) => signal.aborted)).toEqual([true, false]);
  });

  it('asks again when the numbers of its own file changed, and not for other files', async () => {
    const { follower, asked } = following(answerByLine);
    await follower.follow(place);
    await follower.changed(['file:///quay-lane/other.dough']);
    expect(asked).toHaveLength(1);
    await follower.changed(['file:///quay-lane/other.dough', place.uri]);
    expect(asked).toHaveLength(2);
  });

  it('gives up what it asked when the server stops', async () => {
    let answer: (sheet: SheetResult) => void = () => {};
    const { follower, shown } = following(() => new Promise((resolve) => (answer = resolve)));
    const asking = follower.follow(place);
    follower.clear('no-server');
    answer(harbourTin);
    await asking;
    expect(shown).toEqual([[2, 'no-server']]);
  });
});

describe('what is tried', () => {
  it('belongs to one formula of one file', async () => {
    const { follower, asked, tried } = following(answerByLine);
    tried.set(formulaKey(harbourTin.uri, harbourTin.formula), pieces48);
    await follower.follow(place);
    // Only the first answer names the formula.
    expect(asked.map(({ size }) => size)).toEqual([undefined, pieces48.size]);
    await follower.follow({ ...place, line: 41 });
    expect(asked.slice(2).map(({ size }) => size)).toEqual([pieces48.size, undefined]);
    await follower.follow({ ...place, formula: harbourTin.formula });
    expect(asked.slice(4).map(({ size }) => size)).toEqual([pieces48.size]);
  });

  it('is asked for with the day and the clock', async () => {
    const { follower, asked, tried } = following(answerByLine);
    const all: SheetOptions = { today: { roomCelsius: 27 }, clock: { by: 'ready', minutes: 390 } };
    tried.set(formulaKey(harbourTin.uri, harbourTin.formula), all);
    await follower.follow({ ...place, formula: harbourTin.formula });
    expect(asked).toEqual([
      { textDocument: { uri: place.uri }, line: 5, formula: harbourTin.formula, ...all },
    ]);
  });
});

/** Line 40 and below is the empty formula, what stands above is Harbour Tin. */
async function answerByLine({ line }: SheetParams): Promise<SheetResult> {
  return line >= emptyFormula.line ? emptyFormula : harbourTin;
}

function following(answer: (params: SheetParams, signal: AbortSignal) => Promise<SheetResult>): {
  follower: Follower;
  asked: SheetParams[];
  shown: [number, SheetDocument | string][];
  tried: Map<string, SheetOptions>;
} {
  const asked: SheetParams[] = [];
  const shown: [number, SheetDocument | string][] = [];
  const tried = new Map<string, SheetOptions>();
  const follower = createFollower({
    ask: (params, signal) => {
      asked.push(params);
      return answer(params, signal);
    },
    show: (sequence, sheet) => shown.push([sequence, sheet]),
    showNothing: (sequence, why) => shown.push([sequence, why]),
    triedOf: (uri, formula) => tried.get(formulaKey(uri, formula)) ?? {},
  });
  return { follower, asked, shown, tried };
}
