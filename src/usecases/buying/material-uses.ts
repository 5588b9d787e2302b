import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines, linesLeft } from '../../engine/book/goods.ts';
import { yieldThread } from '../core/yield-thread.ts';

/** A quantity of a material that the plan takes at one minute, and for which orders; null stands for stock. */
export interface MaterialUse {
  at: Minute;
  quantity: number;
  orders: (string | null)[];
}

type Uses = Map<string, MaterialUse[]>;

const take = (uses: Uses, material: string, use: MaterialUse): void => {
  if (!(use.quantity > 0)) return;
  const before = uses.get(material);
  if (before) before.push(use);
  else uses.set(material, [use]);
};

const once = <T>(items: readonly T[]): T[] => [...new Set(items)];

/** So many batches take a few milliseconds. */
const BATCHES_AT_ONCE = 500;

function* takeForBatches(uses: Uses, plan: PlanFile, yard: YardFile): Generator<void> {
  const pours = new Map(plan.pours.map((pour) => [pour.id, pour]));
  const mixes = new Map(yard.mixes.map((mix) => [mix.id, mix.perBag]));
  const castings = new Map(yard.castings.map((casting) => [casting.id, casting.perPiece]));
  for (const [place, batch] of plan.batches.entries()) {
    if (place % BATCHES_AT_ONCE === 0) yield;
    const at = minuteOf(batch.start);
    const filled = batch.pours.flatMap((id) => pours.get(id) ?? []);
    const orders = once(filled.map(({ order }) => order ?? null));
    for (const { material, quantity } of mixes.get(batch.mix) ?? [])
      take(uses, material, { at, quantity: quantity * batch.bags, orders });
    for (const { casting, order } of filled)
      for (const { material, quantity } of castings.get(casting) ?? [])
        take(uses, material, { at, quantity, orders: [order ?? null] });
  }
}

const takeForOrders = (uses: Uses, plan: PlanFile, yard: YardFile): void => {
  const lines = new Map(yard.orders.map((order) => [order.id, linesLeft(order)]));
  for (const { id, packStart, completesAt } of plan.orders) {
    const at = minuteOf(packStart ?? completesAt);
    for (const [material, quantity] of goodsOfLines(lines.get(id) ?? [], yard).parts)
      take(uses, material, { at, quantity, orders: [id] });
  }
};

/** A stick is used whole when it is opened, for all that is cut from it in time; an offcut is no stick. */
const takeSticks = (uses: Uses, plan: PlanFile): void => {
  const orders = new Map(plan.pours.map(({ id, order }) => [id, order ?? null]));
  const batches = new Map(plan.batches.map(({ id, pours }) => [id, pours.map((pour) => orders.get(pour) ?? null)]));
  for (const { material, openedAt, offcutMm, cuts } of plan.sticks) {
    if (offcutMm !== undefined) continue;
    const whose = once(cuts.flatMap((cut) => batches.get(cut.for) ?? [cut.for]));
    take(uses, material, { at: minuteOf(openedAt), quantity: 1, orders: whose });
  }
};

/** A sheet is used whole when it is cut for a batch; a rest is no sheet. */
const takeSheets = (uses: Uses, plan: PlanFile): void => {
  const batches = new Map(plan.batches.map((batch) => [batch.id, minuteOf(batch.start)]));
  for (const { material, rest, for: id } of plan.sheets ?? []) {
    const at = batches.get(id);
    if (rest !== undefined || at === undefined) continue;
    const pours = plan.pours.filter(({ batch }) => batch === id);
    take(uses, material, { at, quantity: 1, orders: once(pours.map(({ order }) => order ?? null)) });
  }
};

type UsesByMaterial = ReadonlyMap<string, readonly MaterialUse[]>;

/** What uses are worked out from beside the plan. */
const LISTS = ['mixes', 'castings', 'kits', 'orders'] as const;

/** Worked out once for a plan and the lists it was made from: a large plan takes thousands of times from stock. */
const known = new WeakMap<PlanFile, Pick<YardFile, (typeof LISTS)[number]> & { uses: UsesByMaterial }>();

function* usesInSteps(yard: YardFile, plan: PlanFile): Generator<void, UsesByMaterial> {
  const before = known.get(plan);
  if (before && LISTS.every((list) => before[list] === yard[list])) return before.uses;
  const { mixes, castings, kits, orders } = yard;
  const uses: Uses = new Map();
  yield* takeForBatches(uses, plan, yard);
  yield;
  takeForOrders(uses, plan, yard);
  takeSticks(uses, plan);
  takeSheets(uses, plan);
  yield;
  for (const list of uses.values()) list.sort((a, b) => a.at - b.at);
  known.set(plan, { mixes, castings, kits, orders, uses });
  return uses;
}

/** Everything a plan takes from stock, by material, in order of time. */
export const materialUses = (yard: YardFile, plan: PlanFile): UsesByMaterial => {
  const steps = usesInSteps(yard, plan);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
};

/** The same, with others let in between its steps. */
export const materialUsesYielding = async (yard: YardFile, plan: PlanFile): Promise<UsesByMaterial> => {
  const steps = usesInSteps(yard, plan);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    await yieldThread();
  }
};
