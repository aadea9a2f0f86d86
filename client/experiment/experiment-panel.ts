import { type Disposable, l10n, type Memento, type Uri, window, workspace } from 'vscode';
import type { ExperimentPageOptions } from '../../server/protocol.ts';
import { saveToPrint } from '../beside/save-to-print.ts';
import { createSidePage } from '../beside/side-page.ts';
import type { Cursor } from '../cursor.ts';
import type { Guard } from '../guard.ts';
import { experimentViewType } from '../names.ts';
import { noServerWords } from '../nothing-words.ts';
import { createTimers } from '../preview/timers.ts';
import type { Wire } from '../wire.ts';
import { createKeptRuns } from './kept-runs.ts';
import type { BenchRun, ExperimentMode, FromExperiment, ToExperiment } from './messages.ts';

export interface ExperimentPanel extends Disposable {
  /** Shows beside the editor the experiment at a line, or of that name, as its sheet or at the bench. */
  open(place: ExperimentPlace, mode?: ExperimentMode): void;
  /** Whether a line stands in an experiment. */
  standsIn(place: { readonly uri: string; readonly line: number }): Promise<boolean>;
  /** Asks anew, for instance once the server runs again. */
  refresh(): void;
}

export interface ExperimentPlace {
  readonly uri: string;
  readonly line: number;
  readonly experiment?: string;
}

/** What the panel shows, and how: it comes back with that after the window is loaded anew. */
interface ShownExperiment {
  readonly place: ExperimentPlace;
  readonly mode: ExperimentMode;
  readonly sheet: ExperimentPageOptions;
}

export interface ExperimentPanelParts {
  readonly wire: Wire;
  readonly cursor: Cursor;
  readonly guard: Guard;
  readonly extensionUri: Uri;
  readonly store: Memento;
}

/** An experiment beside its text, as its sheet or as the bench that runs it. It follows every change of its files. */
export function createExperimentPanel(parts: ExperimentPanelParts): ExperimentPanel {
  const { wire, cursor, guard, extensionUri } = parts;
  const kept = createKeptRuns(parts.store);
  let place: ExperimentPlace | undefined;
  let mode: ExperimentMode = 'sheet';
  let sheet: ExperimentPageOptions = {};

  const timers = createTimers((uri, experiment, label) => {
    const said = l10n.t('{0}: {1}.', experiment, label);
    void window.showWarningMessage(said, l10n.t('Show')).then((answer) => {
      if (answer) own.open({ uri, line: 0, experiment }, 'bench');
    });
  });
  const setTimers = (uri: string, experiment: string, { doughs }: BenchRun) => {
    const running = Object.entries(doughs).flatMap(([dough, { startedAt, next }]) =>
      startedAt === undefined || next === undefined
        ? []
        : [[dough, { label: `${dough}: ${next.label}`, startedAt, seconds: next.seconds }] as const],
    );
    timers.set(uri, experiment, { ticked: [], timers: Object.fromEntries(running) });
  };
  for (const { uri, experiment, run } of kept.all()) setTimers(uri, experiment, run);

  const page = createSidePage<ToExperiment, FromExperiment, ShownExperiment>({
    ...{ guard, extensionUri, viewType: experimentViewType, title: l10n.t('Experiment') },
    script: 'experiment.js',
    answer: (message) => answer(message),
    restored: (before) => {
      ({ place, mode, sheet } = before);
    },
  });
  const post = (message: ToExperiment) =>
    page.post(message, place === undefined ? undefined : { place, mode, sheet });
  const ask = async (at: ExperimentPlace, here?: true) => {
    const { uri, line, experiment } = at;
    return wire.askExperiment({
      ...{ textDocument: { uri }, line, sheet },
      ...(experiment === undefined ? {} : { experiment }),
      ...(here === undefined ? {} : { here }),
    });
  };
  const refresh = guard('experiment', async () => {
    if (!page.isOpen || !place) return;
    const isWanted = page.asking();
    const answer = await ask(place);
    if (!isWanted()) return;
    if (!answer || !('page' in answer)) {
      const none = { what: l10n.t('There is no experiment here.'), cure: answer?.cannot ?? '' };
      return post({ type: 'none', ...(answer ? none : noServerWords()) });
    }
    const { page: tables, bench, shownIn } = answer;
    // The name stays the experiment's while lines above it are typed.
    place = { ...place, experiment: bench.experiment };
    page.setTitle(`${bench.experiment} · ${l10n.t('Experiment')}`);
    post({
      ...{ type: 'experiment', page: tables, bench, sheet, print: l10n.t('Save as a Page to Print…') },
      ...(shownIn === undefined ? {} : { shownIn }),
      run: kept.of(place.uri, bench.experiment),
    });
  });
  const print = async () => {
    const answer = place && (await ask(place));
    if (!place || !answer || !('page' in answer)) return;
    await saveToPrint(place.uri, answer.page.title, answer.html);
  };
  const log = async ({ uri, experiment, dough, reading }: Extract<FromExperiment, { type: 'reading' }>) => {
    const { said, ...taken } = reading;
    const edit = await wire.askLogTested({ textDocument: { uri }, experiment, dough, reading: taken });
    if (typeof edit === 'string') return post({ type: 'said', text: edit });
    const isWritten = await workspace.applyEdit(edit);
    const text = isWritten
      ? l10n.t('{0}: logged {1}. Undo takes it back; save keeps it.', dough, said)
      : l10n.t('The editor refused the edit; nothing was written.');
    post({ type: 'said', text });
  };
  const answer = async (message: FromExperiment): Promise<void> => {
    switch (message.type) {
      case 'ready':
        post({ type: 'mode', mode });
        return refresh();
      case 'print':
        return print();
      case 'mode':
        mode = message.mode;
        if (place !== undefined) page.keep({ place, mode, sheet });
        return;
      case 'sheet':
        sheet = message.sheet;
        return refresh();
      case 'run':
        kept.set(message.uri, message.experiment, message.run);
        return setTimers(message.uri, message.experiment, message.run);
      case 'reading':
        return log(message);
    }
  };

  const subscriptions = [
    timers,
    wire.onChanged(() => void refresh()),
    workspace.onDidRenameFiles(({ files }) => {
      for (const { oldUri, newUri } of files) {
        kept.renamed(oldUri.toString(), newUri.toString());
        if (place?.uri === oldUri.toString()) place = { ...place, uri: newUri.toString() };
      }
      void refresh();
    }),
    cursor.onDidMove(
      guard('follow the cursor into an experiment', async (at) => {
        if (!page.isOpen || !at || mode === 'bench') return;
        const found = await ask({ ...at }, true);
        if (!found || !('bench' in found)) return;
        const { experiment } = found.bench;
        if (place?.uri === at.uri && place.experiment === experiment) return;
        place = { ...at, experiment };
        await refresh();
      }),
    ),
  ];
  const own: ExperimentPanel = {
    refresh: () => void refresh(),
    standsIn: async ({ uri, line }) => {
      const found = await ask({ uri, line }, true);
      return found !== null && 'bench' in found;
    },
    open(next, as = 'sheet') {
      place = next;
      mode = as;
      if (!page.show(as === 'sheet')) return;
      post({ type: 'mode', mode });
      void refresh();
    },
    dispose() {
      page.dispose();
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
  return own;
}
