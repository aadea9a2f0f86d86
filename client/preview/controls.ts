import type { SheetAsked, ShownSheet } from '../../server/protocol.ts';
import { createDayControls } from './day-controls.ts';
import { button, element } from './elements.ts';
import { createSizeControls } from './size-controls.ts';

export interface Controls {
  readonly form: HTMLFormElement;
  /** Shows what holds; `asked` is what is tried for this formula. */
  update(view: ShownSheet, asked: SheetAsked): void;
  hide(): void;
  setPinned(pinned: boolean): void;
}

export interface ControlActions {
  readonly ask: (asked: SheetAsked) => void;
  readonly keep: () => void;
  readonly work: () => void;
  readonly pin: (pinned: boolean) => void;
}

/** Everything that can be tried on a sheet, and the ways back to the file and into it. */
export function createControls(actions: ControlActions): Controls {
  let asked: SheetAsked = {};
  const ask = (next: SheetAsked) => {
    asked = withoutEmpty(next);
    actions.ask(asked);
  };
  const size = createSizeControls((wanted) => ask({ ...asked, size: wanted }));
  const day = createDayControls(
    (today) => ask({ ...asked, today }),
    (clock) => {
      const { clock: _, ...others } = asked;
      ask(clock ? { ...others, clock } : others);
    },
  );
  const asInFile = button('As in the file', () => ask({}), { class: 'as-in-file' });
  const keep = button('Keep in the file', actions.keep, {
    class: 'keep',
    attributes: { title: 'Writes what is tried here into the file; undo takes it back' },
  });
  let pinned = false;
  const pin = button('Pin', () => actions.pin(!pinned), {
    class: 'pin',
    attributes: {
      'aria-pressed': 'false',
      title: 'Stays with this formula; else the sheet follows the cursor',
    },
  });
  const notDone = element('ul', {
    class: 'not-done',
    attributes: { 'aria-label': 'What could not be tried' },
  });
  const dayFold = element(
    'details',
    { class: 'day', attributes: { 'data-key': 'day' } },
    element('summary', { text: 'The day: temperatures, scale, mixer, clock' }),
    day.fields,
  );
  const form = element(
    'form',
    { class: 'controls', attributes: { 'aria-label': 'Try for today' } },
    size.fields,
    element(
      'span',
      { class: 'actions' },
      asInFile,
      keep,
      button('Work from this', actions.work, {
        class: 'work',
        attributes: { title: 'One moment at a time, in large type' },
      }),
      pin,
    ),
    dayFold,
    notDone,
  );
  form.addEventListener('submit', (event) => event.preventDefault());
  form.hidden = true;

  return {
    form,
    setPinned(next) {
      pinned = next;
      pin.setAttribute('aria-pressed', String(next));
      pin.textContent = next ? 'Pinned' : 'Pin';
    },
    hide() {
      form.hidden = true;
    },
    update(view, tried) {
      asked = tried;
      form.hidden = false;
      size.update(view);
      day.update(view, tried.today ?? {});
      asInFile.setAttribute('aria-pressed', String(!view.tried && !view.timeline.asked));
      keep.hidden = !view.tried;
      notDone.replaceChildren(
        ...view.notDone.map((text) => element('li', { text, attributes: { dir: 'auto' } })),
      );
      notDone.hidden = view.notDone.length === 0;
    },
  };
}

function withoutEmpty({ size, today, clock }: SheetAsked): SheetAsked {
  return {
    ...(size === undefined || size.by === 'file' ? {} : { size }),
    ...(today === undefined || Object.keys(today).length === 0 ? {} : { today }),
    ...(clock === undefined ? {} : { clock }),
  };
}
