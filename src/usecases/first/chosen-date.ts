import type { Order } from '../../../shared/order.ts';
import type { PromiseOdds } from '../../../shared/promise-odds.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { PlanMemory } from '../../engine/search/memory.ts';
import type { Compute } from '../core/computations.ts';
import type { ReadyFacts } from './ask-when.ts';

/** A date already given that would get later. */
export interface PushedDate {
  order: string;
  customer: string | null;
  from: string;
  to: string;
  days: number;
}

/**
 * What comes of a day the customer would like: it can be kept, with the yard's time in hand or without, or less often than the yard's odds; it can be kept at
 * the cost of dates already given; it cannot be kept; it has passed; or what it would cost was not asked yet, or took too
 * long to find out.
 */
export type ChosenDate = { on: string } & (
  | { answer: 'yes' | 'yes, with no time in hand' | 'passed' | 'not asked yet' | 'took too long' }
  | { answer: 'yes, but less often'; than: PromiseOdds }
  | { answer: 'pushes'; pushes: PushedDate[] }
  | { answer: 'no'; reason: string | null }
);

interface Choosing {
  yard: YardFile;
  memory?: PlanMemory;
  order: Order;
  on: string;
  today: string;
  facts: Pick<ReadyFacts, 'earliestOn' | 'promiseOn' | 'promiseOdds' | 'reason'>;
}

/** A day that is kept if nothing goes wrong. */
const barely = (on: string, { promiseOdds }: Choosing['facts']): ChosenDate =>
  promiseOdds === null
    ? { on, answer: 'yes, with no time in hand' }
    : { on, answer: 'yes, but less often', than: promiseOdds };

/** As much as the dates of the question say already: null when the others have to be looked at. */
export const chosenFromDates = ({
  on,
  today,
  facts,
}: Omit<Choosing, 'yard' | 'memory' | 'order'>): ChosenDate | null => {
  const { earliestOn, promiseOn, reason } = facts;
  if (on < today) return { on, answer: 'passed' };
  if (earliestOn === null) return { on, answer: 'no', reason };
  if (promiseOn !== null && on >= promiseOn) return { on, answer: 'yes' };
  return on >= earliestOn ? barely(on, facts) : null;
};

/** What a day that is earlier than the others allow would do to them. */
export const whatItPushes = async (
  { yard, memory, order, on, facts }: Choosing,
  compute: Compute,
): Promise<ChosenDate> => {
  const found = await compute('chosen date', { yard, order, on, ...(memory ? { memory } : {}) });
  if (!found) return { on, answer: 'took too long' };
  if (!found.possible) return { on, answer: 'no', reason: found.reason ?? null };
  if (found.pushes.length === 0) return barely(on, facts);
  const customers = new Map(yard.orders.map(({ id, customer }) => [id, customer ?? null]));
  return {
    on,
    answer: 'pushes',
    pushes: found.pushes.map((push) => ({ ...push, customer: customers.get(push.order) ?? null })),
  };
};
