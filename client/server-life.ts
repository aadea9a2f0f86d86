/** As much of a language client as its beginning and end take. */
export interface Startable {
  start(): Promise<void>;
  dispose(): Promise<void>;
}

export interface ServerLife<Client> {
  /** The client whose server runs or is coming up. */
  readonly current: Client | undefined;
  start(): Promise<void>;
  stop(): Promise<void>;
  /** Ends the server there is and starts another. */
  restart(): Promise<void>;
}

/** What is to be told of a server that does not start or end as it should. */
export type ServerTrouble =
  | { readonly kind: 'slow' }
  | { readonly kind: 'not-started' | 'not-stopped'; readonly why: string };

/** A server that is coming up cannot be ended; one that takes longer than this may hang, and nobody waits for it. */
const longestStart = 10_000;

/**
 * Keeps one server at a time: a restart that is asked for while another, or the first start, is under way waits its turn,
 * or two servers would tell of every line.
 *
 * @param make makes a client that is not started; one whose server never came up cannot be started again
 */
export function createServerLife<Client extends Startable>(
  make: () => Client,
  warn: (trouble: ServerTrouble) => void,
  longest = longestStart,
): ServerLife<Client> {
  let current: Client | undefined;
  /** The start of a client that takes too long, until it is up after all. */
  let late: Promise<void> | undefined;
  let last: Promise<unknown> = Promise.resolve();
  const complain = (error: unknown) => warn({ kind: 'not-stopped', why: String(error) });

  const start = async () => {
    late = undefined;
    current = make();
    const starting = current.start();
    if (await within(starting, longest)) return;
    warn({ kind: 'slow' });
    late = starting;
    starting.catch((error: unknown) => warn({ kind: 'not-started', why: String(error) }));
  };
  const stop = async () => {
    const [running, comingUp] = [current, late];
    current = undefined;
    late = undefined;
    if (comingUp === undefined) await running?.dispose().catch(complain);
    else void comingUp.then(() => running?.dispose()).catch(complain);
  };
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const done = last.then(work);
    last = done.catch(() => undefined);
    return done;
  };
  return {
    get current() {
      return current;
    },
    start: () => inTurn(start),
    stop: () => inTurn(stop),
    restart: () =>
      inTurn(async () => {
        await stop();
        await start();
      }),
  };
}

/** Whether the work is done within so many milliseconds; fails as it does. */
async function within(work: Promise<unknown>, milliseconds: number): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const over = new Promise<false>((resolve) => {
    timer = setTimeout(() => resolve(false), milliseconds);
  });
  return Promise.race([work.then(() => true), over]).finally(() => clearTimeout(timer));
}
