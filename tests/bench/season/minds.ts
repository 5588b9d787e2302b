import type { Arrival } from './arrivals.ts';
import { daysAfter } from './clock.ts';
import { editOrder, pressOnOrder } from './counter.ts';
import { type Season, settle } from './season.ts';
import type { Promised } from './tally.ts';

const LATER_DAYS = 14;
const EARLIER_DAYS = 7;

const promiseAgain = async (season: Season, promise: Promised, on: string): Promise<void> => {
  if (!(await pressOnOrder(season, promise.id, 'promise', { promisedOn: on }))) return;
  promise.promisedOn = on;
  promise.lateSince = null;
};

/** One more of it; where others would get theirs too late, or the plan cannot keep the date then, the customer takes the day it has instead. */
const takeMore = async (season: Season, promise: Promised): Promise<void> => {
  const after = await editOrder(season, promise.id, ({ quantity0 = '1' }) => ({
    quantity0: String(Number(quantity0) + 1),
  }));
  if (!after) return;
  const before = after.givenOn ?? promise.promisedOn;
  // Until the customer has agreed to another day nothing is late.
  promise.promisedOn = '9999-12-31';
  await settle(season, 'mind changed');
  promise.promisedOn = before;
  const on = season.standing?.days.get(promise.id);
  if (on && on > before) await promiseAgain(season, promise, on);
};

const earlier = async (season: Season, promise: Promised): Promise<void> => {
  const [on, wanted] = [season.standing?.days.get(promise.id), daysAfter(promise.promisedOn, -EARLIER_DAYS)];
  if (on && on <= wanted && wanted > season.clock.today()) await promiseAgain(season, promise, wanted);
};

/** A customer calls about an order that is neither packed nor gone: it is cancelled, moved, or made larger by its pages. */
export const changeMind = async (season: Season, { customer, mind }: Arrival): Promise<void> => {
  const promise = season.promises.find((one) => one.customer === customer);
  if (!mind || !promise || promise.isGone || promise.isCancelled || promise.readyOn) return;
  season.log(`${mind.kind}: ${promise.id}`);
  if (mind.kind === 'cancel') promise.isCancelled = await pressOnOrder(season, promise.id, 'cancel');
  if (mind.kind === 'later') await promiseAgain(season, promise, daysAfter(promise.promisedOn, LATER_DAYS));
  if (mind.kind === 'earlier') await earlier(season, promise);
  if (mind.kind === 'more') await takeMore(season, promise);
  await settle(season, 'mind changed');
};
