import type { PlanBatch, PlanCoat, PlanFile, PlanOrder, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { calendar, sessions } from '../../contract/audit-plan.mjs';
import type { ExactModel } from './exact-model.ts';
import { handoverDay } from './order-rows.ts';

interface Standing {
  mould: string;
  from: number;
  /** The coat it has got since the last pour. */
  coat?: PlanCoat;
}
interface Prepped extends Standing {
  prepStart: number;
  prepEnd: number;
}
interface Full {
  mould: string;
  fillEnd: number;
  pour?: PlanPour;
}

const instant = (minute: number): string => `${new Date(minute * 60_000).toISOString().slice(0, 16)}:00Z`;

/** Takes the first of a list that fits; the program and the plan differ where none does. */
const takeFirst = <T>(list: T[], fits: (item: T) => boolean, what: string): T => {
  const index = list.findIndex(fits);
  if (index < 0) throw new Error(`the solution has no ${what}`);
  return list.splice(index, 1)[0]!;
};

/** Works a solution through, point by point, with moulds that have names. */
class Yard {
  readonly idle: Standing[][];
  readonly prepped: Prepped[][];
  readonly full: Full[][];
  readonly batches: PlanBatch[] = [];
  readonly pours: PlanPour[] = [];
  /** Only those that a pour came of: the program has others, since they cost nothing. */
  readonly coats: PlanCoat[] = [];
  readonly strips: PlanStrip[] = [];

  constructor(
    private readonly model: ExactModel,
    private readonly howMany: (column: number) => number,
  ) {
    const { states } = model;
    this.idle = states.idle.map((_, i) =>
      states.starts.flatMap((s) => ('idle' in s && s.idle === i ? [{ mould: s.mould, from: s.usableFrom }] : [])),
    );
    this.prepped = states.pools.map(() => []);
    this.full = states.pools.map((_, p) =>
      states.starts.flatMap((s) => ('pool' in s && s.pool === p ? [{ mould: s.mould, fillEnd: s.filledAt }] : [])),
    );
    for (const list of this.full) list.sort((a, b) => a.fillEnd - b.fillEnd);
  }

  private times<T extends { start: number; column: number }>(list: T[], point: number, work: (task: T) => void): void {
    for (const task of list) if (task.start === point) for (let n = this.howMany(task.column); n > 0; n--) work(task);
  }

  workAt(point: number): void {
    const minute = this.model.grid.points[point]!.minute;
    const { model } = this;
    this.times(model.strips, point, ({ pool }) => this.strip(pool, minute));
    this.times(model.coats, point, ({ way }) => {
      const { mould } = takeFirst(this.idle[way.from]!, (x) => x.from <= minute, 'mould to coat');
      const end = minute + way.minutes;
      const coat = { mould, start: instant(minute), end: instant(end) };
      this.idle[way.to]!.push({ mould, from: end + way.dryMinutes, coat });
    });
    this.times(model.preps, point, ({ way }) => {
      const { mould, coat } = takeFirst(this.idle[way.from]!, (x) => x.from <= minute, 'mould to set up');
      const end = minute + way.minutes;
      // A mould that was set up before the plan starts has its prep at the batch.
      const times = way.asIs ? { prepStart: -1, prepEnd: -1 } : { prepStart: minute, prepEnd: end };
      this.prepped[way.to]!.push({ mould, from: way.asIs ? 0 : end, ...times, ...(coat ? { coat } : {}) });
    });
    const places = new Map<string, number[]>();
    this.times(model.pours, point, ({ pool, fillEnd }) => {
      const key = `${model.states.pools[pool]!.casting} ${fillEnd}`;
      places.set(key, [...(places.get(key) ?? []), pool]);
    });
    this.times(model.batches, point, (batch) => this.pourBatch(batch, minute, places));
  }

  private pourBatch({ filling }: ExactModel['batches'][number], start: number, places: Map<string, number[]>): void {
    const { yard } = this.model;
    const mix = yard.mixes[filling.mix]!;
    const id = `b${this.batches.length + 1}`;
    const pours = filling.pieces.map(({ casting, fillEnd }): PlanPour => {
      const pool = places.get(`${casting} ${fillEnd}`)!.shift()!;
      const set = takeFirst(this.prepped[pool]!, (x) => x.from <= start, 'mould set up');
      const pour: PlanPour = {
        id: `p${this.pours.length + 1}`,
        batch: id,
        mould: set.mould,
        casting: yard.castings[casting]!.id,
        prepStart: instant(set.prepStart < 0 ? start : set.prepStart),
        prepEnd: instant(set.prepEnd < 0 ? start : set.prepEnd),
        fillStart: instant(start + fillEnd - yard.castings[casting]!.fillMinutes),
        fillEnd: instant(start + fillEnd),
        stripStart: '',
        stripEnd: '',
        pieceReadyAt: '',
      };
      this.pours.push(pour);
      if (set.coat) this.coats.push(set.coat);
      this.full[pool]!.push({ mould: set.mould, fillEnd: start + fillEnd, pour });
      return pour;
    });
    this.batches.push({
      id,
      mix: mix.id,
      start: instant(start),
      mixEnd: instant(start + mix.mixMinutes),
      end: instant(start + filling.end),
      bags: filling.bags,
      kg: filling.pieces.reduce((sum, x) => sum + yard.castings[x.casting]!.kg, 0),
      pours: pours.map((x) => x.id),
    });
  }

  strip(pool: number, minute: number): void {
    const { states, yard } = this.model;
    const casting = yard.castings[states.pools[pool]!.casting]!;
    const mix = yard.mixes.find((m) => m.id === casting.mix)!;
    const { mould, fillEnd, pour } = takeFirst(
      this.full[pool]!.sort((a, b) => a.fillEnd - b.fillEnd),
      (x) => x.fillEnd + mix.demouldMinutes <= minute,
      'piece to strip',
    );
    const end = minute + casting.stripMinutes;
    const readyAt = Math.max(end, fillEnd + mix.cureHours * 60);
    const times = { stripStart: instant(minute), stripEnd: instant(end), pieceReadyAt: instant(readyAt) };
    if (pour) Object.assign(pour, times);
    else this.strips.push({ mould, ...times });
    this.idle[states.after[pool]!]!.push({ mould, from: end });
  }

  /** Pieces that lie in moulds from before and are not asked for: each in a session of its own, long after. */
  stripTheRest(): void {
    const { yard, grid } = this.model;
    const free = sessions(yard).slice(grid.sessionEnd.length + 5);
    this.full.forEach((list, pool) => {
      while (list.length > 0) this.strip(pool, free.shift()!.from);
    });
  }
}

interface Piece {
  casting: string;
  readyAt: number;
  give: (order: PlanOrder) => void;
}

const piecesOf = (yard: Yard, model: ExactModel): Piece[] => {
  const pieceOf = (casting: string, made: PlanPour | PlanStrip): Piece => ({
    casting,
    readyAt: minuteOf(made.pieceReadyAt),
    give: (order) => {
      made.order = order.id;
    },
  });
  const held = (mould: string) => model.yard.inMould.find((x) => x.mould === mould)!.casting;
  const made = [...yard.pours.map((x) => pieceOf(x.casting, x)), ...yard.strips.map((x) => pieceOf(held(x.mould), x))];
  const lots = model.yard.finished.flatMap((lot, finished) =>
    Array.from(
      { length: lot.count },
      (): Piece => ({
        casting: lot.casting,
        readyAt: lot.readyAt ? minuteOf(lot.readyAt) : 0,
        give: (order) => {
          const taken = order.fromFinished.find((x) => x.finished === finished);
          if (taken) taken.count++;
          else order.fromFinished.push({ finished, count: 1 });
        },
      }),
    ),
  );
  return [...lots, ...made].sort((a, b) => a.readyAt - b.readyAt);
};

/** Orders with the minute their pieces are needed by, soonest first. */
const dueOrders = (model: ExactModel, howMany: (column: number) => number) => {
  const { yard, grid } = model;
  const { minuteAt } = calendar(yard.yard.timeZone);
  const packs = model.packs
    .filter((x) => howMany(x.column) > 0)
    .map((x) => ({ ...x, by: grid.points[x.start]!.minute, packed: true }));
  const rest = model.completions
    .filter((x) => howMany(x.column) > 0)
    .map((x) => ({ ...x, by: minuteAt(dateOfDay(x.day + 1), '00:00') - 1, packed: false }));
  return [...packs, ...rest].sort((a, b) => a.by - b.by);
};

const planOrders = (model: ExactModel, pieces: Piece[], howMany: (column: number) => number): PlanOrder[] => {
  const { yard } = model;
  const { dateOf } = calendar(yard.yard.timeZone);
  return dueOrders(model, howMany).map(({ order: index, by, packed }) => {
    const { id, due } = yard.orders[index]!;
    const planned: PlanOrder = { id, completesAt: '', completesOn: '', daysLate: 0, fromFinished: [] };
    let ready = minuteOf(yard.yard.now);
    model.orders[index]!.pieces.forEach((count, c) => {
      for (let n = 0; n < count; n++) {
        const piece = takeFirst(
          pieces,
          (x) => x.casting === yard.castings[c]!.id && x.readyAt <= by,
          `piece for ${id}`,
        );
        piece.give(planned);
        ready = Math.max(ready, piece.readyAt);
      }
    });
    const done = packed ? by + model.orders[index]!.packMinutes : ready;
    if (packed) Object.assign(planned, { packStart: instant(by), packEnd: instant(done) });
    const day = handoverDay(model, dayNumber(dateOf(done)));
    return {
      ...planned,
      completesAt: instant(done),
      completesOn: dateOfDay(day),
      daysLate: Math.max(0, day - dayNumber(due!)),
    };
  });
};

/** A solution in which every order is complete, written as a plan file, so that it can be audited like any other. */
export const solutionAsPlan = (model: ExactModel, values: Float64Array): PlanFile => {
  const howMany = (column: number) => Math.round(values[column]!);
  const yard = new Yard(model, howMany);
  model.grid.points.forEach((_, point) => {
    yard.workAt(point);
  });
  yard.stripTheRest();
  const orders = planOrders(model, piecesOf(yard, model), howMany);
  const today = dayNumber(calendar(model.yard.yard.timeZone).dateOf(minuteOf(model.yard.yard.now)));
  const weightOf = (id: string) => model.yard.orders.find((x) => x.id === id)!.weight;
  return {
    format: 'mould-rota/plan',
    version: 2,
    batches: yard.batches,
    pours: yard.pours,
    coats: yard.coats,
    strips: yard.strips,
    unstripped: [],
    orders,
    unplanned: [],
    sticks: [],
    buys: [],
    dropped: [],
    score: {
      unplannedWeight: 0,
      weightedDaysLate: orders.reduce((sum, x) => sum + weightOf(x.id) * x.daysLate, 0),
      weightedDaysAfterWanted: 0,
      batches: yard.batches.length,
      bags: yard.batches.reduce((sum, x) => sum + x.bags, 0),
      weightedCompletionDays: orders.reduce((sum, x) => sum + weightOf(x.id) * (dayNumber(x.completesOn) - today), 0),
    },
  };
};
