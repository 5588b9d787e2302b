import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { calendar, handoverOn } from '../../contract/audit-plan.mjs';
import type { ExactModel } from './exact-model.ts';
import { pointUpTo, startsOf } from './grid.ts';
import type { Term } from './linear-model.ts';
import type { Turned } from './mould-rows.ts';

/** First hand-over day on or after a day. */
export const handoverDay = (model: ExactModel, day: number): number =>
  dayNumber(handoverOn(model.yard, dateOfDay(day)));

const dayOf = (model: ExactModel, minute: number): number =>
  dayNumber(calendar(model.yard.yard.timeZone).dateOf(minute));

const lateCost = (model: ExactModel, order: number, handover: number): number => {
  const { due, weight } = model.yard.orders[order]!;
  return weight * Math.max(0, handover - dayNumber(due!));
};

/** Hand-over days on which a piece made in these sessions can complete an order. */
const handoverDays = (model: ExactModel): number[] => {
  const { yard, grid } = model;
  const cureDays = Math.max(...yard.mixes.map((m) => Math.ceil(m.cureHours / 24)));
  const last = handoverDay(model, dayOf(model, grid.points.at(-1)!.minute) + cureDays);
  const days: number[] = [];
  for (
    let day = handoverDay(model, dayOf(model, minuteOf(yard.yard.now)));
    day <= last;
    day = handoverDay(model, day + 1)
  )
    days.push(day);
  return days;
};

/** Pieces of a pool ready by a minute: stripped by then and cured by then; first filled are first stripped. */
class Ready {
  private readonly columns = new Map<string, number>();

  constructor(
    private readonly model: ExactModel,
    private readonly turned: Turned,
  ) {}

  by(pool: number, minute: number): number {
    const key = `${pool} ${minute}`;
    if (!this.columns.has(key)) this.columns.set(key, this.write(pool, minute));
    return this.columns.get(key)!;
  }

  private write(pool: number, minute: number): number {
    const { lp, grid, yard, states } = this.model;
    const column = lp.amount();
    const mix = yard.mixes.find((m) => m.id === yard.castings[states.pools[pool]!.casting]!.mix)!;
    const cureMinutes = mix.cureHours * 60;
    this.noMoreThan(column, this.turned.stripped[pool]!, pointUpTo(grid, minute), 0);
    if (cureMinutes <= mix.demouldMinutes) return column;
    const before = states.starts.filter(
      (s) => 'pool' in s && s.pool === pool && s.filledAt + cureMinutes <= minute,
    ).length;
    this.noMoreThan(column, this.turned.filled[pool]!, pointUpTo(grid, minute - cureMinutes), before);
    return column;
  }

  private noMoreThan(column: number, sums: number[], point: number, more: number): void {
    const sum: Term[] = point < 0 ? [] : [[sums[point]!, -1]];
    this.model.lp.atMost([[column, 1], ...sum], more);
  }
}

/** One column an order and way of completing it, with what that costs; one of them is taken. */
const completionColumns = (model: ExactModel): void => {
  const { yard, grid, lp } = model;
  const days = handoverDays(model);
  yard.orders.forEach((_, order) => {
    const ways: Term[] = [];
    const { packMinutes } = model.orders[order]!;
    if (packMinutes > 0)
      for (const start of startsOf(grid, 'pack', packMinutes)) {
        const on = handoverDay(model, dayOf(model, grid.points[start]!.minute + packMinutes));
        const column = lp.count(1, lateCost(model, order, on));
        model.packs.push({ order, start, column });
        ways.push([column, 1]);
      }
    else
      for (const day of days) {
        const column = lp.count(1, lateCost(model, order, day));
        model.completions.push({ order, day, column });
        ways.push([column, 1]);
      }
    if (grid.nextSessionDay < Number.POSITIVE_INFINITY) {
      const column = lp.count(1, lateCost(model, order, handoverDay(model, grid.nextSessionDay)));
      model.later.push({ order, column });
      ways.push([column, 1]);
    }
    lp.exactly(ways, 1);
  });
};

/** Last minute of a day. */
const dayEnd = (model: ExactModel, day: number): number =>
  calendar(model.yard.yard.timeZone).minuteAt(dateOfDay(day + 1), '00:00') - 1;

/** R11: by any minute orders have taken no more pieces of a casting than were ready. */
const pieceRows = (model: ExactModel, ready: Ready): void => {
  const { yard, grid, lp, states } = model;
  const taken = new Map<number, { order: number; column: number }[]>();
  const take = (minute: number, order: number, column: number) =>
    taken.set(minute, [...(taken.get(minute) ?? []), { order, column }]);
  for (const { order, start, column } of model.packs) take(grid.points[start]!.minute, order, column);
  for (const { order, day, column } of model.completions) take(dayEnd(model, day), order, column);
  const minutes = [...taken.keys()].sort((a, b) => a - b);
  yard.castings.forEach((casting, c) => {
    let before: Term[] = [];
    for (const minute of minutes) {
      const sum = lp.amount();
      const now = taken.get(minute)!.flatMap((x): Term[] => {
        const pieces = model.orders[x.order]!.pieces[c]!;
        return pieces > 0 ? [[x.column, -pieces]] : [];
      });
      lp.exactly([[sum, 1], ...before, ...now], 0);
      before = [[sum, -1]];
      const pools = states.pools.flatMap((pool, p) => (pool.casting === c ? [p] : []));
      lp.atMost(
        [[sum, 1], ...pools.map((p): Term => [ready.by(p, minute), -1])],
        finishedBy(model, casting.id, minute),
      );
    }
  });
};

const finishedBy = ({ yard }: ExactModel, casting: string, minute: number): number =>
  yard.finished.reduce((sum, x) => {
    const isReady = x.readyAt === undefined || minuteOf(x.readyAt) <= minute;
    return sum + (x.casting === casting && isReady ? x.count : 0);
  }, 0);

/** R8: pieces stripped and not yet ready take their spaces. It gets no fuller between points. */
const rackRows = (model: ExactModel, turned: Turned, ready: Ready): void => {
  const { yard, grid, states, lp } = model;
  const { rackSpaces } = yard.yard;
  if (rackSpaces === undefined) return;
  const spacesOf = (id: string) => yard.castings.find((c) => c.id === id)!.rackSpaces;
  grid.points.forEach(({ minute }, p) => {
    const terms = states.pools.flatMap((pool, k): Term[] => {
      const { rackSpaces: spaces } = yard.castings[pool.casting]!;
      if (spaces === 0) return [];
      return [
        [turned.stripped[k]![p]!, spaces],
        [ready.by(k, minute), -spaces],
      ];
    });
    const curing = yard.finished.filter((x) => x.readyAt !== undefined && minuteOf(x.readyAt) > minute);
    lp.atMost(terms, rackSpaces - curing.reduce((sum, x) => sum + x.count * spacesOf(x.casting), 0));
  });
};

export const orderRows = (model: ExactModel, turned: Turned): void => {
  const ready = new Ready(model, turned);
  completionColumns(model);
  pieceRows(model, ready);
  rackRows(model, turned, ready);
};
