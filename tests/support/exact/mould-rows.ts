import { minuteOf } from '../../../shared/time.ts';
import type { ExactModel } from './exact-model.ts';
import { pointFrom } from './grid.ts';
import { Level } from './level.ts';
import type { Term } from './linear-model.ts';

/** By pool and point: pieces filled and pieces stripped up to then, those from before the plan left out. */
export interface Turned {
  filled: number[][];
  stripped: number[][];
}

const mixOf = (model: ExactModel, pool: number) => {
  const { mix } = model.yard.castings[model.states.pools[pool]!.casting]!;
  return model.yard.mixes.find((m) => m.id === mix)!;
};

const units = (model: ExactModel, minutes: number) => minutes / model.grid.unitMinutes;

/** Moulds stand idle until they are set up or coated, again when the coat is dry, and dirty after they are stripped. */
const idleRows = (model: ExactModel): void => {
  const { grid, states, yard } = model;
  const levels = states.idle.map(() => new Level(grid.points.length));
  for (const start of states.starts)
    if ('idle' in start) levels[start.idle]!.addNumber(pointFrom(grid, start.usableFrom), 1);
  for (const { way, start, column } of model.preps) levels[way.from]!.add(start, column, -1);
  for (const { way, start, column } of model.coats) {
    levels[way.from]!.add(start, column, -1);
    const dry = grid.points[start]!.minute + way.minutes + way.dryMinutes;
    levels[way.to]!.add(pointFrom(grid, dry), column, 1);
  }
  for (const { pool, start, column } of model.strips) {
    const { stripMinutes } = yard.castings[states.pools[pool]!.casting]!;
    levels[states.after[pool]!]!.add(start + units(model, stripMinutes), column, 1);
  }
  for (const level of levels) level.write(model.lp);
};

/** Set up by the start of the batch; none is set up for nothing. */
const preppedRows = (model: ExactModel): void => {
  const { grid, states, lp } = model;
  const levels = states.pools.map(() => new Level(grid.points.length));
  const balance = states.pools.map((): Term[] => []);
  for (const { way, start, column } of model.preps) {
    const ready = way.asIs ? minuteOf(model.yard.yard.now) : grid.points[start]!.minute + way.minutes;
    levels[way.to]!.add(pointFrom(grid, ready), column, 1);
    balance[way.to]!.push([column, 1]);
  }
  for (const { pool, start, column } of model.pours) {
    levels[pool]!.add(start, column, -1);
    balance[pool]!.push([column, -1]);
  }
  for (const level of levels) level.write(lp);
  for (const terms of balance) lp.exactly(terms, 0);
};

/** Each place in a batch is one mould. */
const fillingRows = (model: ExactModel): void => {
  const places = new Map<string, Term[]>();
  const add = (start: number, casting: number, fillEnd: number, term: Term) => {
    const key = `${start} ${casting} ${fillEnd}`;
    places.set(key, [...(places.get(key) ?? []), term]);
  };
  for (const { filling, start, column } of model.batches)
    for (const { casting, fillEnd } of filling.pieces) add(start, casting, fillEnd, [column, -1]);
  for (const { pool, start, fillEnd, column } of model.pours)
    add(start, model.states.pools[pool]!.casting, fillEnd, [column, 1]);
  for (const terms of places.values()) model.lp.exactly(terms, 0);
};

/** No more pieces than are asked for: one more helps nobody. */
const noStockRows = (model: ExactModel): void => {
  const { states, orders, lp } = model;
  model.yard.castings.forEach((_, c) => {
    const pours = model.pours.filter((x) => states.pools[x.pool]!.casting === c);
    const wanted = orders.reduce((sum, o) => sum + o.pieces[c]!, 0);
    lp.atMost(
      pours.map((x): Term => [x.column, 1]),
      wanted,
    );
  });
};

/** Stripped once hard enough (R7), and all that is poured is stripped. */
const stripRows = (model: ExactModel): void => {
  const { grid, states, lp } = model;
  const levels = states.pools.map(() => new Level(grid.points.length));
  const left = states.pools.map((): Term[] => []);
  for (const start of states.starts)
    if ('pool' in start)
      levels[start.pool]!.addNumber(pointFrom(grid, start.filledAt + mixOf(model, start.pool).demouldMinutes), 1);
  for (const { pool, start, fillEnd, column } of model.pours) {
    const out = grid.points[start]!.minute + fillEnd + mixOf(model, pool).demouldMinutes;
    levels[pool]!.add(pointFrom(grid, out), column, 1);
    left[pool]!.push([column, 1]);
  }
  for (const { pool, start, column } of model.strips) {
    levels[pool]!.add(start, column, -1);
    left[pool]!.push([column, -1]);
  }
  for (const level of levels) level.write(lp);
  for (const terms of left) lp.atMost(terms, 0);
};

const turnedColumns = (model: ExactModel): Turned => {
  const { grid, states, yard, lp } = model;
  const filled = states.pools.map(() => new Level(grid.points.length));
  const stripped = states.pools.map(() => new Level(grid.points.length));
  for (const { pool, start, fillEnd, column } of model.pours)
    filled[pool]!.add(start + units(model, fillEnd), column, 1);
  for (const { pool, start, column } of model.strips) {
    const { stripMinutes } = yard.castings[states.pools[pool]!.casting]!;
    stripped[pool]!.add(start + units(model, stripMinutes), column, 1);
  }
  return { filled: filled.map((x) => x.write(lp)), stripped: stripped.map((x) => x.write(lp)) };
};

/** R5, R6, R7: what moulds go through, kind by kind. */
export const mouldRows = (model: ExactModel): Turned => {
  idleRows(model);
  preppedRows(model);
  fillingRows(model);
  noStockRows(model);
  stripRows(model);
  return turnedColumns(model);
};
