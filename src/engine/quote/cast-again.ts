import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../book/goods.ts';
import { soonestComplete } from '../bound/soonest.ts';
import { compile } from '../decoder/compile.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { NONE } from '../decoder/problem.ts';
import type { Answer } from './careful.ts';
import { completesUnder } from './completes-under.ts';

/** More of each material than a piece takes: only time is asked about. */
const PLENTY = 10_000;

/** By casting: the minute at which the last piece of it that is poured for an order is stripped, and seen to be good or not. */
const lastStripped = ({ placed, problem }: DecoderState, order: number): Map<number, number> => {
  const last = new Map<number, number>();
  for (let p = 0; p < placed.pours; p++) {
    if (placed.pourOrder[p] !== order || placed.pourStripStart[p] === NONE) continue;
    const casting = placed.pourCasting[p]!;
    const end = placed.pourStripStart[p]! + problem.castings[casting]!.stripMinutes;
    last.set(casting, Math.max(last.get(casting) ?? 0, end));
  }
  return last;
};

/** The yard with nothing to do but the order, of which all is there at an instant but one piece. */
const lackingOne = (yard: YardFile, order: Order, casting: string, now: string): YardFile => {
  const { keep: _keep, begun: _begun, ...rest } = yard;
  const finished = [...goodsOfLines(order.lines, yard).pieces].map(([id, count]) => ({
    ...{ casting: id, count: id === casting ? count - 1 : count },
  }));
  return {
    ...rest,
    ...{ yard: { ...yard.yard, now }, orders: [{ ...order, due: undefined, wanted: undefined }] },
    ...{ finished: finished.filter(({ count }) => count > 0), inMould: [] },
    materials: yard.materials.map((one) => ({ ...one, onHand: one.onHand + PLENTY })),
  };
};

/**
 * The minute at which an order could be complete at the soonest if the piece of it that is stripped last were scrap, and were
 * cast again from then on with nothing else in the way; of several castings the latest of these. When it is complete by the
 * plan, where nothing is poured for it.
 *
 * Example: stripped and packed on a Wednesday evening, two days to cure and work every evening: Friday, and not Thursday,
 * though that is the next session.
 */
export const completesCastAgain = (
  yard: YardFile,
  order: Order,
  { asking, present, earliest: { completesAt, dispatch } }: Answer,
): number => {
  if (!dispatch) return completesAt;
  const { state, problem, added } = asking;
  completesUnder(asking, dispatch, present, 'given');
  const again = [...lastStripped(state, added)].map(([casting, minute]) => {
    const now = problem.calendar.instantText(minute);
    return soonestComplete(compile(lackingOne(yard, order, yard.castings[casting]!.id, now)), 0);
  });
  return Math.max(completesAt, ...again);
};
