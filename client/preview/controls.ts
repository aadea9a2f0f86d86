import type { SheetLabels, SheetOptions, ShownSheet } from '../../server/protocol.ts';
import { createDayControls } from './day-controls.ts';
import { button, element } from './elements.ts';
import { createSizeControls } from './size-controls.ts';
import { createWhatIfControls } from './what-if-controls.ts';

export interface Controls {
  readonly form: HTMLFormElement;
  /** Shows what holds; `asked` is what is tried for this formula. */
  update(view: ShownSheet, asked: SheetOptions): void;
  hide(): void;
  setPinned(pinned: boolean): void;
}

export interface ControlActions {
  readonly ask: (asked: SheetOptions) => void;
  readonly keep: () => void;
  readonly work: () => void;
  readonly pin: (pinned: boolean) => void;
}

/** Everything that can be tried on a sheet, and the ways back to the file and into it. */
export function createControls(labels: SheetLabels, actions: ControlActions): Controls {
  let asked: SheetOptions = {};
  const ask = (next: SheetOptions) => {
    asked = withoutEmpty(next);
    actions.ask(asked);
  };
  const size = createSizeControls(labels, (wanted) => ask({ ...asked, size: wanted }));
  const day = createDayControls(
    labels,
    (today) => ask({ ...asked, today }),
    (clock) => {
      const { clock: _, ...others } = asked;
      ask(clock ? { ...others, clock } : others);
    },
  );
  const whatIf = createWhatIfControls(
    labels,
    (tried) => ask({ ...asked, whatIf: tried }),
    (map) => {
      const { map: _, ...others } = asked;
      ask(map ? { ...others, map } : others);
    },
  );
  // A map is only shown: nothing of it is tried.
  const asInFile = button(labels.reset, () => ask(asked.map ? { map: asked.map } : {}), {
    class: 'as-in-file',
  });
  const keep = button(labels.keep, actions.keep, {
    class: 'keep',
    attributes: { title: labels.keepHint },
  });
  let pinned = false;
  const pin = button(labels.pin, () => actions.pin(!pinned), {
    class: 'pin',
    attributes: {
      'aria-pressed': 'false',
      title: labels.pinHint,
    },
  });
  const notDone = element('ul', {
    class: 'not-done',
    attributes: { 'aria-label': labels.notDone },
  });
  const dayFold = element(
    'details',
    { class: 'day', attributes: { 'data-key': 'day' } },
    element('summary', { text: labels.dayFold }),
    day.fields,
  );
  const form = element(
    'form',
    { class: 'controls', attributes: { 'aria-label': labels.try } },
    size.fields,
    element(
      'span',
      { class: 'actions' },
      asInFile,
      keep,
      button(labels.work, actions.work, {
        class: 'work',
        attributes: { title: labels.workHint },
      }),
      pin,
    ),
    dayFold,
    element(
      'details',
      { class: 'what-if-fold', attributes: { 'data-key': 'what-if' } },
      element('summary', { text: labels.whatIfFold }),
      whatIf.fields,
    ),
    notDone,
  );
  form.addEventListener('submit', (event) => event.preventDefault());
  form.hidden = true;

  return {
    form,
    setPinned(next) {
      pinned = next;
      pin.setAttribute('aria-pressed', String(next));
      pin.textContent = next ? labels.pinned : labels.pin;
    },
    hide() {
      form.hidden = true;
    },
    update(view, tried) {
      asked = tried;
      form.hidden = false;
      size.update(view);
      day.update(view, tried.today ?? {});
      whatIf.update(view, tried);
      asInFile.hidden = !view.tried && !view.clock;
      keep.hidden = !view.tried;
      notDone.replaceChildren(
        ...view.notDone.map((text) => element('li', { text, attributes: { dir: 'auto' } })),
      );
      notDone.hidden = view.notDone.length === 0;
    },
  };
}

function withoutEmpty({ size, today, clock, whatIf, map }: SheetOptions): SheetOptions {
  return {
    ...(size === undefined || size.by === 'file' ? {} : { size }),
    ...(today === undefined || Object.keys(today).length === 0 ? {} : { today }),
    ...(clock === undefined ? {} : { clock }),
    ...(whatIf === undefined || Object.keys(whatIf).length === 0 ? {} : { whatIf }),
    ...(map === undefined ? {} : { map }),
  };
}
