/** So many wrong tries of a name cost nothing; from then on each next one waits twice as long. */
const FREE_TRIES = 5;
const LONGEST_WAIT_MINUTES = 15;
/** Each try takes a processor a tenth of a second: of all names together no more than these in a minute. */
const MOST_IN_A_MINUTE = 30;
const MOST_NAMES = 1000;

interface Tried {
  wrong: number;
  /** Minutes since 1970. */
  until: number;
}

export interface Tries {
  /** Counts a try before it is made: how many minutes it has to wait; 0 where it may be made now. */
  begin(name: string, now: string): number;
  /** It was right: nothing of what was before counts. */
  right(name: string): void;
  /** No password was looked at after all: the try just begun does not count for its name. */
  takeBack(name: string): void;
}

const minuteAt = (now: string): number => Math.floor(Date.parse(now) / 60_000);

/** Said to whoever has to wait. */
export const tooMany = (minutes: number): string =>
  `Too many tries. Wait ${minutes === 1 ? 'a minute' : `${minutes} minutes`}.`;

/** How often a password was guessed at, by name, while the program runs. */
export const countedTries = (): Tries => {
  const tried = new Map<string, Tried>();
  let [minute, inIt] = [0, 0];
  const isFull = (at: number): boolean => {
    if (at !== minute) [minute, inIt] = [at, 0];
    inIt += 1;
    return inIt > MOST_IN_A_MINUTE;
  };
  const count = (name: string, at: number): void => {
    const wrong = (tried.get(name)?.wrong ?? 0) + 1;
    const wait = wrong < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_MINUTES, 2 ** (wrong - FREE_TRIES));
    tried.delete(name);
    tried.set(name, { wrong, until: at + wait });
    for (const oldest of tried.keys()) if (tried.size > MOST_NAMES) tried.delete(oldest);
  };
  return {
    begin: (name, now) => {
      const at = minuteAt(now);
      const wait = (tried.get(name)?.until ?? 0) - at;
      if (wait > 0) return wait;
      if (isFull(at)) return 1;
      count(name, at);
      return 0;
    },
    right: (name) => void tried.delete(name),
    takeBack: (name) => {
      const { wrong = 0 } = tried.get(name) ?? {};
      if (wrong > 1) tried.set(name, { wrong: wrong - 1, until: 0 });
      else tried.delete(name);
    },
  };
};
