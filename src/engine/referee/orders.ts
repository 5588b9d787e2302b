import type { Order } from '../../../shared/order.ts';
import type { PlanOrder } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground } from './ground.ts';
import { handoverOn } from './handover.ts';
import { checkSpells } from './spells.ts';
import { wantsOf } from './wants.ts';

type Found = (message: string) => void;

/** Pieces an order gets, and when the last of them is ready. */
interface Given {
  pieces: Map<string, number>;
  lastReadyAt: Minute;
}

const give = (given: Given, casting: string, count: number, readyAt: Minute): void => {
  given.pieces.set(casting, (given.pieces.get(casting) ?? 0) + count);
  given.lastReadyAt = Math.max(given.lastReadyAt, readyAt);
};

/** Pieces poured or stripped for each order. A piece set aside for one order is not another's. */
const givenOf = (ground: Ground, found: Found): Map<string, Given> => {
  const given = new Map(
    [...ground.orders.keys()].map((id): [string, Given] => [id, { pieces: new Map(), lastReadyAt: ground.now }]),
  );
  for (const x of [...ground.pours, ...ground.strips.values()])
    if (x.order !== undefined) give(given.get(x.order)!, x.casting.id, 1, x.readyAt);
  for (const x of ground.yard.inMould) {
    const order = ground.strips.get(x.mould)?.order;
    if (x.order !== undefined && order !== undefined && order !== x.order)
      found(`the piece in ${x.mould} is set aside for ${x.order}, not for ${order}`);
  }
  return given;
};

/** The first minute at which something may be poured or packed for an order. */
const startsAt = ({ calendar, orders }: Ground, id: string): Minute => {
  const { notBefore } = orders.get(id)!;
  return notBefore === undefined ? -Infinity : calendar.midnightOf(dayNumber(notBefore));
};

const giveFinished = (ground: Ground, order: PlanOrder, given: Given, found: Found): void => {
  for (const { finished, count } of order.fromFinished) {
    const lot = ground.yard.finished[finished]!;
    if (lot.order !== undefined && lot.order !== order.id)
      found(`order ${order.id}: lot ${finished} is set aside for ${lot.order}`);
    give(given, lot.casting, count, lot.readyAt === undefined ? ground.now : minuteOf(lot.readyAt));
  }
};

const checkPacking = (order: PlanOrder, packMinutes: number, given: Given, found: Found): void => {
  if (order.packStart === undefined || order.packEnd === undefined) {
    found(`order ${order.id} is not packed`);
    return;
  }
  const [start, end] = [minuteOf(order.packStart), minuteOf(order.packEnd)];
  if (start < given.lastReadyAt) found(`order ${order.id} is packed before its last piece is ready`);
  if (!order.packs && end - start !== packMinutes) found(`order ${order.id}: packing lasts ${packMinutes} minutes`);
  if (end !== minuteOf(order.completesAt)) found(`order ${order.id} is complete when it is packed`);
};

/** What is not packed is complete with its last piece, or when its last part is there: by the time of a day at which the yard is brought things, or 00:00. */
const checkUnpacked = ({ calendar, yard }: Ground, order: PlanOrder, given: Given, found: Found): void => {
  if (order.packStart !== undefined || order.packEnd !== undefined) found(`order ${order.id} is packed without need`);
  const completesAt = minuteOf(order.completesAt);
  if (completesAt < given.lastReadyAt) found(`order ${order.id} is complete before its last piece is ready`);
  const day = calendar.dayOf(completesAt);
  const [hours, minutes] = yard.yard.deliveredBy.split(':').map(Number);
  const comes = [calendar.midnightOf(day), calendar.minuteAt(day, hours! * 60 + minutes!)];
  if (completesAt > given.lastReadyAt && !comes.includes(completesAt))
    found(`order ${order.id} is complete later than it could be`);
};

