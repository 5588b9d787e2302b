import type { PlanFile } from '../../shared/plan.ts';
import { dateOfDay, minuteOf } from '../../shared/time.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { type Dice, diceOf } from './random-yard/dice.ts';

/** The batches of a plan that start within so many days from now, their pours and the coats before them. */
const firstDays = (yard: YardFile, plan: PlanFile, days: number): NonNullable<YardFileInput['keep']> => {
  const end = minuteOf(yard.yard.now) + days * 1440;
  const batches = plan.batches.filter((x) => minuteOf(x.start) < end);
  const fixed = new Set(batches.map((x) => x.id));
  const pours = plan.pours.filter((x) => fixed.has(x.batch));
  const last = new Map<string, number>();
  for (const x of pours) last.set(x.mould, Math.max(last.get(x.mould) ?? 0, minuteOf(x.prepStart)));
  const coats = plan.coats.filter((x) => minuteOf(x.end) <= (last.get(x.mould) ?? 0));
  return { batches, pours, coats };
};

/** The most that finished pieces take of the rack until they are ready. */
const onRack = (yard: YardFileInput): number =>
  yard.finished.reduce((sum, x) => sum + (x.readyAt === undefined ? 0 : x.count * 2), 0);

/** Something that happens after a plan is made and may leave no room for what was fixed. */
const MISHAPS: ((yard: YardFileInput, dice: Dice, fixed: NonNullable<YardFileInput['keep']>) => void)[] = [
  (y, d) => Object.assign(d.pick(y.moulds), { condition: 'damaged', prepped: false }),
  (y, d) => Object.assign(d.pick(y.moulds), { condition: 'dirty', prepped: false }),
  (y, d) => Object.assign(d.pick(y.moulds), { oilEveryTurns: 1, turnsSinceOil: 1, oilMinutes: 10 }),
  (y, d, fixed) => {
    const calendar = calendarOf(y.yard.timeZone);
    y.closed.push(dateOfDay(calendar.dayOf(minuteOf(d.pick(fixed.batches).start))));
  },
  (y, d) => Object.assign(d.pick(y.materials), { onHand: 0, lots: undefined }),
  (y, d) => Object.assign(d.pick(y.mixes), { minCelsius: 12 }),
  (y, d) => Object.assign(d.pick(y.mixes), { attendMinutes: 120 }),
  (y) => Object.assign(y.yard, { rackSpaces: onRack(y) + 4 }),
  (y, d) => y.orders.splice(d.whole(0, y.orders.length - 1), 1),
];

/** No piece is set aside for an order that is no longer there, and no fixed pour is for it. */
const forgetOrders = (yard: YardFileInput): void => {
  const known = new Set(yard.orders.map((x) => x.id));
  for (const x of [...yard.finished, ...yard.inMould, ...(yard.keep?.pours ?? [])])
    if (x.order !== undefined && !known.has(x.order)) delete x.order;
};

/** A planned yard with the first days of its plan fixed; after `mishaps` that may be more than the rules allow. */
export const yardWithFixedPours = (yard: YardFile, plan: PlanFile, seed: number, mishaps = 0): YardFile => {
  const dice = diceOf(seed);
  const keep = firstDays(yard, plan, dice.whole(3, 12));
  const input: YardFileInput = structuredClone({ ...yard, keep });
  if (keep.batches.length > 0) for (const happens of dice.some(MISHAPS, mishaps)) happens(input, dice, keep);
  forgetOrders(input);
  const read = readYardFile(input);
  if (!read.ok) throw new Error(read.faults.map((x) => `${x.path}: ${x.message}`).join('; '));
  return read.yard;
};
