import { SEARCHES, type SearchMode } from './searching.ts';

export interface SeasonOptions {
  days: number;
  seed: number;
  search: SearchMode;
  disturbed: boolean;
  /** A folder in which the database stays as the season left it, to be looked into; null for none. */
  keep: string | null;
  /** The instant at which everything stands still, so that what comes next can be looked into; null to go on. */
  stop: string | null;
}

/** What was asked for on the command line. */
export interface SeasonCall extends SeasonOptions {
  /** Names of the yards; empty: all. */
  yards: readonly string[];
  /** Yards at a time. */
  jobs: number;
  /** A folder for one log a yard; null for none. */
  logs: string | null;
}

const wholeOf = (name: string, text: string): number => {
  if (/^\d{1,6}$/.test(text)) return Number(text);
  throw new Error(`--${name} takes a whole number, not "${text}"`);
};

const searchOf = (text: string): SearchMode => {
  const mode = SEARCHES.find((one) => one === text);
  if (mode) return mode;
  throw new Error(`--search is one of ${SEARCHES.join(', ')}, not "${text}"`);
};

/**
 * Reads `--yards small,demo --days 120 --seed 1 --search full --disturbed --jobs 2 --logs folder`, and `--keep folder
 * --stop 2027-05-07T22:00:00Z` to look into a line of a log; each may be left out.
 */
export const readCall = (words: readonly string[]): SeasonCall => {
  const call: SeasonCall = {
    ...{ days: 120, seed: 1, search: 'full', disturbed: false, keep: null, stop: null, yards: [], jobs: 2, logs: null },
  };
  const left = [...words];
  while (left.length > 0) {
    const word = left.shift()!;
    if (word === '--disturbed') call.disturbed = true;
    else {
      const [name, value = ''] = [word.replace(/^--/, ''), left.shift()];
      if (name === 'yards') call.yards = value.split(',');
      else if (name === 'days' || name === 'seed' || name === 'jobs') call[name] = wholeOf(name, value);
      else if (name === 'search') call.search = searchOf(value);
      else if (name === 'logs' || name === 'keep' || name === 'stop') call[name] = value;
      else
        throw new Error(
          `"${word}" is no option; there are --yards --days --seed --search --disturbed --jobs --logs --keep --stop`,
        );
    }
  }
  return call;
};

/** The words that say the same again, for a process of its own. */
export const wordsOf = ({ yards, days, seed, search, disturbed, jobs, logs, keep, stop }: SeasonCall): string[] => [
  ...(yards.length > 0 ? ['--yards', yards.join(',')] : []),
  ...['--days', String(days), '--seed', String(seed), '--search', search, '--jobs', String(jobs)],
  ...(disturbed ? ['--disturbed'] : []),
  ...(logs ? ['--logs', logs] : []),
  ...(keep ? ['--keep', keep] : []),
  ...(stop ? ['--stop', stop] : []),
];
