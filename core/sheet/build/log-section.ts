import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Fact, FactsSection } from './sheet-document.ts';

/** So many times the dough is measured by hand. */
const readings = 3;

/** Blanks for what is measured while it is worked from paper; a panel logs it instead. */
export function logSection({ say, celsius }: Speaker): FactsSection {
  // A temperature ends in the sign of its unit.
  const unit = celsius(0).replace(/^[^°]*/u, '');
  const blank = (key: string, label: Message, written: string): Fact => {
    return { id: `log/${key}`, key, label: say(label), value: '', notes: [], source: 'file', blank: written };
  };
  const doughs = Array.from({ length: readings }, (_, index) =>
    blank(`dough ${index + 1}`, message('sheet.dough'), say(message('log.at-minutes', { unit }))),
  );
  return {
    kind: 'facts',
    id: 'log',
    name: 'log',
    title: say(message('log.title')),
    facts: [
      blank('day', message('log.day'), ''),
      blank('initials', message('log.initials'), ''),
      blank('room', message('sheet.room'), unit),
      blank('water', message('glance.water'), unit),
      ...doughs,
    ],
  };
}
