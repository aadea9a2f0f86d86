import type { SheetOptions, SheetParams, SheetResult, ShownSheet } from '../../server/protocol.ts';

/** Where the sheet's formula stands: at a line, or by name where there is no cursor to go by. */
export interface FollowedPlace {
  readonly uri: string;
  readonly line: number;
  readonly formula?: string;
}

export interface FollowerOptions {
  /** Asks the server; the signal says that the answer is no longer wanted. */
  readonly ask: (params: SheetParams, signal: AbortSignal) => Promise<SheetResult>;
  readonly show: (sequence: number, sheet: ShownSheet) => void;
  readonly showNothing: (sequence: number, why: 'no-formula' | 'no-server') => void;
  /** What the baker tries for a formula. */
  readonly triedOf: (uri: string, formula: string) => SheetOptions;
}

export interface Follower {
  readonly place: FollowedPlace | undefined;
  /** The sheet that was shown last, while it stands. */
  readonly sheet: ShownSheet | undefined;
  /** Shows the formula at this place from now on. */
  follow(place: FollowedPlace): Promise<void>;
  /** Numbers of these documents may have changed. */
  changed(uris: readonly string[]): Promise<void>;
  /** A file has another name: what is shown of it stays. */
  renamed(from: string, to: string): Promise<void>;
  /** Asks again for what is shown. */
  refresh(): Promise<void>;
  /** Shows that there is nothing to show, and gives up what was asked. */
  clear(why: 'no-formula' | 'no-server'): void;
}

/**
 * Decides what a batch sheet asks for and which answers count: only the answer to the newest question is shown, however
 * late an older one comes in.
 */
export function createFollower({ ask, show, showNothing, triedOf }: FollowerOptions): Follower {
  let place: FollowedPlace | undefined;
  let shown: ShownSheet | undefined;
  let sequence = 0;
  let asking: AbortController | undefined;

  const begin = () => {
    asking?.abort();
    asking = new AbortController();
    sequence += 1;
    return { own: sequence, signal: asking.signal };
  };

  /** `staysWithout`: where nothing is answered what is shown stays, for the server may not know a new name yet. */
  const renew = async (staysWithout: boolean) => {
    const { own, signal } = begin();
    if (!place) return showNothing(own, 'no-formula');
    const asked = place;
    const expected = asked.formula ?? (shown?.uri === asked.uri ? shown.formula : undefined);
    let tried = expected === undefined ? {} : triedOf(asked.uri, expected);
    let sheet = await ask(paramsOf(asked, tried), signal);
    // Only the answer names the formula, and with it what is tried for it: then the question is asked once more.
    if (own === sequence && sheet && !alike(tried, triedOf(sheet.uri, sheet.formula))) {
      tried = triedOf(sheet.uri, sheet.formula);
      sheet = await ask(paramsOf(asked, tried), signal);
    }
    if (own !== sequence) return;
    // A mixer or a plan has no sheet: that of the formula before stays.
    if (!sheet && shown && asked.formula === undefined) {
      const { uri, line, formula } = shown;
      const kept = await ask(paramsOf({ uri, line, formula }, triedOf(uri, formula)), signal);
      if (own !== sequence) return;
      if (kept?.formula === formula) {
        place = { uri, line: kept.line, formula };
        sheet = kept;
      }
    }
    if (!sheet && shown && staysWithout) return;
    shown = sheet ?? undefined;
    if (sheet) show(own, sheet);
    else showNothing(own, 'no-formula');
  };

  const refresh = () => renew(false);

  return {
    get place() {
      return place;
    },
    get sheet() {
      return shown;
    },
    follow(next) {
      place = next;
      return refresh();
    },
    changed: async (uris) => {
      if (place && uris.includes(place.uri)) await refresh();
    },
    renamed: async (from, to) => {
      const moved = (uri: string): string => (uri === from ? to : uri.replace(`${from}/`, `${to}/`));
      if (!place || moved(place.uri) === place.uri) return;
      const formula = place.formula ?? shown?.formula;
      place = { ...place, uri: moved(place.uri), ...(formula === undefined ? {} : { formula }) };
      await renew(true);
    },
    refresh,
    clear(why) {
      shown = undefined;
      showNothing(begin().own, why);
    },
  };
}

function paramsOf(place: FollowedPlace, tried: SheetOptions): SheetParams {
  return {
    textDocument: { uri: place.uri },
    line: place.line,
    ...tried,
    ...(place.formula === undefined ? {} : { formula: place.formula }),
  };
}

// Both come from one store, which writes the same asking in the same order.
function alike(one: SheetOptions, other: SheetOptions): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
