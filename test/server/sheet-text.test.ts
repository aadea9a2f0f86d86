import { describe, expect, it } from 'vitest';
import type { SheetTextParams, SheetTextResult } from '../../server/protocol.ts';
import type { Client } from './client.ts';
import { startClient } from './places.ts';

const uri = 'untitled:Harbour';
const text =
  'formula Harbour Tin:\n  yield 10 pieces of 1 kg\n  strong white  100%\n  water  66%\n  salt  2%\n';
const origin = { file: 'harbour.dough', commit: '8eaa6f2d', changed: true, date: '2026-03-14' };

function ask(client: Client, params: Partial<SheetTextParams> = {}): Promise<SheetTextResult> {
  return client.connection.sendRequest('doughwright/sheetText', {
    ...{ textDocument: { uri }, line: 2, format: 'text', origin },
    ...params,
  });
}

async function opened(): Promise<Client> {
  const client = await startClient();
  await client.open(uri, text);
  return client;
}

describe('a sheet written by the server', () => {
  it('is that of the formula at the line, in the format asked for, with the origin it is told', async () => {
    const client = await opened();
    const said = 'harbour.dough · revision 8eaa6f2d, with changes since · 2026-03-14';
    const page = await ask(client, { format: 'html' });
    expect(page?.formula).toBe('Harbour Tin');
    expect(page?.text).toMatch(/^<!doctype html>/);
    expect(page?.text).toContain(said);
    expect((await ask(client))?.text).toContain(said);
    expect((await ask(client, { format: 'tabbed' }))?.text).toMatch(
      /^formula\tpart\tname\tweigh\tunit\tgrams\t/,
    );
    expect((await ask(client, { format: 'csv' }))?.text).toMatch(/^formula,part,when,/);
    expect(JSON.parse((await ask(client, { format: 'json' }))!.text)[0]).toMatchObject({
      file: 'harbour.dough',
    });
  });

  it('has the size and the day that are tried, of the text as it is typed', async () => {
    const client = await opened();
    client.change(uri, text.replace('66%', '70%'));
    const answer = await ask(client, {
      formula: 'Harbour Tin',
      size: { by: 'pieces', pieces: 24 },
      today: { roomCelsius: 27 },
      clock: { by: 'ready', minutes: 390 },
    });
    expect(answer?.text).toMatch(/Makes +24 pieces of 1 kg/);
    expect(answer?.text).toMatch(/Hydration +70%/);
    expect(answer?.text).toMatch(/Room +27 °C, tried today/);
  });

  it('is none where no formula stands', async () => {
    const client = await opened();
    expect(await ask(client, { textDocument: { uri: 'untitled:Nowhere' } })).toBeNull();
    client.change(uri, '# Quay Lane\n');
    expect(await ask(client)).toBeNull();
  });
});
