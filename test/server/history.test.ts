import { describe, expect, it } from 'vitest';
import type { CompareResult, HistoryResult, SinceResult } from '../../server/protocol.ts';
import { repositoryIn } from '../cli/repository.ts';
import { folderWith, startClient } from './places.ts';

const tin = `formula Harbour Tin:
  yield 24 pieces of 880 g

  bread flour        100%
  water              69%
  salt               2%

mix in spiral:
  load flour, water, salt
  speed 1 for 4 min
`;

/** The bakery under git, and a client in it. */
async function bakery() {
  const folder = repositoryIn(folderWith({ 'tin.dough': tin }));
  folder.git('init', '--quiet', '--initial-branch=main');
  folder.commit('Start');
  folder.write('tin.dough', tin.replace('salt               2%', 'salt               1.9%'));
  folder.commit('Less salt', 'Baker Two');
  const client = await startClient({ folders: [folder.uri] });
  const uri = folder.uriOf('tin.dough');
  await client.open(uri, tin.replace('salt               2%', 'salt               1.8%'));
  const history = (line: number) =>
    client.connection.sendRequest<HistoryResult>('doughwright/history', { textDocument: { uri }, line });
  const since = (line: number) =>
    client.connection.sendRequest<SinceResult>('doughwright/since', { textDocument: { uri }, line });
  return { folder, history, since, client, uri };
}

describe('the history of a formula in an editor', () => {
  it('is that of git with what is typed as its last row, and another one after the next commit', async () => {
    const { folder, history, client, uri } = await bakery();
    const first = await history(5);
    expect(first).toMatchObject({ page: { title: 'Harbour Tin', charts: [{ figure: 'salt' }] } });
    const rows = (answer: HistoryResult) =>
      answer !== null && 'page' in answer ? answer.page.rows.map(({ words }) => words) : [];
    expect(rows(first)).toEqual(['Start', 'Less salt', 'not committed yet']);
    expect(first).toMatchObject({ page: { rows: [{}, {}, { commit: '', changes: ['salt 1.9% → 1.8%'] }] } });
    folder.write('tin.dough', tin.replace('water              69%', 'water              70%'));
    folder.commit('Wetter');
    expect(rows(await history(0))).toEqual(['Start', 'Less salt', 'Wetter', 'not committed yet']);
    client.change(uri, tin.replace('water              69%', 'water              70%'));
    expect(rows(await history(0))).toEqual(['Start', 'Less salt', 'Wetter']);
  });

  it('says of a line since when its figure is as it is in git', async () => {
    const { since } = await bakery();
    const today = /\d{4}-\d{2}-\d{2}/.source;
    expect((await since(5))?.text).toMatch(
      new RegExp(`^in git: salt 1\\.9% since ${today} \\(Baker Two: Less salt\\)$`),
    );
    expect((await since(3))?.text).toMatch(
      new RegExp(`^in git: bread flour 100% from the first commit on, ${today} \\(A Baker: Start\\)$`),
    );
    expect((await since(4))?.text).toMatch(/^in git: hydration 69% from the first commit on/);
    expect((await since(7))?.text).toMatch(/^in git: mixing 4 min from the first commit on/);
    expect(await since(1)).toBeNull();
    expect(await since(9)).toBeNull();
  });

  it('compares with what was committed among its own flours, and follows a figure through another name', async () => {
    const flour = 'flour quay bread:\n  grain wheat\n  protein 12%\n';
    const old = tin.replace('bread flour', 'quay bread');
    const folder = repositoryIn(folderWith({ 'tin.dough': old, 'flours.dough': flour }));
    const anew = (text: string) => text.replace('quay bread', 'quay white');
    folder.git('init', '--quiet', '--initial-branch=main');
    folder.commit('Start');
    folder.write('flours.dough', anew(flour));
    const client = await startClient({ folders: [folder.uri] });
    const uri = folder.uriOf('tin.dough');
    await client.open(uri, anew(old));
    const compared = await client.connection.sendRequest<CompareResult>('doughwright/compare', {
      textDocument: { uri },
      before: old,
    });
    const names = compared?.formulas.flatMap(({ groups }) =>
      groups.flatMap(({ changes }) => changes.map(({ name }) => name)),
    );
    expect(names).toEqual(['ingredient list', 'quay white', 'quay bread']);
    folder.write('tin.dough', anew(old));
    folder.commit('Another name');
    const since = await client.connection.sendRequest<SinceResult>('doughwright/since', {
      textDocument: { uri },
      line: 3,
    });
    expect(since?.text).toMatch(/^in git: quay white 100% from the first commit on/);
  });

  it('says why there is none: outside of a repository, and before the first commit', async () => {
    const folder = folderWith({ 'tin.dough': tin });
    const client = await startClient({ folders: [folder.uri] });
    const uri = folder.uriOf('tin.dough');
    await client.open(uri, tin);
    const ask = () =>
      client.connection.sendRequest<HistoryResult>('doughwright/history', { textDocument: { uri }, line: 1 });
    expect(await ask()).toEqual({ cannot: expect.stringMatching(/not a git repository/) });
    const repository = repositoryIn(folder);
    repository.git('init', '--quiet', '--initial-branch=main');
    expect(await ask()).toEqual({
      cannot: 'this repository has no commit yet; history begins with the first “git commit”.',
    });
    repository.write('readme.txt', '');
    repository.git('add', 'readme.txt');
    repository.git('commit', '--quiet', '--message=Start');
    expect(await ask()).toMatchObject({ page: { rows: [{ commit: '', words: 'not committed yet' }] } });
    expect(
      await client.connection.sendRequest('doughwright/since', { textDocument: { uri }, line: 5 }),
    ).toBeNull();
  });
});
