import type { PlanOfWork } from '../../../shared/late-work.ts';
import {
  type PackSpell,
  type PlanOrder,
  type PlanPour,
  type PlanStrip,
  spellsOf,
  withSpells,
} from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { withBatchBegun } from '../../engine/book/begin-batch.ts';
import type {
  CoatWork,
  Filled,
  PackWork,
  PourWork,
  SetUpWork,
  StripWork,
  WorkDone,
} from '../../engine/book/work-done.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { mixesOf } from './fixed-plan.ts';
import type { FixedMix } from './fixed-pours.ts';
import { type LateStep, lateSteps, packingName, stripOf } from './late-steps.ts';
import { lateWork } from './late-work.ts';

type Moved = (instant: string, minutes: number) => string;

/** The strip of a piece that was poured otherwise than planned: as much later as it was. */
const stripAfter = (pour: PlanPour, { filledAt }: Filled, moved: Moved): PlanStrip => {
  const later = Math.max(0, minuteOf(filledAt) - minuteOf(pour.fillEnd));
  const { stripStart, stripEnd, pieceReadyAt, ...strip } = stripOf(pour);
  return {
    ...strip,
    stripStart: moved(stripStart, later),
    stripEnd: moved(stripEnd, later),
    pieceReadyAt: moved(pieceReadyAt, later),
  };
};

const isOf = (pour: PlanPour, { mould, casting }: Pick<Filled, 'mould' | 'casting'>): boolean =>
  pour.mould === mould && pour.casting === casting;

/** How far from its planned time a batch was poured. */
const minutesOff = ({ pours }: FixedMix, done: PourWork): number => {
  const full = (times: string[]): number => Math.max(...times.map(minuteOf));
  return Math.abs(full(pours.map(({ fillEnd }) => fillEnd)) - full(done.pours.map(({ filledAt }) => filledAt)));
};

/** The late batch that some pours are: the one that is named, else the nearest in time that has one of them. */
const mixPoured = (steps: readonly LateStep[], done: PourWork, step: string | undefined): FixedMix | null => {
  const mixes = steps.flatMap((one) => (one.kind === 'batch' ? [one] : []));
  if (step !== undefined) return mixes.find(({ name }) => name === step)?.mix ?? null;
  const [nearest] = mixes
    .map(({ mix }) => mix)
    .filter((mix) => mix.pours.some((pour) => done.pours.some((one) => isOf(pour, one))))
    .sort((a, b) => minutesOff(a, done) - minutesOff(b, done));
  return nearest ?? null;
};

const lessPoured = (work: PlanOfWork, mix: FixedMix | null, { pours }: PourWork, moved: Moved): PlanOfWork => {
  const own = new Set(mix?.pours);
  const batches = new Set(work.batches.map(({ id }) => id));
  const filled = new Set(pours.map(({ mould }) => mould));
  // A set-up that stands alone was for a pour like this one.
  const isUsedUp = (pour: PlanPour): boolean => !batches.has(pour.batch) && filled.has(pour.mould);
  const strips = [...own].flatMap((pour) => {
    const one = pours.find((filledOne) => isOf(pour, filledOne));
    return one ? [stripAfter(pour, one, moved)] : [];
  });
  return {
    ...work,
    batches: work.batches.filter((batch) => batch !== mix?.batch),
    pours: work.pours.filter((pour) => !own.has(pour) && !isUsedUp(pour)),
    strips: [...work.strips, ...strips],
  };
};

const lessStripped = (work: PlanOfWork, { mould }: StripWork): PlanOfWork => {
  const [first] = work.strips
    .filter((strip) => strip.mould === mould)
    .sort((a, b) => minuteOf(a.stripStart) - minuteOf(b.stripStart));
  return { ...work, strips: work.strips.filter((strip) => strip !== first) };
};

const lessCoated = (work: PlanOfWork, { mould }: CoatWork): PlanOfWork => {
  const coats = work.coats ?? [];
  const [first] = coats.filter((coat) => coat.mould === mould).sort((a, b) => minuteOf(a.start) - minuteOf(b.start));
  return { ...work, coats: coats.filter((coat) => coat !== first) };
};

/** A batch that begins later than planned, with all that follows in its moulds as much later. */
const batchLater = (work: PlanOfWork, mix: FixedMix, at: Minute, yard: YardFile, moved: Moved): PlanOfWork => {
  const later = at - minuteOf(mix.batch.start);
  const begun = withBatchBegun(work, mix, at, yard);
  const pours = begun.pours.map((pour) => {
    if (pour.batch !== mix.batch.id) return pour;
    const { stripStart, stripEnd, pieceReadyAt } = pour;
    const strip = { stripStart: moved(stripStart, later), stripEnd: moved(stripEnd, later) };
    return { ...pour, ...strip, pieceReadyAt: moved(pieceReadyAt, later) };
  });
  return { ...begun, pours };
};

/** A mould that was ready only after its batch was to be begun: that began no sooner. */
const lessSetUp = (work: PlanOfWork, { mould, doneAt }: SetUpWork, yard: YardFile, moved: Moved): PlanOfWork => {
  const [first] = work.pours
    .filter((pour) => pour.mould === mould && pour.prepStart !== pour.prepEnd)
    .sort((a, b) => minuteOf(a.prepStart) - minuteOf(b.prepStart));
  const pours = work.pours.map((pour) => (pour === first ? { ...pour, prepStart: pour.prepEnd } : pour));
  const left = { ...work, pours };
  const [mix] = first ? mixesOf(left, ({ id }) => id === first.batch) : [];
  const at = minuteOf(doneAt);
  return mix && minuteOf(mix.batch.start) < at ? batchLater(left, mix, at, yard, moved) : left;
};

/** The spells of an order that are left after one, the one that is named or else the first; none after all of it is packed. */
const spellsAfter = (order: PlanOrder, { minutes }: PackWork, step: string | undefined): PackSpell[] => {
  if (minutes === undefined) return [];
  const spells = spellsOf(order);
  const named = spells.findIndex(({ packStart }) => packingName(order.id, packStart) === step);
  return spells.filter((_, place) => place !== Math.max(0, named));
};

const lessPacked = (work: PlanOfWork, done: PackWork, step: string | undefined): PlanOfWork => ({
  ...work,
  orders: work.orders.map((order) =>
    order.id === done.order ? withSpells(order, spellsAfter(order, done, step)) : order,
  ),
});

/**
 * What is left to answer of the work of a plan once something is recorded, whatever the time it was done at. A batch that
 * was poured later than planned has its pieces stripped as much later, and one whose mould was ready only later was begun
 * no sooner. `step` names the step that it was, where that is
 * known.
 */
export const lessAnswered = (yard: YardFile, work: PlanOfWork, done: WorkDone, step?: string): PlanOfWork => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const moved: Moved = (instant, minutes) => (minutes === 0 ? instant : instantText(minuteOf(instant) + minutes));
  switch (done.kind) {
    case 'poured': {
      const late = lateWork(yard, work);
      return lessPoured(work, late && mixPoured(lateSteps(late), done, step), done, moved);
    }
    case 'stripped':
      return lessStripped(work, done);
    case 'coated':
      return lessCoated(work, done);
    case 'set up':
      return lessSetUp(work, done, yard, moved);
    case 'packed':
      return lessPacked(work, done, step);
  }
};
