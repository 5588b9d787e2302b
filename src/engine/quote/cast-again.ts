import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../book/goods.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { NONE } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import type { Answer } from './answer.ts';
import { completesUnder } from './completes-under.ts';
import { completesIfFirst } from './if-first.ts';
import { askingFor } from './present.ts';

/** More of each material than a piece takes: only time is asked about. */
const PLENTY = 10_000;

/** By casting: the minute at which the last piece of it is stripped for an order, and seen to be good or not. */
const lastStripped = ({ placed, problem }: DecoderState, order: number): Map<number, number> => {
  const last = new Map<number, number>();
  const strip = (casting: number, start: number): void => {
    if (start === NONE) return;
    const end = start + problem.castings[casting]!.stripMinutes;
    last.set(casting, Math.max(last.get(casting) ?? 0, end));
  };
  for (let p = 0; p < placed.pours; p++)
    if (placed.pourOrder[p] === order) strip(placed.pourCasting[p]!, placed.pourStripStart[p]!);
  for (const { mould, casting } of problem.inMould)
    if (placed.firstOrder[mould] === order) strip(casting, placed.firstStripStart[mould]!);
  return last;
};

/** The yard with nothing to do, in which all of the order is there at an instant but one piece. */
const lackingOne = (yard: YardFile, order: Order, casting: string, now: string): YardFile => {
  const { keep: _keep, begun: _begun, ...rest } = yard;
  const finished = [...goodsOfLines(order.lines, yard).pieces].map(([id, count]) => ({
    ...{ casting: id, count: id === casting ? count - 1 : count },
  }));
  return {
    ...rest,
    ...{ yard: { ...yard.yard, now }, orders: [] },
    ...{ finished: finished.filter(({ count }) => count > 0), inMould: [] },
    materials: yard.materials.map((one) => ({ ...one, onHand: one.onHand + PLENTY })),
  };
};

/** The plan of an answer, made anew. */
const planned = ({ asking, present, earliest: { dispatch }, found }: Answer): DecoderState | null => {
  if (found) {
    const state = decoderStateOf(found.problem, found.dispatch);
    settle(state, found.dispatch);
    return state;
  }
  if (!dispatch) return null;
  completesUnder(asking, dispatch, present, 'given');
  return asking.state;
};

/**
 * The minute at which an order could be complete if the piece of it that is stripped last were scrap, and were cast again from
 * then on with nothing else in the way, in moulds that are empty and as the yard file has them; of several castings the latest
 * of these. When it is complete by the plan, where nothing is stripped for it.
 *
 * Example: stripped and packed on a Wednesday evening, two days to cure and work every evening: Friday, and not Thursday,
 * though that is the next session.
 */
export const completesCastAgain = (yard: YardFile, order: Order, answer: Answer): number => {
  const { completesAt } = answer.earliest;
  const { problem, added } = answer.asking;
  const state = planned(answer);
  if (!state) return completesAt;
  const again = [...lastStripped(state, added)].map(([casting, minute]) => {
    const now = problem.calendar.instantText(minute);
    const lacking = lackingOne(yard, order, yard.castings[casting]!.id, now);
    return completesIfFirst(order, askingFor(lacking, order));
  });
  return Math.max(completesAt, ...again);
};
