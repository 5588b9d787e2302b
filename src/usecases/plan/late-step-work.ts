import type { PlanSheet, PlanStick } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { wasCoated } from '../../engine/book/mould-state.ts';
import { cutFromFor } from '../../engine/book/sheets-cut.ts';
import type { FromFinished, WorkDone } from '../../engine/book/work-done.ts';
import type { LateStep } from './late-steps.ts';

type Poured = Extract<WorkDone, { kind: 'poured' }>;

/**
 * What the plan gives a step: the pieces of an order that is packed, its sticks as they are once all before is cut, and its sheets,
 * of which each is cut for one batch.
 */
interface Given {
  planned: readonly FromFinished[];
  sticks: readonly PlanStick[];
  sheets?: readonly PlanSheet[] | undefined;
}

const cutFrom = ({ sticks, sheets = [] }: Given, id: string) =>
  cutFromFor({ sticks: [...sticks], sheets: [...sheets] }, id);

/**
 * A batch as it was planned: each mould full at its own time, and a sealing coat that was due by then given. Nobody said
 * whom the pieces are for: they stay the plan's to deal.
 */
const poured = (
  { mix: { batch, pours } }: Extract<LateStep, { kind: 'batch' }>,
  yard: YardFile,
  given: Given,
): Poured => ({
  kind: 'poured',
  bags: batch.bags,
  cutFrom: cutFrom(given, batch.id),
  pours: pours.map((pour) => {
    const mould = yard.moulds.find(({ id }) => id === pour.mould);
    const coated = mould !== undefined && wasCoated(mould);
    return { mould: pour.mould, casting: pour.casting, order: null, coated, filledAt: pour.fillEnd };
  }),
});

/** What is cut from sticks for a batch or an order, by its id in the plan. */
export const cutForOf = (step: Extract<LateStep, { kind: 'batch' | 'pack' }>): string =>
  step.kind === 'batch' ? step.mix.batch.id : step.order.id;

/**
 * A step of late work as it is recorded when it was done as planned: seen with the yard as it stands by then, and what the
 * plan gives it.
 */
export const workOfStep = (step: LateStep, yard: YardFile, given: Given): WorkDone => {
  if (step.kind === 'batch') return poured(step, yard, given);
  if (step.kind === 'strip')
    return { kind: 'stripped', mould: step.strip.mould, cameOut: 'good', reason: '', doneAt: step.strip.stripEnd };
  if (step.kind === 'coat') return { kind: 'coated', mould: step.coat.mould, doneAt: step.coat.end };
  if (step.kind === 'prep') {
    const { mould, casting, prepEnd } = step.pour;
    const found = yard.moulds.find(({ id }) => id === mould);
    return { kind: 'set up', mould, casting, coated: found !== undefined && wasCoated(found), doneAt: prepEnd };
  }
  const { id, packStart, packEnd, packs } = step.order;
  const minutes = packs ? { minutes: minuteOf(packEnd) - minuteOf(packStart) } : {};
  const lines = yard.orders.find((order) => order.id === id)?.lines ?? [];
  const taken = { planned: given.planned, cutFrom: cutFrom(given, id) };
  return { kind: 'packed', order: id, lines, ...minutes, ...taken, evenShort: false, doneAt: packEnd };
};
