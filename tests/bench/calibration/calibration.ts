import { ODDS_SAID, oddsWords, type PromiseOdds } from '../../../shared/promise-odds.ts';
import { wilson } from '../../../src/engine/odds/wilson.ts';
import type { Row } from '../table.ts';
import { hiddenYard } from './hidden-yard.ts';
import { isKept, leadOf, livedThrough, type Policy, type Promised } from './lived-yard.ts';

const DAYS = 60;
const SESSIONS = [0, 1, 2, 3];

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const meanOf = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;

const keptFigure = (promises: readonly Promised[]): string => {
  const kept = promises.filter(isKept).length;
  const { from, to } = wilson(kept, promises.length);
  return `kept ${percent(kept / promises.length)}, between ${percent(from)} and ${percent(to)}; lead ${meanOf(promises.map(leadOf)).toFixed(1)} days`;
};

const promisesBy = (policy: Policy, yards: readonly number[], breaks: boolean): Promised[] =>
  yards.flatMap((seed) => livedThrough(hiddenYard(seed, breaks), policy, DAYS));

const oddsRow = (share: PromiseOdds, yards: readonly number[], breaks: boolean): Row => {
  const promises = promisesBy({ odds: share }, yards, breaks);
  const said = promises.flatMap((one) => (one.said === null ? [] : [one.said]));
  return {
    what: `${oddsWords(share)}: ${promises.length} promises, said ${percent(meanOf(said))} on average`,
    figure: keptFigure(promises),
    aim: 'what was said',
  };
};

/**
 * `npm run bench -- calibration [yards] [first] [odds] [breaks]`: yards lived through on the engine, in each of which a program that
 * learns what goes wrong promises every order and has to keep it; of promises at each of the odds how many were kept, with Wilson's
 * 95 % interval, and the same orders with sessions in hand. `odds`: only those, as "0.9". `breaks`: moulds break as well.
 */
export const calibrationRows = (
  yards: number,
  { first = 0, only, breaks = false }: { first?: number; only?: string | undefined; breaks?: boolean } = {},
): Row[] => {
  const seeds = Array.from({ length: yards }, (_, n) => first + n);
  const wanted = ODDS_SAID.filter(({ share }) => only === undefined || only === 'all' || String(share) === only);
  const odds = wanted.map(({ share }) => oddsRow(share, seeds, breaks));
  if (only !== undefined && only !== 'all') return odds;
  const sessions = SESSIONS.map((count): Row => {
    const promises = promisesBy({ sessions: count }, seeds, breaks);
    return { what: `${count} sessions in hand: ${promises.length} promises`, figure: keptFigure(promises), aim: '' };
  });
  return [...odds, ...sessions];
};
