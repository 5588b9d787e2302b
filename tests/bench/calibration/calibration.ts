import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { ODDS_SAID, oddsWords } from '../../../shared/promise-odds.ts';
import type { Row } from '../table.ts';
import { hiddenYard } from './hidden-yard.ts';
import { keptTable, type Lived } from './kept-table.ts';
import { livedThrough, type Policy } from './lived-yard.ts';

const DAYS = 60;
const SESSIONS = [0, 1, 2, 3];

/** The ways to promise, by their names in the table. */
const WAYS = new Map<string, Policy>([
  ...ODDS_SAID.map(({ share }) => [oddsWords(share), { odds: share }] as const),
  ...SESSIONS.map((sessions) => [`${sessions} sessions in hand`, { sessions }] as const),
  ...SESSIONS.map((byHand) => [`by hand with ${byHand} sessions in hand`, { byHand }] as const),
]);

/** What is in a file of earlier runs, a yard and a way a line. */
const readLived = (file: string | undefined): Lived[] =>
  file !== undefined && existsSync(file)
    ? readFileSync(file, 'utf8')
        .split('\n')
        .filter(Boolean)
        .map((line) => JSON.parse(line) as Lived)
    : [];

/** Which yards are lived through, and which ways to promise in each. */
interface Wanted {
  /** The first yard. */
  first?: number;
  /** Names of ways, parted by a comma; "all", or nothing, for all of them. */
  only?: string | undefined;
  /** Moulds break as well. */
  breaks?: boolean;
  /** Where each yard is put down as it is done: what stands there is not lived through again, and all of it is in the table. */
  file?: string | undefined;
}

/**
 * `npm run bench -- calibration [yards] [first] [ways] [breaks|whole] [file]`: yards lived through on the engine, in each of which a
 * program that learns what goes wrong promises every order and has to keep it; of promises at each of the odds how many were
 * kept, the same orders with sessions in hand and by hand, and how many were kept of those told with such odds. All ways of a yard
 * follow one another, so that a run can be stopped at any time; with a file it goes on from there the next time.
 */
export const calibrationRows = (
  yards: number,
  { first = 0, only = 'all', breaks = false, file }: Wanted = {},
): Row[] => {
  const ways = [...WAYS].filter(([way]) => only === 'all' || only.split(',').includes(way));
  const lived = readLived(file);
  for (let yard = first; yard < first + yards; yard++)
    for (const [way, policy] of ways) {
      if (lived.some((one) => one.yard === yard && one.way === way)) continue;
      const promises = livedThrough(hiddenYard(yard, breaks), policy, DAYS);
      lived.push({ yard, way, promises });
      if (file !== undefined) appendFileSync(file, `${JSON.stringify({ yard, way, promises })}\n`);
    }
  return keptTable(lived);
};
