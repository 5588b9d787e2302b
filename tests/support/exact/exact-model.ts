import type { YardFile } from '../../../shared/yard-file.ts';
import { needs } from '../../contract/audit-plan.mjs';
import { type Filling, fillingsOf } from './fillings.ts';
import { type Grid, gridOf, pointFrom, startsOf } from './grid.ts';
import { LinearModel } from './linear-model.ts';
import { type CoatWay, type MouldStates, mouldStatesOf, type PrepWay } from './mould-kinds.ts';

interface At {
  /** Point of the grid at which the task starts. */
  start: number;
  column: number;
}

/** The columns of the program that stand for a decision: how many such tasks start at a point. */
export interface ExactModel {
  yard: YardFile;
  grid: Grid;
  lp: LinearModel;
  states: MouldStates;
  /** Pieces of each casting by order, and minutes of packing. */
  orders: { pieces: number[]; packMinutes: number }[];
  preps: (At & { way: PrepWay })[];
  coats: (At & { way: CoatWay })[];
  batches: (At & { filling: Filling })[];
  /** Which pool the piece comes from that is filled by `fillEnd`, minutes after the start of its batch. */
  pours: (At & { pool: number; fillEnd: number })[];
  strips: (At & { pool: number })[];
  packs: (At & { order: number })[];
  /** Orders without packing: the hand-over day by which they are complete. */
  completions: { order: number; day: number; column: number }[];
  /** Orders that are not complete before the sessions looked at end. */
  later: { order: number; column: number }[];
}

const ordersOf = (yard: YardFile): ExactModel['orders'] =>
  yard.orders.map((order) => {
    const { pieces, packMinutes } = needs(yard, order);
    return { pieces: yard.castings.map((c) => pieces.get(c.id) ?? 0), packMinutes };
  });

/** What the program does not know yet; empty when it covers the yard. */
const notCovered = (yard: YardFile): string[] => {
  const faults: string[] = [];
  const say = (is: boolean, what: string) => is && faults.push(what);
  say(yard.temperatures.length > 0, 'temperatures');
  say(yard.keep !== undefined, 'fixed batches');
  say(
    yard.castings.some((c) => c.perPiece.length + c.cuts.length > 0),
    'materials of a piece',
  );
  say(
    yard.kits.some((k) => k.parts.length + k.cuts.length > 0),
    'parts of a kit',
  );
  say(
    yard.orders.some((o) => o.due === undefined || o.lines.some((l) => 'material' in l && l.material !== undefined)),
    'orders for parts or without a date',
  );
  say(
    [...yard.finished, ...yard.inMould].some((x) => x.order !== undefined),
    'pieces set aside',
  );
  say(
    yard.materials.some((m) => m.leadDays !== undefined),
    'buying',
  );
  return faults;
};

/** The decisions of a yard over its first sessions, without the rows that tie them together. */
export const columnsOf = (yard: YardFile, sessionCount: number): ExactModel => {
  const faults = notCovered(yard);
  if (faults.length > 0) throw new Error(`not covered: ${faults.join(', ')}`);
  const orders = ordersOf(yard);
  const wanted = yard.castings.map((_, c) => orders.reduce((sum, o) => sum + o.pieces[c]!, 0));
  const model: ExactModel = {
    yard,
    grid: gridOf(yard, sessionCount),
    lp: new LinearModel(),
    states: mouldStatesOf(
      yard,
      wanted.reduce((sum, n) => sum + n, 0),
    ),
    orders,
    preps: [],
    coats: [],
    batches: [],
    pours: [],
    strips: [],
    packs: [],
    completions: [],
    later: [],
  };
  addPreps(model);
  addCoats(model);
  addBatches(model, wanted);
  addPours(model);
  addStrips(model);
  return model;
};

const countOf = ({ states }: ExactModel, kind: number) => states.kinds[kind]!.moulds.length;

const addPreps = (model: ExactModel): void => {
  const { grid, states, lp } = model;
  for (const way of states.preps) {
    const most = countOf(model, states.idle[way.from]!.kind);
    const starts = way.asIs ? [0] : startsOf(grid, 'prep', way.minutes);
    for (const start of starts) model.preps.push({ way, start, column: lp.count(most) });
  }
};

/** A coat is allowed where a set-up is. */
const addCoats = (model: ExactModel): void => {
  const { grid, states, lp } = model;
  for (const way of states.coats) {
    const most = countOf(model, states.idle[way.from]!.kind);
    for (const start of startsOf(grid, 'prep', way.minutes)) model.coats.push({ way, start, column: lp.count(most) });
  }
};

const addBatches = (model: ExactModel, wanted: number[]): void => {
  const { yard, grid, lp } = model;
  for (const filling of fillingsOf(yard, wanted))
    for (const start of startsOf(grid, 'batch', filling.end)) {
      const { minute, session } = grid.points[start]!;
      const attended = minute + filling.lastFillEnd + yard.mixes[filling.mix]!.attendMinutes;
      if (attended > grid.sessionEnd[session]!) continue;
      model.batches.push({ filling, start, column: lp.count(yard.yard.mixers) });
    }
};

const addPours = (model: ExactModel): void => {
  const { states, lp } = model;
  const seen = new Set<string>();
  for (const { filling, start } of model.batches)
    for (const { casting, fillEnd } of filling.pieces) {
      const key = `${start} ${casting} ${fillEnd}`;
      if (seen.has(key)) continue;
      seen.add(key);
      states.pools.forEach((pool, p) => {
        if (pool.casting !== casting) return;
        model.pours.push({ pool: p, fillEnd, start, column: lp.count(countOf(model, pool.kind)) });
      });
    }
};

const addStrips = (model: ExactModel): void => {
  const { yard, grid, states, lp } = model;
  states.pools.forEach((pool, p) => {
    const { stripMinutes, mix } = yard.castings[pool.casting]!;
    const { demouldMinutes, mixMinutes } = yard.mixes.find((m) => m.id === mix)!;
    const held = states.starts.flatMap((s) => ('pool' in s && s.pool === p ? [s.filledAt + demouldMinutes] : []));
    const first = Math.min(grid.points[0]!.minute + mixMinutes + demouldMinutes, ...held);
    for (const start of startsOf(grid, 'strip', stripMinutes))
      if (start >= pointFrom(grid, first))
        model.strips.push({ pool: p, start, column: lp.count(countOf(model, pool.kind)) });
  });
};
