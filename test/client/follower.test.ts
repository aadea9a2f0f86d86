import { describe, expect, it } from 'vitest';
import { createFollower, type Follower } from '../../client/preview/follower.ts';
import { sizeKey, type ToPage } from '../../client/preview/messages.ts';
import type { SheetParams, SheetResult, SizeRequest } from '../../server/protocol.ts';
import { emptyFormula, harbourTin } from './sheets.ts';

const place = { uri: harbourTin.uri, line: 5 };
const pieces48: SizeRequest = { by: 'pieces', pieces: 48 };

describe('following the formula at the cursor', () => {
  it('asks for the sheet as in the file and shows it', async () => {
    const { follower, asked, shown } = following(answerByLine);
    await follower.follow(place);
    expect(asked).toEqual([{ textDocument: { uri: place.uri }, line: 5, size: { by: 'file' } }]);
    expect(shown).toEqual([{ type: 'sheet', sequence: 1, sheet: harbourTin }]);
  });

  it('shows nothing where no formula stands', async () => {
    const { follower, shown } = following(async () => null);
    await follower.follow(place);
    expect(shown).toEqual([{ type: 'nothing', sequence: 1, why: 'no-formula' }]);
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
    expect(shown).toEqual([{ type: 'sheet', sequence: 2, sheet: emptyFormula }]);
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
    expect(shown).toEqual([{ type: 'nothing', sequence: 2, why: 'no-server' }]);
  });
});

describe('the size of a batch', () => {
  it('belongs to one formula of one file', async () => {
    const { follower, asked, shown } = following(answerByLine);
    await follower.follow(place);
    await follower.resize(harbourTin.uri, harbourTin.formula, pieces48);
    await follower.follow({ ...place, line: 41 });
    await follower.follow(place);
    const sizesShown = shown.map((message) =>
      message.type === 'sheet' ? message.sheet.size.asked : undefined,
    );
    expect(sizesShown).toEqual([{ by: 'file' }, pieces48, { by: 'file' }, pieces48]);
    expect(asked.at(-1)).toEqual({ textDocument: { uri: place.uri }, line: 5, size: pieces48 });
  });

  it('comes back after a reload', async () => {
    const { follower, shown } = following(answerByLine);
    follower.restoreSizes({ [sizeKey(harbourTin.uri, harbourTin.formula)]: pieces48 });
    await follower.follow({ ...place, formula: harbourTin.formula });
    expect(shown).toMatchObject([{ type: 'sheet', sheet: { size: { asked: pieces48 } } }]);
  });

  it('that was set since wins over one kept from before', async () => {
    const { follower, asked } = following(answerByLine);
    await follower.follow(place);
    await follower.resize(harbourTin.uri, harbourTin.formula, { by: 'dough', grams: 9000 });
    follower.restoreSizes({ [sizeKey(harbourTin.uri, harbourTin.formula)]: pieces48 });
    await follower.refresh();
    expect(asked.at(-1)?.size).toEqual({ by: 'dough', grams: 9000 });
  });
});

/** Line 40 and below is the empty formula, what stands above is Harbour Tin, each sized as asked. */
async function answerByLine({ line, size }: SheetParams): Promise<SheetResult> {
  const sheet = line >= emptyFormula.line ? emptyFormula : harbourTin;
  return { ...sheet, size: { ...sheet.size, asked: size ?? { by: 'file' } } };
}

function following(answer: (params: SheetParams, signal: AbortSignal) => Promise<SheetResult>): {
  follower: Follower;
  asked: SheetParams[];
  shown: ToPage[];
} {
  const asked: SheetParams[] = [];
  const shown: ToPage[] = [];
  const follower = createFollower({
    ask: (params, signal) => {
      asked.push(params);
      return answer(params, signal);
    },
    show: (message) => shown.push(message),
  });
  return { follower, asked, shown };
}
