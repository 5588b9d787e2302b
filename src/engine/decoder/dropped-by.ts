import type { DroppedTask, Keep } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedPrep } from './fixed-batch.ts';
import { spellsPlaced } from './spells.ts';

/** Fixed strips, packings and set-ups that the rules allow and that the plan has not: nothing came of what they were for. */
const droppedFor = (state: DecoderState): DroppedTask[] => {
  const { placed, orders, problem } = state;
  const { instantText } = problem.calendar;
  const { strips, packs, preps } = problem.fixed;
  if (strips.length + packs.length + preps.length === 0) return [];
  const when = (mould: number, start: number) => `${mould} ${start}`;
  const places = Array.from({ length: placed.pours }, (_, p) => p);
  const stripped = new Set(places.map((p) => when(placed.pourMould[p]!, placed.pourStripStart[p]!)));
  const setUp = new Set(places.map((p) => when(placed.pourMould[p]!, placed.pourPrepStart[p]!)));
  const isStripped = (mould: number, start: number) =>
    placed.firstStripStart[mould] === start || stripped.has(when(mould, start));
  const isPacked = (order: number, start: number) =>
    orders.packStart[order] === start || spellsPlaced(state, order).some((spell) => spell.start === start);
  const isSetUp = ({ mould, start }: FixedPrep) => setUp.has(when(mould, start));
  const id = (list: readonly { id: string }[], place: number) => list[place]!.id;
  const { moulds } = problem.yard;
  return [
    ...strips.flatMap(({ mould, start }) =>
      isStripped(mould, start) ? [] : [{ strip: id(moulds, mould), at: instantText(start), reason: NOTHING_THERE }],
    ),
    ...packs.flatMap(({ order, start }) =>
      isPacked(order, start)
        ? []
        : [{ pack: id(problem.yard.orders, order), at: instantText(start), reason: NOT_READY }],
    ),
    ...preps.flatMap((prep) =>
      isSetUp(prep) ? [] : [{ prep: id(moulds, prep.mould), at: instantText(prep.start), reason: NOTHING_POURED }],
    ),
  ];
};

const NOTHING_THERE = 'there is nothing in the mould then';
const NOT_READY = 'the order is not ready by then';
const NOTHING_POURED = 'nothing is poured there next';

/** All that is fixed and not in the plan in `state`: what the rules no longer allow, and what nothing came of. */
export const droppedBy = (state: DecoderState): DroppedTask[] => [...state.problem.fixed.dropped, ...droppedFor(state)];

const nameOf = (kind: string, what: string | undefined, at: string): string => `${kind} ${what} ${minuteOf(at)}`;

/** Tells of a task that was dropped whether it is one of what is to be kept here. */
export const firmIn = (keep: Keep | undefined): ((task: DroppedTask) => boolean) => {
  const firm = new Set([
    ...(keep?.batches.map(({ id, start }) => nameOf('batch', id, start)) ?? []),
    ...(keep?.strips?.map(({ mould, stripStart }) => nameOf('strip', mould, stripStart)) ?? []),
    ...(keep?.packs?.map(({ order, packStart }) => nameOf('pack', order, packStart)) ?? []),
    ...(keep?.preps?.map(({ mould, prepStart }) => nameOf('prep', mould, prepStart)) ?? []),
    ...(keep?.coats?.map(({ mould, start }) => nameOf('coat', mould, start)) ?? []),
  ]);
  return ({ batch, strip, pack, prep, coat, at }) =>
    firm.has(nameOf('batch', batch, at)) ||
    firm.has(nameOf('strip', strip, at)) ||
    firm.has(nameOf('pack', pack, at)) ||
    firm.has(nameOf('prep', prep, at)) ||
    firm.has(nameOf('coat', coat, at));
};
