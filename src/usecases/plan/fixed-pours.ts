import type { Begun, PlanBatch, PlanCoat, PlanPour } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatBefore } from '../../engine/book/coat-before.ts';
import { coatMinutes, setUpMinutes, turnsAfterPour } from '../../engine/book/mould-state.ts';
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
  /** It is being set up: that is the set-up of what is poured next. */
  underWay?: Pick<PlanPour, 'prepStart' | 'prepEnd'>;
}

const NOTHING_BEGUN: Pick<Begun, 'pours' | 'strips' | 'preps' | 'coats'> = {
  pours: [],
  strips: [],
  preps: [],
  coats: [],
};

const standingOf = (yard: YardFile, id: string): Standing => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) throw new Error(`A fixed pour needs mould ${id}, which is not there.`);
  const piece = yard.inMould.find((one) => one.mould === id);
  const { setFor, turnsSinceOil, condition, prepped } = mould;
  const { pours, strips, preps, coats } = yard.begun ?? NOTHING_BEGUN;
  const full = pours.find((one) => one.mould === id);
  if (full) {
    const turns = turnsAfterPour(turnsSinceOil, false);
    return { held: true, dirty: true, setFor: full.casting, prepped: false, turnsSinceOil: turns };
  }
  const setUp = preps.find((one) => one.mould === id);
  if (setUp) {
    const { casting, prepStart, prepEnd } = setUp;
    const underWay = { prepStart, prepEnd };
    return { held: false, dirty: false, setFor: casting, prepped: true, turnsSinceOil, underWay };
  }
  if (coats.some((one) => one.mould === id))
    return { held: false, dirty: false, setFor, prepped: false, turnsSinceOil: 0 };
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

/** Nothing is left to do before the pour. */
const isSetUp = ({ prepped, setFor }: Standing, { casting }: PlanPour): boolean => prepped && setFor === casting;

const prepMinutesOf = (yard: YardFile, pour: PlanPour, standing: Standing, coated: boolean): number => {
  const mould = yard.moulds.find(({ id }) => id === pour.mould);
  const casting = yard.castings.find(({ id }) => id === pour.casting);
  const change = mould?.makes.find((make) => make.casting === pour.casting)?.changeMinutes ?? 0;
  if (!casting) return 0;
  const changing = standing.setFor === pour.casting ? 0 : change;
  return setUpMinutes(casting, changing, standing.dirty && !coated);
};

/** A fixed coat as the mould stands now: marked clean it takes less time; null where it was given already, or is past. */
const coatAsStands = (yard: YardFile, coat: PlanCoat | undefined, standing: Standing): PlanCoat | null => {
  if (!coat || standing.turnsSinceOil === 0) return null;
  const mould = yard.moulds.find(({ id }) => id === coat.mould);
  const setFor = yard.castings.find(({ id }) => id === standing.setFor);
  if (mould?.oilEveryTurns === undefined || !setFor) return null;
  const now = minuteOf(yard.yard.now);
  const minutes = coatMinutes(mould.oilMinutes, setFor, standing.dirty);
  const [from, to] = [minuteOf(coat.start), minuteOf(coat.end)];
  if (minutes === to - from && from >= now) return coat;
  const text = calendarOf(yard.yard.timeZone).instantText;
  const start = Math.max(now, to - minutes);
  return { ...coat, start: text(start), end: text(start + minutes) };
};

/**
 * A fixed pour with its set-up as the mould stands now: marked cleaned it takes less time, set up already none. What is left
 * of it ends when it was to end, or begins now when that is later.
 */
const withPrepOf = (
  yard: YardFile,
  pour: PlanPour,
  batchStart: Minute,
  standing: Standing,
  coated: boolean,
): PlanPour => {
  const text = calendarOf(yard.yard.timeZone).instantText;
  const now = minuteOf(yard.yard.now);
  const [from, to] = [minuteOf(pour.prepStart), minuteOf(pour.prepEnd)];
  if (!coated && isSetUp(standing, pour)) {
    if (standing.underWay) return { ...pour, ...standing.underWay };
    if (from === to && from >= now) return pour;
    return { ...pour, prepStart: text(batchStart), prepEnd: text(batchStart) };
  }
  const minutes = prepMinutesOf(yard, pour, standing, coated);
  if (minutes === to - from && from >= now) return pour;
  const start = Math.max(now, (from === to ? batchStart : to) - minutes);
  return { ...pour, prepStart: text(start), prepEnd: text(start + minutes) };
};

/** What is fixed, as the moulds stand. */
export interface AsMouldsStand {
  mixes: FixedMix[];
  /** Sealing coats of moulds that the mixes fill. */
  coats: PlanCoat[];
}

/**
 * Fixed mixes, the earliest first, with every set-up as the moulds stand now and no order named that is gone, and of the
 * `coats` those that their moulds still get before them.
 */
export const asMouldsStand = (
  yard: YardFile,
  mixes: readonly FixedMix[],
  coats: readonly PlanCoat[] = [],
): AsMouldsStand => {
  const standings = new Map<string, Standing>();
  const orders = new Set(yard.orders.map(({ id }) => id));
  const all = mixes.flatMap(({ pours }) => pours);
  const given: PlanCoat[] = [];
  const settled = (pour: PlanPour, batchStart: Minute): PlanPour => {
    const standing = standings.get(pour.mould) ?? standingOf(yard, pour.mould);
    const coat = isSetUp(standing, pour) ? null : coatAsStands(yard, coatBefore(coats, all, pour), standing);
    if (coat) given.push(coat);
    const { order, ...rest } = withPrepOf(yard, pour, batchStart, standing, coat !== null);
    const turnsSinceOil = turnsAfterPour(standing.turnsSinceOil, coat !== null);
    standings.set(pour.mould, { held: true, dirty: true, setFor: pour.casting, prepped: false, turnsSinceOil });
    return order !== undefined && orders.has(order) ? { ...rest, order } : rest;
  };
  const settledMixes = mixes.map(({ batch, pours }) => ({
    batch,
    pours: pours.map((pour) => settled(pour, minuteOf(batch.start))),
  }));
  return { mixes: settledMixes, coats: given };
};
