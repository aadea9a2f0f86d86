import { expect, it } from 'vitest';
import type { ImportedTable } from '../../server/protocol.ts';
import { folderWith, startClient } from './places.ts';

it('a table is a formula by request, its names looked up beside the file it is asked for', async () => {
  const folder = folderWith({ 'flours.dough': 'flour quay mill:\n  grain wheat\n' });
  const client = await startClient({ folders: [folder.uri] });
  const ask = (table: unknown) =>
    client.connection.sendRequest<ImportedTable>('doughwright/importTable', {
      textDocument: { uri: folder.uriOf('new.dough') },
      table,
    });
  const made = await ask('Ingredient;%\nquay mill;100\nwater;65,5\n');
  expect(made).toMatchObject({
    text: 'formula New Formula:\n  quay mill          100%\n  water              65.5%\n',
    formulas: ['New Formula'],
  });
  expect(made.notes.filter(({ doubtful }) => doubtful)).toEqual([]);
  // What is no text is no table, and the server goes on.
  await expect(ask(undefined)).rejects.toMatchObject({ code: -32602 });
  expect(await ask('')).toMatchObject({ text: '', formulas: [], notes: [{ doubtful: true }] });
  expect((await ask('salt,2 g\n')).text).toContain('salt');
});
