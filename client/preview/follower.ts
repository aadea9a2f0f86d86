import type { SheetParams, SheetResult, SizeRequest } from '../../server/protocol.ts';
import { sizeKey, type ToPage } from './messages.ts';

/** Where the sheet's formula stands: at a line, or by name where there is no cursor to go by. */
export interface FollowedPlace {
  readonly uri: string;
  readonly line: number;
  readonly formula?: string;
}

export interface FollowerOptions {
  /** Asks the server; the signal says that the answer is no longer wanted. */
  readonly ask: (params: SheetParams, signal: AbortSignal) => Promise<SheetResult>;
  readonly show: (message: ToPage) => void;
}

export interface Follower {
  readonly place: FollowedPlace | undefined;
  /** Shows the formula at this place from now on. */
  follow(place: FollowedPlace): Promise<void>;
  /** Sizes a formula, and keeps that size for as long as the follower lives. */
  resize(uri: string, formula: string, size: SizeRequest): Promise<void>;
  /** Takes sizes kept from before a reload; a size set since then wins. */
  restoreSizes(sizes: Readonly<Record<string, SizeRequest>>): void;
  /** Numbers of these documents may have changed. */
  changed(uris: readonly string[]): Promise<void>;
  /** Asks again for what is shown. */
  refresh(): Promise<void>;
  /** Shows that there is nothing to show, and gives up what was asked. */
  clear(why: 'no-formula' | 'no-server'): void;
}

/**
 * Decides what the batch sheet asks for and which answers count: only the answer to the newest question is shown,
 * however late an older one comes in.
 */
export function createFollower({ ask, show }: FollowerOptions): Follower {
  let place: FollowedPlace | undefined;
  let formulaShown: string | undefined;
  let sequence = 0;
  let asking: AbortController | undefined;
  const sizes = new Map<string, SizeRequest>();

  const begin = () => {
    asking?.abort();
    asking = new AbortController();
    sequence += 1;
    return { own: sequence, signal: asking.signal };
  };
  const sizeOf = (uri: string, formula: string | undefined): SizeRequest =>
    (formula === undefined ? undefined : sizes.get(sizeKey(uri, formula))) ?? asInFile;

  const refresh = async () => {
    const { own, signal } = begin();
    if (!place) return show({ type: 'nothing', sequence: own, why: 'no-formula' });
    const asked = place;
    let size = sizeOf(asked.uri, asked.formula ?? formulaShown);
    let sheet = await ask(paramsOf(asked, size), signal);
    // Only the answer names the formula, and with it the size the baker gave it: then the question is asked once more.
    if (own === sequence && sheet && !sameSize(size, sizeOf(sheet.uri, sheet.formula))) {
      size = sizeOf(sheet.uri, sheet.formula);
      sheet = await ask(paramsOf(asked, size), signal);
    }
    if (own !== sequence) return;
    formulaShown = sheet?.formula;
    show(
      sheet ? { type: 'sheet', sequence: own, sheet } : { type: 'nothing', sequence: own, why: 'no-formula' },
    );
  };

  return {
    get place() {
      return place;
    },
    follow(next) {
      if (next.uri !== place?.uri) formulaShown = undefined;
      place = next;
      return refresh();
    },
    resize(uri, formula, size) {
      sizes.set(sizeKey(uri, formula), size);
      return refresh();
    },
    restoreSizes(kept) {
      for (const [key, size] of Object.entries(kept)) if (!sizes.has(key)) sizes.set(key, size);
    },
    changed: async (uris) => {
      if (place && uris.includes(place.uri)) await refresh();
    },
    refresh,
    clear(why) {
      show({ type: 'nothing', sequence: begin().own, why });
    },
  };
}

const asInFile: SizeRequest = { by: 'file' };

function paramsOf(place: FollowedPlace, size: SizeRequest): SheetParams {
  return {
    textDocument: { uri: place.uri },
    line: place.line,
    size,
    ...(place.formula === undefined ? {} : { formula: place.formula }),
  };
}

function sameSize(one: SizeRequest, other: SizeRequest): boolean {
  switch (one.by) {
    case 'file':
      return other.by === 'file';
    case 'pieces':
      return other.by === 'pieces' && one.pieces === other.pieces;
    case 'bowl':
      return other.by === 'bowl' && one.batches === other.batches;
    case 'onHand':
      return other.by === 'onHand' && one.ingredient === other.ingredient && one.grams === other.grams;
    default:
      return other.by === one.by && one.grams === other.grams;
  }
}
