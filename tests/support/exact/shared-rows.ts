import { minuteOf } from '../../../shared/time.ts';
import { calendar } from '../../contract/audit-plan.mjs';
import type { ExactModel } from './exact-model.ts';
import type { Term } from './linear-model.ts';

/** R1: at no point more people than the open windows have. */
export const peopleRows = (model: ExactModel): void => {
  const { grid, yard, states, lp } = model;
  const busy = grid.points.map((): Term[] => []);
  const take = (start: number, minutes: number, people: number, column: number) => {
    if (people === 0) return;
    for (let p = start; p < start + minutes / grid.unitMinutes; p++) busy[p]!.push([column, people]);
  };
  for (const { way, start, column } of model.preps) take(start, way.minutes, 1, column);
  for (const { way, start, column } of model.coats) take(start, way.minutes, 1, column);
  for (const { filling, start, column } of model.batches)
    take(start, filling.end, yard.mixes[filling.mix]!.crew, column);
  for (const { pool, start, column } of model.strips) {
    const { stripMinutes, stripCrew } = yard.castings[states.pools[pool]!.casting]!;
    take(start, stripMinutes, stripCrew, column);
  }
  for (const { order, start, column } of model.packs) take(start, model.orders[order]!.packMinutes, 1, column);
  busy.forEach((terms, p) => {
    if (terms.length > 0) lp.atMost(terms, grid.points[p]!.people);
  });
};

/** R2: no more batches being mixed than there are mixers. */
export const mixerRows = (model: ExactModel): void => {
  const { grid, yard, lp } = model;
  const mixing = grid.points.map((): Term[] => []);
  for (const { filling, start, column } of model.batches) {
    const until = start + yard.mixes[filling.mix]!.mixMinutes / grid.unitMinutes;
    for (let p = start; p < until; p++) mixing[p]!.push([column, 1]);
  }
  for (const terms of mixing) if (terms.length > 0) lp.atMost(terms, yard.yard.mixers);
};

/** R10 for materials that cannot be bought: before each arrival no more is used than was there. */
export const materialRows = (model: ExactModel): void => {
  const { yard, grid, lp } = model;
  const { minuteAt } = calendar(yard.yard.timeZone);
  for (const material of yard.materials) {
    const arrivals = yard.incoming
      .filter((x) => x.material === material.id)
      .map((x) => ({ at: Math.max(minuteOf(yard.yard.now), minuteAt(x.on, '00:00')), quantity: x.quantity }));
    for (const until of [...arrivals.map((x) => x.at), Number.POSITIVE_INFINITY]) {
      const there = arrivals.reduce((sum, x) => sum + (x.at < until ? x.quantity : 0), material.onHand);
      const uses = model.batches.flatMap(({ filling, start, column }): Term[] => {
        const perBag = yard.mixes[filling.mix]!.perBag.filter((x) => x.material === material.id);
        const quantity = filling.bags * perBag.reduce((sum, x) => sum + x.quantity, 0);
        return quantity > 0 && grid.points[start]!.minute < until ? [[column, quantity]] : [];
      });
      lp.atMost(uses, there + 1e-6);
    }
  }
};
