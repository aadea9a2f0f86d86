import { describe, expect, it } from 'vitest';
import type {
  EditResult,
  ExperimentParams,
  ExperimentResult,
  OverlayParams,
  OverlayResult,
} from '../../server/protocol.ts';
import type { Client } from './client.ts';
import { startClient } from './places.ts';

const uri = 'untitled:Bench';
const text = [
  'formula Quay White:\n  yield 2 kg\n  strong white  100%\n  water  66%, at 12 °C\n  salt  2%',
  'experiment How long:\n  dough Quay White, by hand, knead 20 min\n  read at 8, 16 min',
  'experiment Longer:\n  dough Quay White, by hand, knead 40 min\n  read at 30 min\n',
].join('\n\n');

async function opened(): Promise<Client> {
  const client = await startClient();
  await client.open(uri, text);
  return client;
}

function ask(client: Client, params: Partial<ExperimentParams>): Promise<ExperimentResult> {
  return client.connection.sendRequest('doughwright/experiment', {
    ...{ textDocument: { uri }, line: 0 },
    ...params,
  });
}

describe('an experiment asked of the server', () => {
  it('is that of the name, else that of the line, as a page, as one to print and for the bench', async () => {
    const client = await opened();
    expect(await ask(client, { line: 11 })).toMatchObject({
      page: { title: 'Longer' },
      html: expect.stringMatching(/^<!doctype html>/),
      bench: { experiment: 'Longer', doughs: [{ name: 'Quay White', readings: [{ minutes: 30 }] }] },
    });
    expect(await ask(client, { line: 11, experiment: 'How long' })).toMatchObject({
      bench: { experiment: 'How long', doughs: [{ readings: [{ minutes: 8 }, { minutes: 16 }] }] },
    });
    const hidden = await ask(client, { sheet: { hidden: true } });
    expect(JSON.stringify(hidden && 'page' in hidden ? hidden.page : '')).not.toContain('±');
  });

  it('is none where the line must stand in one and does not', async () => {
    const client = await opened();
    const cannot = 'Put the cursor into a section that begins with “experiment NAME:”.';
    expect(await ask(client, { line: 1, here: true })).toEqual({ cannot });
    expect(await ask(client, { line: 7, here: true })).toMatchObject({ bench: { experiment: 'How long' } });
  });

  it('logs a reading as an edit of its formula', async () => {
    const client = await opened();
    const asked = (dough: string): Promise<EditResult> =>
      client.connection.sendRequest('doughwright/logTested', {
        ...{ textDocument: { uri }, experiment: 'How long', dough },
        reading: { date: '2026-05-02', minutes: 8, celsius: 26 },
      });
    expect(JSON.stringify(await asked('Quay White'))).toContain(
      String.raw`trial 2026-05-02:\n  experiment How long\n  mixed by hand\n  load all\n  knead 20 min\n  at 8 min   26 °C`,
    );
    expect(await asked('Nobody')).toEqual({ cannot: 'The formula is not in the file any more.' });
  });

  it('leads from the line over its header to its sheet, for a client that has the command', async () => {
    const client = await startClient({
      initializationOptions: { commands: ['doughwright.openExperiment'] },
    } as never);
    await client.open(uri, text);
    const lenses = await client.connection.sendRequest<
      readonly { command?: { title: string; command: string } }[]
    >('textDocument/codeLens', { textDocument: { uri } });
    expect(lenses.map(({ command }) => command)).toContainEqual({
      ...{ title: '1 dough · sheet and bench', command: 'doughwright.openExperiment' },
      arguments: [{ uri, line: 6 }],
    });
  });
});

describe('formulas laid over each other', () => {
  const laid = (client: Client, ...formulas: OverlayParams['formulas']): Promise<OverlayResult> =>
    client.connection.sendRequest('doughwright/overlay', { formulas });

  it('are a page with one chart and one table, of another text of the file too', async () => {
    const client = await opened();
    const other = { text: text.replace('66%', '72%'), revision: '8eaa6f2d' };
    const one = { uri, formula: 'Quay White' };
    expect(await laid(client, one, { ...one, other })).toMatchObject({
      page: {
        tables: [{ columns: [{}, { name: 'Quay White' }, { name: 'Quay White, 8eaa6f2d' }] }],
      },
      html: expect.stringContaining('72%'),
    });
    const none = { ...one, other: { text: '', revision: '8eaa6f2d' } };
    expect(await laid(client, one, none)).toEqual({
      cannot: '“Quay White” is not in the file as 8eaa6f2d has it.',
    });
    expect(await laid(client, one)).toEqual({
      cannot: 'Name two formulas at least, or one and a revision of git that it is laid over.',
    });
  });
});
