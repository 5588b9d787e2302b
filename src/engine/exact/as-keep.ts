import type { Keep, KeptStrip, PlanBatch, PlanCoat, PlanPour } from '../../../shared/plan.ts';
import { coatsBefore } from '../book/coat-before.ts';
import { outOf } from '../bound/slots.ts';
import { NONE, type Problem } from '../decoder/problem.ts';
import { bagsFor } from '../pack/bags.ts';
import type { Done, Task, Work } from './work.ts';

type Of<K extends Task['kind']> = Extract<Task, { kind: K }>;

const tasksOf = <K extends Task['kind']>(last: Done | null, kind: K): Of<K>[] => {
  const tasks: Of<K>[] = [];
  for (let one = last; one; one = one.before) if (one.task.kind === kind) tasks.unshift(one.task as Of<K>);
  return tasks;
};

interface Poured {
  batch: PlanBatch;
  pours: PlanPour[];
}

/** One batch with its pours; a piece that is left in its mould is out as soon as it may be. */
const pouredAs = (problem: Problem, task: Of<'batch'>, first: number, strips: readonly Of<'strip'>[]): Poured => {
  const { yard, calendar } = problem;
  const { id: mix } = yard.mixes[task.mix]!;
  const { yieldKgPerBag, bagStep } = problem.mixes[task.mix]!;
  const at = calendar.instantText;
  const id = `b${first + 1}`;
  const pours = task.fills.map(({ mould, casting, prepStart, prepEnd, fillStart, fillEnd }, i): PlanPour => {
    const { stripMinutes } = problem.castings[casting]!;
    const strip = strips.find(({ pour }) => pour === first + i);
    const out = strip ? { emptyAt: strip.end, readyAt: strip.readyAt } : outOf(problem, casting, fillEnd);
    return {
      id: `p${first + i + 1}`,
      batch: id,
      mould: yard.moulds[mould]!.id,
      casting: yard.castings[casting]!.id,
      ...{ prepStart: at(prepStart), prepEnd: at(prepEnd), fillStart: at(fillStart), fillEnd: at(fillEnd) },
      ...{ stripStart: at(out.emptyAt - stripMinutes), stripEnd: at(out.emptyAt), pieceReadyAt: at(out.readyAt) },
    };
  });
  const kg = task.fills.reduce((n, { casting }) => n + problem.castings[casting]!.kg, 0);
  const times = { start: at(task.start), mixEnd: at(task.mixEnd), end: at(task.end) };
  const bags = bagsFor(kg, yieldKgPerBag, bagStep);
  return { batch: { id, mix, ...times, bags, kg, pours: pours.map((pour) => pour.id) }, pours };
};

/** A batch none of whose pieces is ever taken out is for nobody. */
const isForNobody = ({ pours }: Poured, strips: readonly KeptStrip[]): boolean =>
  !pours.some(({ id }) => strips.some(({ pour }) => pour === id));

/**
 * Work that was found, as what is to be kept of a plan, less batches for nobody and sealing coats that no pour comes after
 * (R6).
 */
export const asKeep = (problem: Problem, { done }: Work): Keep => {
  const { yard, calendar } = problem;
  const at = calendar.instantText;
  const stripped = tasksOf(done, 'strip');
  let first = 0;
  const poured = tasksOf(done, 'batch').map((task) => {
    const one = pouredAs(problem, task, first, stripped);
    first += task.fills.length;
    return one;
  });
  const strips = stripped.map(
    ({ mould, pour, start, end }): KeptStrip => ({
      mould: yard.moulds[mould]!.id,
      ...(pour === NONE ? {} : { pour: `p${pour + 1}` }),
      ...{ stripStart: at(start), stripEnd: at(end) },
    }),
  );
  const wanted = poured.filter((one) => !isForNobody(one, strips));
  const pours = wanted.flatMap((one) => one.pours);
  const coats = tasksOf(done, 'coat').map(
    ({ mould, start, end }): PlanCoat => ({ mould: yard.moulds[mould]!.id, start: at(start), end: at(end) }),
  );
  const packs = tasksOf(done, 'pack').map(({ order, start, end }) => ({
    order: yard.orders[order]!.id,
    ...{ packStart: at(start), packEnd: at(end) },
  }));
  return { batches: wanted.map(({ batch }) => batch), pours, strips, packs, coats: coatsBefore(coats, pours, pours) };
};
