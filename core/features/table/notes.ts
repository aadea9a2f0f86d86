/** What is told about a table that was taken in: a guess, or something that somebody should look at. */
export interface TableNote {
  readonly message: string;
  /** Worth a look before the formula is used. */
  readonly doubtful: boolean;
}

/** Gathers what is to be told, each thing once. */
export class Notes {
  readonly all: TableNote[] = [];

  say(message: string): void {
    this.add({ message, doubtful: false });
  }

  doubt(message: string): void {
    this.add({ message, doubtful: true });
  }

  private add(note: TableNote): void {
    if (!this.all.some(({ message }) => message === note.message)) this.all.push(note);
  }
}

/** `a`, `a and b`, `a, b and 3 more`: names in quotes, at most so many of them. */
export function listed(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most).map((name) => `“${name}”`);
  const last = names.length > most ? `${names.length - most} more` : shown.pop()!;
  return shown.length === 0 ? last : `${shown.join(', ')} and ${last}`;
}
