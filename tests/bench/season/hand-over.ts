import { diceFor } from './chance.ts';
import { pressOnOrder } from './counter.ts';
import { promiseOf, type Season, settle } from './season.ts';
import type { Promised } from './tally.ts';
import { countVanished, underWay } from './worker.ts';

/** An order of pieces alone needs no packing: it is ready once its pieces are, by the plan. */
const isReadyUnpacked = ({ standing, clock }: Season, id: string): boolean => {
  const planned = standing?.plan.orders.find((order) => order.id === id);
  return planned !== undefined && !planned.packStart && Date.parse(planned.completesAt) / 60_000 <= clock.minute;
};

const isWaiting = ({ isGone, isCancelled }: Promised): boolean => !isGone && !isCancelled;

/** Those whose customers come today: on the day they were promised, and every day after until they have it. */
export const comingToday = ({ promises, clock }: Season): Promised[] =>
  promises.filter((promise) => isWaiting(promise) && promise.promisedOn <= clock.today());

/** The hour at which a customer comes first; who finds nothing comes again in the evening. */
export const comesAt = ({ id, promisedOn }: Promised): string =>
  `${String(diceFor(1, 'comes', id, promisedOn).whole(9, 18)).padStart(2, '0')}:00`;

/** The customer is there: what is ready is handed over by the order's own page. */
export const handOver = async (season: Season, promise: Promised): Promise<void> => {
  if (!promise.readyOn && isReadyUnpacked(season, promise.id)) promise.readyOn = season.clock.today();
  if (!promise.readyOn || !isWaiting(promise)) return;
  const begun = await underWay(season);
  if (!(await pressOnOrder(season, promise.id, 'hand-over'))) return;
  promise.isGone = true;
  await settle(season, 'handed over');
  await countVanished(season, begun, `hand-over of ${promise.id}`);
};

const missWords = (season: Season, { id, promisedOn, takenOn, lateSince }: Promised): string =>
  `${id} taken ${takenOn} promised ${promisedOn}, plan now ${season.standing?.days.get(id)}; ${
    lateSince
      ? `late since ${lateSince.on} after ${lateSince.act}, avoidable then: ${lateSince.avoidable}`
      : 'never shown late'
  }`;

/** At the end of a day: which of the promises that fell due on it were kept. */
export const judgeDay = (season: Season): void => {
  const { tally, clock } = season;
  const today = clock.today();
  for (const promise of season.promises) {
    if (promise.promisedOn !== today || promise.isCancelled || !promise.isCounted) continue;
    tally.due += 1;
    if (promise.readyOn) {
      tally.kept += 1;
      continue;
    }
    const told = promiseOf(season, promise.id)?.lateSince;
    tally.tellingDays.push(told ? Math.round((Date.parse(today) - Date.parse(told.on)) / 86_400_000) : 0);
    if (told?.avoidable) tally.avoidable += 1;
    tally.misses.push(missWords(season, promise));
    season.log(`MISS ${tally.misses.at(-1)}`);
  }
};
