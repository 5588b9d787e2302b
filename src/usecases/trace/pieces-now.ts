import type { Tx } from '../../../db/open.ts';
import { standingPieces } from '../../../db/stores/finished-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { PiecesNow } from './piece-ledger.ts';

/** The order that the plan gives the piece at a place of the finished ones. */
const dealtTo = (plan: PlanFile): ReadonlyMap<number, string> =>
  new Map(
    plan.orders.flatMap(({ id, fromFinished = [] }) =>
      fromFinished.map(({ finished }): [number, string] => [finished, id]),
    ),
  );

/** What stands in the yard and whose it is: of those with a mark, set aside or by the plan. */
export const piecesNow = async (tx: Tx, yard: YardFile, plan: PlanFile): Promise<PiecesNow> => {
  const dealt = dealtTo(plan);
  const strips = new Map(plan.strips.map(({ mould, order }) => [mould, order]));
  return {
    inMoulds: yard.inMould.map(({ order, ...piece }) => ({
      ...piece,
      order: order ?? strips.get(piece.mould) ?? null,
    })),
    inYard: (await standingPieces(tx)).flatMap(({ mark, casting, order }, place) =>
      mark === null ? [] : [{ casting, ...mark, order: order ?? dealt.get(place) ?? null }],
    ),
    toMend: (await piecesToMend(tx)).map(({ casting, mould, filledAt }) => ({ casting, mould, filledAt })),
  };
};
