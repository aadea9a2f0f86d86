import { type Message, message } from '../words/message.ts';

/** What is to be known of a table that was taken in: a guess, or something that somebody should look at. */
export interface TableNote<Words = string> {
  readonly message: Words;
  /** Worth a look before the formula is used. */
  readonly doubtful: boolean;
}

/** Gathers the notes on a table, each once. */
export class Notes {
  readonly all: TableNote<Message>[] = [];
  readonly #seen = new Set<string>();

  say(note: Message): void {
    this.#add({ message: note, doubtful: false });
  }

  doubt(note: Message): void {
    this.#add({ message: note, doubtful: true });
  }

  #add(note: TableNote<Message>): void {
    const key = JSON.stringify(note.message);
    if (this.#seen.has(key)) return;
    this.#seen.add(key);
    this.all.push(note);
  }
}

/** The most that are named of a kind; of the others it is told how many there are. */
const mostNamed = 6;

/** Names in quotes, and how many more there are: `a`, `a and b`, `a, b and 3 more`. */
export function listed(names: readonly string[]): Message[] {
  return atMost(names.map((name) => message('import.quoted', { name })));
}

/** The first of some, and how many more there are. */
export function atMost(all: readonly Message[]): Message[] {
  const more = all.length - mostNamed;
  return more > 0 ? [...all.slice(0, mostNamed), message('import.more', { count: more })] : [...all];
}
