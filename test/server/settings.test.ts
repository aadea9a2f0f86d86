import { describe, expect, it } from 'vitest';
import type { CodeLens, Hover, InlayHint } from 'vscode-languageserver-protocol';
import { plainSpeaker } from '../../core/index.ts';
import { readSettings } from '../../server/sync/settings.ts';
import type { Client } from './client.ts';
import { startClient, withoutLanguages } from './places.ts';

const uri = 'untitled:Harbour';
const text = `formula Harbour Tin:
  yield 10 pieces of 880 g
  dough temperature 25 °C
  bread flour   100%
  water                65%
  salt                 2%
  fresh yeast          1%

mix in spiral:
  load flour, water, salt, yeast
  speed 1 for 3 min
  speed 2 for 4 min

preferment poolish:
  draws 20% of flour
  bread flour   100%
  water                100%
`;

async function opened(settings: unknown = {}): Promise<Client> {
  const client = await startClient({ settings });
  await client.open(uri, text);
  return client;
}

async function set(client: Client, settings: unknown): Promise<void> {
  client.settings = settings;
  await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
}

async function hover(client: Client, line: number): Promise<string> {
  const answer = await client.connection.sendRequest<Hover>('textDocument/hover', {
    textDocument: { uri },
    position: { line, character: 4 },
  });
  return JSON.stringify(answer.contents);
}

function hints(client: Client): Promise<InlayHint[]> {
  const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  return client.connection.sendRequest('textDocument/inlayHint', { textDocument: { uri }, range });
}

async function sheet(client: Client): Promise<string> {
  const view = await client.connection.sendRequest('doughwright/sheet', { textDocument: { uri }, line: 0 });
  return JSON.stringify(view);
}

describe('the language', () => {
  const faulty = 'formula Harbour Tin:\n  bread flour 100%\n  water 65%\n  salt 20%\n';
  const found = async (client: Client): Promise<string> =>
    (client.published.findLast((one) => one.uri === uri)?.diagnostics ?? [])
      .map(({ message }) => message)
      .join();
  const german = /20\u00a0% Salz auf das gesamte Mehl/;
  const english = /20% salt on all flour/;
  const french = /20\u00a0% de sel sur la farine totale/;

  it.each([
    ['de', german],
    ['de-AT', german],
    ['de-ch', german],
    ['en-GB', english],
    ['fr', french],
    ['fr-CA', french],
    ['it', english],
    [undefined, english],
  ])('is that of the editor: %s', async (locale, words) => {
    const client = await startClient(locale === undefined ? {} : { locale });
    await client.open(uri, faulty);
    await expect.poll(() => found(client)).toMatch(words);
  });

  it('is that of the setting where there is one, and changes with it at once', async () => {
    const client = await startClient({ locale: 'de', settings: { language: 'en' } });
    await client.open(uri, faulty);
    await expect.poll(() => found(client)).toMatch(english);
    await set(client, { language: 'editor' });
    await expect.poll(() => found(client)).toMatch(german);
    await set(client, { language: 'en' });
    await expect.poll(() => found(client)).toMatch(english);
    await set(client, { language: 'de' });
    await expect.poll(() => found(client)).toMatch(german);
  });

  it('brings its decimal sign along, unless another is set; what is written into a file keeps its own', async () => {
    const client = await startClient({ locale: 'de' });
    await client.open(uri, text);
    await expect.poll(() => hover(client, 4)).toMatch(/3,4\d? kg/);
    expect(await sheet(client)).toMatch(/"decimalSign":"comma"/);
    const [hint] = (await hints(client)).filter(({ position }) => position.line === 4);
    const resolved = await client.connection.sendRequest<InlayHint>('inlayHint/resolve', hint);
    for (const edit of resolved.textEdits ?? []) expect(edit.newText).not.toMatch(/\d,\d/);
    await set(client, { decimalSign: 'point' });
    await expect.poll(() => hover(client, 4)).toMatch(/3\.4\d? kg/);
    await set(client, { decimalSign: 'comma', language: 'en' });
    await expect.poll(() => hover(client, 4)).toMatch(/3,4\d? kg/);
    await set(client, { language: 'en' });
    await expect.poll(() => hover(client, 4)).toMatch(/3\.4\d? kg/);
  });

  it('lists and counts by the grammar of the host, and says in its own words what does not fit', async () => {
    const client = await startClient({ locale: 'de', settings: { units: { mass: 'stones' } } });
    await client.open(uri, text);
    const about = () => client.logged.filter((line) => line.includes('doughwright.units.mass'));
    await expect.poll(about).toHaveLength(1);
    expect(about()[0]).toContain('grams oder ounces schreiben');
  });

  it('is English where its file is missing, and the log says so once', async () => {
    const client = await withoutLanguages(() => startClient({ locale: 'de' }));
    await client.open(uri, faulty);
    await expect.poll(() => found(client)).toMatch(english);
    await set(client, { language: 'en' });
    await set(client, { language: 'de', maxFindings: 100 });
    await client.open('untitled:Other', faulty);
    await expect
      .poll(() => client.published.some((one) => one.uri === 'untitled:Other' && one.diagnostics.length > 0))
      .toBe(true);
    expect(client.logged.filter((line) => line.includes('“de” cannot be loaded'))).toHaveLength(1);
  });
});

