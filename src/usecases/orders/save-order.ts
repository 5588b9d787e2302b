import { promisedDays } from '../../../db/stores/order-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type Changed, changingUnless, type DoChange } from '../plan/changing.ts';
import type { PromiseMove } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import {
  type Edit,
  type Effect,
  effectName,
  type PassedDay,
  type Saved,
  type UnkeptDate,
  withPromises,
} from '../plan/save-edit.ts';
import { showMeasures } from '../typed/measures.ts';
import { dateInstead } from './date-instead.ts';

/** Which order was saved, and what of its days has gone by. */
interface SavedOrder {
  id: string;
  passed: readonly PassedDay[];
}

/** One thing to save about an order, with a date given in it perhaps. */
export type OrderEdit<More = unknown> = Edit<SavedOrder & More>;

/** Days given, and days by plan, of all open orders before a change and after it. */
interface Days {
  promised: ReadonlyMap<string, string | null>;
  ready: ReadonlyMap<string, string>;
}

const readyDays = (plan: PlanFile): Days['ready'] =>
  new Map(plan.orders.map(({ id, completesOn }) => [id, completesOn]));

/** The date given to an order, where the plan does not keep it; what was promised before and is no later now is no news. */
const unkeptOf = (id: string, before: Days, after: Days): Pick<UnkeptDate, 'promisedOn' | 'readyOn'> | null => {
  const promisedOn = after.promised.get(id);
  if (!promisedOn) return null;
  const readyOn = after.ready.get(id) ?? null;
  if (readyOn !== null && readyOn <= promisedOn) return null;
  const was = before.ready.get(id) ?? null;
  const isNoWorse = readyOn === null ? was === null : was === null || readyOn <= was;
  return before.promised.get(id) === promisedOn && isNoWorse ? null : { promisedOn, readyOn };
};

const isLater = ({ from, to }: PromiseMove): boolean => from !== null && (to === null || to > from);

/** Later than the day its customer was told, or asked for. */
const isTooLate = ({ order, to }: PromiseMove, yard: YardFile): boolean => {
  const { due, wanted } = yard.orders.find(({ id }) => id === order) ?? {};
  const day = due ?? wanted;
  return to === null || (day !== undefined && to > day);
};

/** What saving an order does that is asked about first; all that get later, where one of them gets too late. */
interface Asked {
  moved: PromiseMove[];
  unkept: UnkeptDate[];
  passed: readonly PassedDay[];
}

const askedOf = (
  { value, moved, plan, yard }: Changed<SavedOrder>,
  before: Days,
  promised: Days['promised'],
): Asked => {
  const { id, passed } = value;
  const later = moved.filter((move) => move.order !== id && isLater(move));
  const unkept = unkeptOf(id, before, { promised, ready: readyDays(plan) });
  const customer = yard.orders.find((order) => order.id === id)?.customer ?? null;
  const reason = plan.unplanned.find(({ order }) => order === id)?.reason ?? null;
  return {
    moved: later.some((move) => isTooLate(move, yard)) ? later : [],
    unkept: unkept ? [{ order: id, customer, ...unkept, reason }] : [],
    passed,
  };
};

const nameOf = ({ moved, unkept, passed }: Asked): string => effectName(moved, unkept, passed);

/** What was asked, as the page shows it, with the date that could be given instead. */
const effectOf = async (
  context: UseCaseContext,
  { value: { id }, yard }: Changed<SavedOrder>,
  promised: Days['promised'],
  asked: Asked,
): Promise<Effect> => {
  const { system } = await showMeasures(context);
  const given = promised.get(id) ?? null;
  const instead =
    given && (asked.unkept.length > 0 || asked.moved.length > 0) ? await dateInstead(context, id, yard) : null;
  return {
    moved: await context.database.read((tx) => withPromises(tx, asked.moved)),
    unkept: asked.unkept.map((one) => ({ ...one, reason: reasonShown(one.reason, yard.materials, system) })),
    passed: asked.passed,
    insteadOn: instead && given && instead > given ? instead : null,
    seen: nameOf(asked),
  };
};

/**
 * Saves an order at once where the date given in it is kept, no other order gets too late by it and no day of it has gone by.
 * Else it is held back with its effect, until it comes again with `seen` naming just that.
 */
export const saveOrder = async <More>(
  context: UseCaseContext,
  { what, work }: OrderEdit<More>,
  seen: string | undefined,
): Promise<Saved<SavedOrder & More>> => {
  let before: Days = { promised: new Map(), ready: new Map() };
  let promised: Days['promised'] = new Map();
  const watched: DoChange<SavedOrder & More> = async (tx, yard, change, plan) => {
    before = { promised: await promisedDays(tx), ready: readyDays(plan) };
    const outcome = await work(tx, yard, change, plan);
    promised = await promisedDays(tx);
    return outcome;
  };
  const asks = (changed: Changed<SavedOrder>) => nameOf(askedOf(changed, before, promised));
  const outcome = await changingUnless(context, what, watched, (changed) => !['', seen].includes(asks(changed)));
  if (!outcome.ok) return { kind: 'refused', faults: outcome.faults };
  const { held, changed } = outcome.value;
  if (!held) return { kind: 'saved', value: changed.value, change: changed.change };
  return { kind: 'moves', effect: await effectOf(context, changed, promised, askedOf(changed, before, promised)) };
};
