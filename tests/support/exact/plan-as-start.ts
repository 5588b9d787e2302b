import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { coatBefore } from '../../../src/engine/book/coat-before.ts';
import type { ExactModel } from './exact-model.ts';
import { handoverDay } from './order-rows.ts';

/** A task of the plan has no column: the plan or the program is wrong. */
class NoColumn extends Error {}

const pointAt = ({ grid }: ExactModel, instant: string): number => {
  const minute = minuteOf(instant);
  const point = grid.points.findLastIndex((p) => p.minute <= minute);
  if (point < 0 || minute - grid.points[point]!.minute >= grid.unitMinutes) throw new NoColumn(`nothing at ${instant}`);
  return point;
};

type Values = Map<number, number>;

const count = (values: Values, found: { column: number } | undefined, what: string): void => {
  if (!found) throw new NoColumn(`no column for ${what}`);
  values.set(found.column, (values.get(found.column) ?? 0) + 1);
};

const stripColumn = (model: ExactModel, pool: number, stripStart: string) => {
  const start = pointAt(model, stripStart);
  return model.strips.find((x) => x.pool === pool && x.start === start);
};

/** Follows one mould through its pours; where it stands is what decides which columns they are. */
const addMould = (model: ExactModel, plan: PlanFile, mould: string, values: Values): void => {
  const { states, yard } = model;
  const start = states.starts.find((x) => x.mould === mould)!;
  let idle = 'idle' in start ? start.idle : states.after[start.pool]!;
  const first = plan.strips.find((x) => x.mould === mould);
  if (first && 'pool' in start) count(values, stripColumn(model, start.pool, first.stripStart), `strip of ${mould}`);
  const pours = plan.pours
    .filter((x) => x.mould === mould)
    .sort((a, b) => minuteOf(a.fillStart) - minuteOf(b.fillStart));
  for (const pour of pours) {
    const casting = yard.castings.findIndex((c) => c.id === pour.casting);
    idle = addCoat(model, plan, idle, pour, pours, values);
    const pool = addPrep(model, idle, casting, pour, values);
    addPour(model, plan, pour, pool, values);
    count(values, stripColumn(model, pool, pour.stripStart), `strip of ${pour.id}`);
    idle = states.after[pool]!;
  }
};

/** The coat before a pour, and the state it leaves the mould in. One that changes nothing has no way: left out it frees time. */
const addCoat = (
  model: ExactModel,
  plan: PlanFile,
  idle: number,
  pour: PlanPour,
  pours: PlanPour[],
  values: Values,
): number => {
  const coat = coatBefore(plan.coats, pours, pour);
  const way = coat && model.states.coats.find((x) => x.from === idle);
  if (!way) return idle;
  const start = pointAt(model, coat.start);
  count(
    values,
    model.coats.find((x) => x.way === way && x.start === start),
    `coat before ${pour.id}`,
  );
  return way.to;
};

const addPrep = (model: ExactModel, idle: number, casting: number, pour: PlanPour, values: Values): number => {
  const { states } = model;
  const plain = states.preps.find((x) => x.from === idle && states.pools[x.to]!.casting === casting);
  if (!plain) throw new NoColumn(`no way to set up for ${pour.id}`);
  const start = plain.asIs ? 0 : pointAt(model, pour.prepStart);
  count(
    values,
    model.preps.find((x) => x.way === plain && x.start === start),
    `prep of ${pour.id}`,
  );
  return plain.to;
};

const addPour = (model: ExactModel, plan: PlanFile, pour: PlanPour, pool: number, values: Values): void => {
  const batch = plan.batches.find((x) => x.id === pour.batch)!;
  const start = pointAt(model, batch.start);
  const fillEnd = minuteOf(pour.fillEnd) - minuteOf(batch.start);
  const found = model.pours.find((x) => x.pool === pool && x.start === start && x.fillEnd === fillEnd);
  count(values, found, `pour ${pour.id}`);
};

const addBatches = (model: ExactModel, plan: PlanFile, values: Values): void => {
  for (const batch of plan.batches) {
    const pours = plan.pours.filter((x) => x.batch === batch.id);
    pours.sort((a, b) => minuteOf(a.fillStart) - minuteOf(b.fillStart));
    const castings = pours.map((x) => model.yard.castings.findIndex((c) => c.id === x.casting)).join();
    const start = pointAt(model, batch.start);
    const found = model.batches.find(
      (x) => x.start === start && x.filling.pieces.map((f) => f.casting).join() === castings,
    );
    count(values, found, `batch ${batch.id}`);
  }
};

const addOrders = (model: ExactModel, plan: PlanFile, values: Values): void => {
  for (const order of plan.orders) {
    const index = model.yard.orders.findIndex((x) => x.id === order.id);
    const day = handoverDay(model, Math.round(Date.parse(order.completesOn) / 86_400_000));
    const found = order.packStart
      ? model.packs.find((x) => x.order === index && x.start === pointAt(model, order.packStart!))
      : model.completions.find((x) => x.order === index && x.day === day);
    count(values, found, `order ${order.id}`);
  }
};

/**
 * The values of all whole columns that stand for a plan. Throws where the program has no column for a task: the plan
 * breaks a rule, or the program leaves plans out.
 */
export const planAsStart = (model: ExactModel, plan: PlanFile): Values => {
  const values: Values = new Map();
  model.lp.isWhole.forEach((whole, column) => {
    if (whole) values.set(column, 0);
  });
  for (const mould of new Set([...plan.pours, ...plan.strips].map((x) => x.mould)))
    addMould(model, plan, mould, values);
  addBatches(model, plan, values);
  addOrders(model, plan, values);
  return values;
};
