import type { Keep, KeptPack, KeptPrep, KeptStrip, PlanCoat, PlanFile, PlanPour } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatsBefore } from '../../engine/book/coat-before.ts';
import { packsOf } from '../../engine/standing/keep-of-plan.ts';

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
    // The plan may have another piece in it first, which is out by now.
    const strip = pourOfPiece(piece, gone) ?? plan.strips.find(({ mould }) => mould === piece.mould);
    return strip ? [{ mould: piece.mould, ...stripTimes(strip) }] : [];
  });

const packsOfOpen = ({ orders }: YardFile, plan: PlanFile): KeptPack[] => {
  const open = new Set(orders.map(({ id }) => id));
  return packsOf({ orders: plan.orders.filter(({ id }) => open.has(id)) });
};

/** Set-ups of moulds that are to come for pours which are not kept themselves. */
const prepsOf = (yard: YardFile, pours: readonly PlanPour[], now: Minute): KeptPrep[] => {
  const moulds = new Set(yard.moulds.map(({ id }) => id));
  const castings = new Set(yard.castings.map(({ id }) => id));
  const begun = new Set(yard.begun?.preps.map(({ mould, prepStart }) => `${mould} ${prepStart}`));
  return pours
    .filter(({ prepStart, prepEnd }) => prepStart !== prepEnd && minuteOf(prepStart) >= now)
    .filter(({ mould, prepStart }) => !begun.has(`${mould} ${prepStart}`))
    .filter(({ mould, casting }) => moulds.has(mould) && castings.has(casting))
    .map(({ mould, casting, prepStart, prepEnd }) => ({ mould, casting, prepStart, prepEnd }));
};

/** Coats to come of moulds that still need one, but for those before pours that are kept. */
const coatsOf = (yard: YardFile, plan: PlanFile, kept: readonly PlanPour[], now: Minute): PlanCoat[] => {
  const moulds = new Set(
    yard.moulds.filter((one) => one.turnsSinceOil > 0 && one.oilEveryTurns !== undefined).map(({ id }) => id),
  );
  const begun = new Set(yard.begun?.coats.map(({ mould }) => mould));
  const before = coatsBefore(plan.coats, plan.pours, kept);
  return plan.coats.filter(
    (coat) => !before.includes(coat) && moulds.has(coat.mould) && !begun.has(coat.mould) && minuteOf(coat.start) >= now,
  );
};

/** What a plan has to do beside batches. */
export type PlannedTasks = Required<Pick<Keep, 'strips' | 'packs' | 'preps' | 'coats'>>;

/**
 * When a plan strips what its pours fill, as far as they are kept or under way, and what is in moulds now, when it packs the
 * orders that are still there, and when it coats moulds and sets them up for other pours: all of that which is still to come.
 */
export const plannedTasks = (yard: YardFile, plan: PlanFile, kept: readonly PlanPour[]): PlannedTasks => {
  const now = minuteOf(yard.yard.now);
  const begun = yard.begun ?? { pours: [], strips: [], packs: [] };
  const stays = new Set([...kept, ...begun.pours].map(({ id }) => id));
  const [poured, others] = [
    plan.pours.filter(({ id }) => stays.has(id)),
    plan.pours.filter(({ id }) => !stays.has(id)),
  ];
  const strips = [
    ...stripsOfPieces(yard, plan, others).filter(({ mould }) => !begun.strips.some((one) => one.mould === mould)),
    ...poured.map((pour) => ({ mould: pour.mould, pour: pour.id, ...stripTimes(pour) })),
  ];
  const isBegun = ({ order, packStart }: KeptPack): boolean =>
    begun.packs.some((one) => one.order === order && (!one.part || one.packStart === packStart));
  const packs = packsOfOpen(yard, plan).filter((pack) => !isBegun(pack));
  return {
    strips: strips.filter(({ stripStart }) => minuteOf(stripStart) >= now),
    packs: packs.filter(({ packStart }) => minuteOf(packStart) >= now),
    preps: prepsOf(yard, others, now),
    coats: coatsOf(yard, plan, poured, now),
  };
};