const checkDates = (ground: Ground, got: PlanOrder, order: Order, found: Found): void => {
  const completesAt = minuteOf(got.completesAt);
  if (completesAt >= ground.horizonEnd) found(`order ${got.id} is complete after the last date of the plan`);
  const on = handoverOn(ground, ground.calendar.dayOf(completesAt));
  if (got.completesOn !== dateOfDay(on)) found(`order ${got.id} goes out on ${dateOfDay(on)}`);
  if (got.soonestOn !== undefined) {
    const soonest = dayNumber(got.soonestOn);
    if (soonest > on) found(`order ${got.id} goes out before the day proven the earliest`);
    if (soonest <= on && handoverOn(ground, soonest) !== soonest)
      found(`order ${got.id} could not go out on ${got.soonestOn}`);
  }
  const late = order.due === undefined ? 0 : Math.max(0, on - dayNumber(order.due));
  if (got.daysLate !== late) found(`order ${got.id} is ${late} days late`);
};

/** Its pieces, no more and no fewer, packed or complete when they are there. */
const checkPieces = (ground: Ground, got: PlanOrder, order: Order, given: Given, found: Found): void => {
  const wants = wantsOf(ground, order);
  if (got.packStart !== undefined && minuteOf(got.packStart) < startsAt(ground, got.id))
    found(`order ${got.id} is packed before ${order.notBefore}`);
  for (const casting of new Set([...wants.pieces.keys(), ...given.pieces.keys()])) {
    const [wanted, has] = [wants.pieces.get(casting) ?? 0, given.pieces.get(casting) ?? 0];
    if (wanted !== has) found(`order ${got.id} gets ${has} of ${casting}, not ${wanted}`);
  }
  if (wants.packMinutes > 0) checkPacking(got, wants.packMinutes, given, found);
  else checkUnpacked(ground, got, given, found);
};

const checkPlanned = (ground: Ground, got: PlanOrder, given: Given, found: Found): void => {
  const order = ground.orders.get(got.id)!;
  giveFinished(ground, got, given, found);
  if (got.packs) checkSpells(ground, got, found);
  // What an order that is being packed gets stands already (R14).
  if (!ground.underWay.packs.has(got.id)) checkPieces(ground, got, order, given, found);
  checkDates(ground, got, order, found);
};

/** Every order planned once or left out once, and no lot given away twice. */
const checkAll = (ground: Ground, found: Found): void => {
  const times = new Map<string, number>();
  for (const id of [...ground.plan.orders.map((x) => x.id), ...ground.plan.unplanned.map((x) => x.order)])
    times.set(id, (times.get(id) ?? 0) + 1);
  for (const id of ground.orders.keys())
    if (times.get(id) !== 1) found(`order ${id} is in the plan ${times.get(id) ?? 0} times`);
  const taken = ground.yard.finished.map(() => 0);
  for (const order of ground.plan.orders) for (const x of order.fromFinished) taken[x.finished]! += x.count;
  ground.yard.finished.forEach((lot, i) => {
    if (taken[i]! > lot.count) found(`${taken[i]} pieces are taken of lot ${i}, which has ${lot.count}`);
  });
};

/**
 * R11: every order in the plan once, with exactly its pieces, packed and complete when it can be, on a hand-over day; one
 * left out takes nothing. Whether an order had to be left out is not checked.
 *
 * Example: an order of two panels that gets one is found: "order 27-001 gets 1 of panel-900, not 2".
 */
export const checkOrders = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R11');
  const given = givenOf(ground, found);
  for (const x of ground.pours)
    if (x.order !== undefined && x.batchStart < startsAt(ground, x.order))
      found(`${x.name} is poured before ${ground.orders.get(x.order)!.notBefore}`);
  for (const x of ground.plan.orders) checkPlanned(ground, x, given.get(x.id)!, found);
  for (const x of ground.plan.unplanned)
    if (given.get(x.order)!.pieces.size > 0) found(`order ${x.order} is left out, yet pieces are made for it`);
  checkAll(ground, found);
  return findings;
};
