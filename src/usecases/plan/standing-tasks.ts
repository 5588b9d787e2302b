import type { Keep, KeptPack, KeptStrip, PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

type Times = Pick<KeptStrip, 'stripStart' | 'stripEnd'>;

const stripTimes = ({ stripStart, stripEnd }: Times): Times => ({ stripStart, stripEnd });

/** The pour of a plan that filled a mould with the piece that is in it now, written down or not. */
const pourOfPiece = (
  { mould, casting, filledAt }: YardFile['inMould'][number],
  pours: readonly PlanPour[],
): PlanPour | undefined => {
  const filled = minuteOf(filledAt);
  return pours.find(
    (pour) =>
      pour.mould === mould &&
      pour.casting === casting &&
      minuteOf(pour.prepStart) <= filled &&
      filled <= minuteOf(pour.stripStart),
  );
};

/** When the pieces that are in moulds now come out, by the plan. */
const stripsOfPieces = ({ inMould }: YardFile, plan: PlanFile, gone: readonly PlanPour[]): KeptStrip[] =>
  inMould.flatMap((piece) => {
    const strip = plan.strips.find(({ mould }) => mould === piece.mould) ?? pourOfPiece(piece, gone);
    return strip ? [{ mould: piece.mould, ...stripTimes(strip) }] : [];
  });

const packsOf = ({ orders }: YardFile, plan: PlanFile): KeptPack[] => {
  const open = new Set(orders.map(({ id }) => id));
  return plan.orders.flatMap(({ id, packStart, packEnd }) =>
    packStart === undefined || packEnd === undefined || !open.has(id) ? [] : [{ order: id, packStart, packEnd }],
  );
};

/**
 * When a plan strips what its pours fill, as far as they are kept or under way, and what is in moulds now, and when it packs
 * the orders that are still there: all of that which is still to come.
 */
export const standingTasks = (
  yard: YardFile,
  plan: PlanFile,
  kept: Pick<Keep, 'pours'>,
): Pick<Keep, 'strips' | 'packs'> => {
  const now = minuteOf(yard.yard.now);
  const begun = yard.begun ?? { pours: [], strips: [], packs: [] };
  const stays = new Set([...kept.pours, ...begun.pours].map(({ id }) => id));
  const [poured, gone] = [plan.pours.filter(({ id }) => stays.has(id)), plan.pours.filter(({ id }) => !stays.has(id))];
  const strips = [
    ...stripsOfPieces(yard, plan, gone).filter(({ mould }) => !begun.strips.some((one) => one.mould === mould)),
    ...poured.map((pour) => ({ mould: pour.mould, pour: pour.id, ...stripTimes(pour) })),
  ];
  const packs = packsOf(yard, plan).filter(({ order }) => !begun.packs.some((one) => one.order === order));
  return {
    strips: strips.filter(({ stripStart }) => minuteOf(stripStart) >= now),
    packs: packs.filter(({ packStart }) => minuteOf(packStart) >= now),
  };
};
