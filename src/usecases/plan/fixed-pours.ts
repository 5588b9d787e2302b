import type { Begun, PlanBatch, PlanPour } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { setUpMinutes, turnsAfterPour } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';

/** A mix with the pours it fills, in the order in which they are filled. */
export interface FixedMix {
  batch: PlanBatch;
  pours: PlanPour[];
}

/** How a mould stands before a pour. */
interface Standing {
  held: boolean;
  dirty: boolean;
  setFor: string;
  prepped: boolean;
  turnsSinceOil: number;
}

const NOTHING_BEGUN: Pick<Begun, 'pours' | 'strips' | 'preps'> = { pours: [], strips: [], preps: [] };

const standingOf = (yard: YardFile, id: string): Standing => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) throw new Error(`A fixed pour needs mould ${id}, which is not there.`);
  const piece = yard.inMould.find((one) => one.mould === id);
  const { setFor, turnsSinceOil, condition, prepped } = mould;
  const { pours, strips, preps } = yard.begun ?? NOTHING_BEGUN;
  const full = pours.find((one) => one.mould === id);
  if (full) {
    const turns = turnsAfterPour(turnsSinceOil, full.oiled);
    return { held: true, dirty: true, setFor: full.casting, prepped: false, turnsSinceOil: turns };
  }
  const setUp = preps.find((one) => one.mould === id);
  if (setUp) return { held: false, dirty: false, setFor: setUp.casting, prepped: true, turnsSinceOil };
  const held = !strips.some((one) => one.mould === id);
  if (piece) return { held, dirty: true, setFor: piece.casting, prepped: false, turnsSinceOil };
  return {
    held: false,
    dirty: condition === 'dirty',
    setFor,
    prepped: prepped && condition === 'ready',
    turnsSinceOil,
  };
};

const prepMinutesOf = (yard: YardFile, pour: PlanPour, standing: Standing, oiled: boolean): number => {
  const mould = yard.moulds.find(({ id }) => id === pour.mould);
  const casting = yard.castings.find(({ id }) => id === pour.casting);
  const change = mould?.makes.find((make) => make.casting === pour.casting)?.changeMinutes ?? 0;
  if (!mould || !casting) return 0;
  const changing = standing.setFor === pour.casting ? 0 : change;
  return setUpMinutes(casting, mould.oilMinutes, changing, standing.dirty, oiled);
};

/**
 * A fixed pour with its set-up as the mould stands now: marked cleaned or sealed it takes less time, set up already none.
 * What is left of it ends when it was to end, or begins now when that is later.
 */
const withPrepOf = (yard: YardFile, pour: PlanPour, batchStart: Minute, standing: Standing): PlanPour => {
  const text = calendarOf(yard.yard.timeZone).instantText;
  const now = minuteOf(yard.yard.now);
  const [from, to] = [minuteOf(pour.prepStart), minuteOf(pour.prepEnd)];
  if (standing.prepped && standing.setFor === pour.casting) {
    if (from === to && from >= now && !pour.oiled) return pour;
    return { ...pour, oiled: false, prepStart: text(batchStart), prepEnd: text(batchStart) };
  }
  const oiled = pour.oiled && standing.turnsSinceOil > 0;
  const minutes = prepMinutesOf(yard, pour, standing, oiled);
  if (oiled === pour.oiled && minutes === to - from && from >= now) return pour;
  const start = Math.max(now, (from === to ? batchStart : to) - minutes);
  return { ...pour, oiled, prepStart: text(start), prepEnd: text(start + minutes) };
};

/** Fixed mixes, the earliest first, with every set-up as the moulds stand now and no order named that is gone. */
export const asMouldsStand = (yard: YardFile, mixes: readonly FixedMix[]): FixedMix[] => {
  const standings = new Map<string, Standing>();
  const orders = new Set(yard.orders.map(({ id }) => id));
  const settled = (pour: PlanPour, batchStart: Minute): PlanPour => {
    const standing = standings.get(pour.mould) ?? standingOf(yard, pour.mould);
    const { order, ...rest } = withPrepOf(yard, pour, batchStart, standing);
    const turnsSinceOil = turnsAfterPour(standing.turnsSinceOil, rest.oiled);
    standings.set(pour.mould, { held: true, dirty: true, setFor: pour.casting, prepped: false, turnsSinceOil });
    return order !== undefined && orders.has(order) ? { ...rest, order } : rest;
  };
  return mixes.map(({ batch, pours }) => ({
    batch,
    pours: pours.map((pour) => settled(pour, minuteOf(batch.start))),
  }));
};
