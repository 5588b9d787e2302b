/** A clock that is set right by the network goes back by less than this; one that was further ahead was wrong. */
const STANDS_STILL_MS = 3_600_000;

/**
 * The clock, in whole minutes, that never runs back by less than an hour while the program runs: set back, it stands still until
 * it is caught up, so that nothing is recorded before what was just recorded. One set back by more was wrong before, and is
 * followed; what it left for a time to come is asked about on Today. That is told: nobody finds out from times alone.
 *
 * `read` gives milliseconds since 1970.
 */
export const steadyClock = (read: () => number, tell: (line: string) => void): (() => string) => {
  let latest = 0;
  const textOf = (at: number): string => `${new Date(at).toISOString().slice(0, 16)}Z`;
  return () => {
    const now = read();
    if (now < latest - STANDS_STILL_MS)
      tell(
        `The clock of this machine was set back, from ${textOf(latest)} to ${textOf(now)}. See on Today what is recorded for later.`,
      );
    if (now > latest || now < latest - STANDS_STILL_MS) latest = now;
    return `${new Date(latest).toISOString().slice(0, 16)}:00Z`;
  };
};