describe('a change of settings acts at once', () => {
  it('the reading of the scale beside the weights of a sheet', async () => {
    const client = await startClient({});
    await client.open(uri, text);
    await expect.poll(() => sheet(client)).toContain('"scaleReading":true');
    expect(await sheet(client)).toContain('"reads":{');
    await set(client, { sheet: { scaleReading: false } });
    await expect.poll(() => sheet(client)).toContain('"scaleReading":false');
    expect(await sheet(client)).not.toContain('"reads":{');
  });

  it('units and decimal sign, in hovers, hints and the sheet', async () => {
    const client = await opened();
    expect(await hover(client, 4)).toMatch(/3\.4\d? kg/);
    await set(client, { units: { mass: 'ounces', temperature: 'fahrenheit' }, decimalSign: 'comma' });
    await expect.poll(() => hover(client, 4)).toMatch(/7,5\d lb/);
    expect(await hover(client, 4)).toMatch(/77 °F/);
    expect((await hints(client)).map(({ label }) => label).join()).toMatch(/lb/);
    expect(await sheet(client)).toMatch(/lb/);
    await set(client, {});
    await expect.poll(() => hover(client, 4)).toMatch(/3\.4\d? kg/);
  });

  it('the usual conditions, where no bakery says them', async () => {
    const client = await opened();
    const mild = await hover(client, 8);
    await set(client, { usual: { roomCelsius: 31, flourCelsius: 29, tapCelsius: 18 } });
    await expect.poll(() => hover(client, 8)).not.toBe(mild);
    const warm = await hover(client, 8);
    client.change(uri, `bakery Quay Lane:\n  room 21 °C\n  flour 21 °C\n\n${text}`);
    const own = await client.connection.sendRequest<Hover>('textDocument/hover', {
      textDocument: { uri },
      position: { line: 12, character: 4 },
    });
    expect(JSON.stringify(own.contents)).not.toBe(warm);
  });

  it('whose label', async () => {
    const client = await opened();
    expect(await sheet(client)).toContain('"id":"label/EU"');
    await set(client, { label: { regime: 'US' } });
    await expect.poll(() => sheet(client)).toContain('"id":"label/US"');
    await set(client, { label: { regime: 'both' } });
    await expect.poll(async () => (await sheet(client)).match(/"id":"label\/(EU|US)"/g)).toHaveLength(2);
    client.change(uri, `bakery Quay Lane:\n  label US\n\n${text}`);
    const view = await client.connection.sendRequest('doughwright/sheet', { textDocument: { uri }, line: 4 });
    expect(JSON.stringify(view).match(/"id":"label\/(EU|US)"/g)).toEqual(['"id":"label/US"']);
  });

  it('which hints, and whether there are lenses', async () => {
    const client = await opened();
    const linesOf = async (): Promise<number[]> =>
      (await hints(client)).map(({ position }) => position.line).sort((one, other) => one - other);
    expect(await linesOf()).toEqual([0, 3, 4, 5, 6, 10, 11, 13, 15, 16]);
    const off = async (switches: object, lines: readonly number[]): Promise<void> => {
      await set(client, { inlayHints: switches });
      await expect.poll(linesOf).toEqual(lines);
    };
    await off({ amounts: false }, [0, 10, 11, 13]);
    await off({ totals: false, parts: false }, [3, 4, 5, 6, 10, 11, 15, 16]);
    await off({ mixing: false }, [0, 3, 4, 5, 6, 13, 15, 16]);
    await off({ enabled: false }, []);
    const lenses = () =>
      client.connection.sendRequest<CodeLens[]>('textDocument/codeLens', { textDocument: { uri } });
    expect((await lenses()).length).toBeGreaterThan(0);
    await set(client, { codeLens: { enabled: false } });
    await expect.poll(lenses).toEqual([]);
  });

  it('and one that does not fit keeps its default and is told in one sentence', async () => {
    const client = await opened();
    await set(client, { units: { mass: 'stones' }, usual: { roomCelsius: '21 °C' } });
    const about = (key: string): string[] => client.logged.filter((line) => line.includes(key));
    await expect.poll(() => about('doughwright.units.mass')).toHaveLength(1);
    expect(about('doughwright.units.mass')[0]).toContain('write grams or ounces');
    await expect.poll(() => about('doughwright.usual.roomCelsius')).toHaveLength(1);
    expect(await hover(client, 4)).toMatch(/kg/);
  });
});

describe('settings as they come', () => {
  const told: string[] = [];
  const read = (value: unknown) => readSettings(value, (what) => told.push(plainSpeaker.say(what)));

  it('may be missing, null, flat, or of another kind altogether', () => {
    for (const value of [
      undefined,
      null,
      5,
      'x',
      [],
      {},
      { units: null },
      { units: 5 },
      { usual: { roomCelsius: null } },
    ])
      expect(read(value)).toEqual(read({}));
    expect(told).toEqual([]);
    expect(read({ 'units.mass': 'ounces' }).display.mass).toBe('ounces');
  });

  it('are told one sentence each where they do not fit, and the others count', () => {
    const settings = read({
      decimalSign: 'dot',
      maxFindings: 0,
      usual: { tapCelsius: 900, flourCelsius: 19 },
      inlayHints: { amounts: 'no' },
      label: { regime: 'eu' },
    });
    expect(told).toHaveLength(5);
    for (const sentence of told)
      expect(sentence).toMatch(/^Setting doughwright\.\S+: .+ does not fit; write .+\.$/);
    expect(settings.core.usual).toEqual({ flourCelsius: 19 });
  });
});
