import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { FinishedPieces } from '../../../shared/mould.ts';
import {
  type Begun,
  type PlanCoat,
  type PlanFile,
  type PlanOrder,
  type PlanPour,
  type PlanSheet,
  type PlanStick,
  type PlanStrip,
  spellsOf,
  withSpells,
} from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../engine/book/apply.ts';
import { begin } from '../../engine/book/begin-work.ts';
import { enter } from '../../engine/book/enter.ts';
import type { Entry } from '../../engine/book/entry.ts';
import { changePieces } from '../../engine/book/lots.ts';
import { isMendedByDay, isOut, makesPiece } from '../../engine/book/mould-state.ts';
import { sheetsOfWork, sticksBack, sticksOfWork } from '../../engine/book/sticks-back.ts';
import { sticksLeft } from '../../engine/book/sticks-left.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import type { FromFinished, WorkDone } from '../../engine/book/work-done.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { allRenamed, freeId } from './fixed-plan.ts';
import type { FixedMix } from './fixed-pours.ts';
import { cutForOf, workOfStep } from './late-step-work.ts';
import { endOfStep, type LateStep, lateSteps } from './late-steps.ts';
import { lateWork, NO_WORK, type PlannedPack, workUnderWay } from './late-work.ts';

/** A piece that late work takes out of its mould, as the plan speaks of it. */
type LatePiece = PlanPour | PlanStrip;

/** Where a finished piece is from: its place in the yard as it is, or late work. */
type Origin = number | LatePiece;
type Placed = FinishedPieces & { origin: Origin };

/** A packed order, with what it takes from the yard and which late pieces. */
interface WrittenPack {
  order: PlannedPack;
  fromFinished: FromFinished[];
  pieces: LatePiece[];
}

/** A yard while late work is done in it, and what of that work could be. */
interface Picture {
  yard: YardFile;
  plan: PlanOfWork;
  finished: Placed[];
  written: {
    mixes: FixedMix[];
    strips: PlanStrip[];
    packs: WrittenPack[];
    preps: PlanPour[];
    coats: PlanCoat[];
    cut: PlanStick[];
    sheets: PlanSheet[];
  };
  /** Those of the plan that are still to be cut. */
  sticks: readonly PlanStick[];
  /** Batches that do not go with what is recorded since: they count for nothing until somebody says how it was. */
  doubtful: FixedMix[];
  /** Late pours whose pieces are in moulds, by mould. */
  pours: Map<string, PlanPour>;
}

/** A plan that has late work to do as it was planned. */
interface WithLateWork {
  plan: PlanFile;
  /** Late work that has no place in it; null for none. */
  aside: PlanOfWork | null;
}

/** A yard as it stands once its late work is recorded, and the way from its plan to one that has that work to do. */
export interface LateWorkDone {
  yard: YardFile;
  putBack: (plan: PlanFile) => WithLateWork;
}

/** The pieces the plan gives an order, at their places in the picture. */
const plannedIn = ({ finished, plan }: Picture, order: string): FromFinished[] => {
  const given = plan.orders.find(({ id }) => id === order)?.fromFinished ?? [];
  return finished.flatMap(({ origin, count }, place) => {
    const own = typeof origin === 'number' ? given.some((one) => one.finished === origin) : origin.order === order;
    return own ? [{ finished: place, count }] : [];
  });
};

/** Remembers which sticks and sheets a step cuts, and what is left of the sticks. */
const rememberCuts = (picture: Picture, step: LateStep, work: WorkDone, before: YardFile): void => {
  if (step.kind !== 'batch' && step.kind !== 'pack') return;
  const { plan, sticks } = picture;
  const cutFor = cutForOf(step);
  picture.written.cut.push(...sticksOfWork(work, before, { cutFor, openedAt: step.at }));
  picture.written.sheets.push(...sheetsOfWork(work, before, cutFor));
  const { instantText } = calendarOf(before.yard.timeZone);
  picture.sticks = sticksLeft({ ...plan, sticks }, cutFor, before.materials, instantText);
};

/** Out of use on a day: one that was to be mended by then counts as mended. */
const isOutOn = (mould: YardFile['moulds'][number], day: string): boolean => isOut(mould) && !isMendedByDay(mould, day);

/** The plan sets a mould up after a coat: a set-up that was written down since would have left it nothing to set up. */
const isSetUpAfter = ({ plan }: Picture, { mould, end }: PlanCoat): boolean => {
  const after = plan.pours.filter((pour) => pour.mould === mould && minuteOf(pour.prepStart) >= minuteOf(end));
  const [next] = after.sort((a, b) => minuteOf(a.prepStart) - minuteOf(b.prepStart));
  return next !== undefined && next.prepStart !== next.prepEnd;
};

/** A step that can no longer have been done as planned: its mould holds another piece, or is coated or set up already. */
const isOverdone = (picture: Picture, step: LateStep): boolean => {
  const { yard, pours } = picture;
  if (step.kind === 'prep') {
    const mould = yard.moulds.find(({ id }) => id === step.pour.mould);
    if (!mould || isOutOn(mould, todayIn(yard))) return true;
    return mould.prepped && mould.setFor === step.pour.casting;
  }
  if (step.kind === 'coat') {
    const mould = yard.moulds.find(({ id }) => id === step.coat.mould);
    if (!mould || mould.turnsSinceOil === 0 || isOutOn(mould, todayIn(yard))) return true;
    return mould.prepped && !isSetUpAfter(picture, step.coat);
  }
  if (step.kind !== 'strip') return false;
  const { strip } = step;
  const [piece, pour] = [yard.inMould.find(({ mould }) => mould === strip.mould), pours.get(strip.mould)];
  if (!piece || ('fillEnd' in strip ? pour !== strip : pour !== undefined)) return true;
  // Its own piece is out already, and this is the next one.
  return minuteOf(piece.filledAt) > minuteOf(strip.stripStart);
};

/** How many pieces of each origin some entries take. */
const takenBy = (before: readonly Placed[], after: readonly Placed[]): { origin: Origin; count: number }[] => {
  const left = new Map(after.map(({ origin, count }) => [origin, count]));
  return before
    .map(({ origin, count }) => ({ origin, count: count - (left.get(origin) ?? 0) }))
    .filter(({ count }) => count > 0);
};

const packWritten = (order: PlannedPack, taken: { origin: Origin; count: number }[]): WrittenPack => ({
  order,
  fromFinished: taken.flatMap(({ origin, count }) => (typeof origin === 'number' ? [{ finished: origin, count }] : [])),
  pieces: taken.flatMap(({ origin }) => (typeof origin === 'number' ? [] : [origin])),
});

/** Remembers what a step did, so that a plan can get it back as work to do. */
const remember = (picture: Picture, step: LateStep, before: readonly Placed[]): void => {
  const { written, pours, finished } = picture;
  if (step.kind === 'batch') {
    written.mixes.push(step.mix);
    for (const pour of step.mix.pours) pours.set(pour.mould, pour);
  } else if (step.kind === 'strip') {
    pours.delete(step.strip.mould);
    if (!('fillEnd' in step.strip)) written.strips.push(step.strip);
  } else if (step.kind === 'prep') written.preps.push(step.pour);
  else if (step.kind === 'coat') written.coats.push(step.coat);
  else written.packs.push(packWritten(step.order, takenBy(before, finished)));
};

/** Whether a batch can have been, in whole or in part: all that it names is there. */
const canHaveBeen = ({ batch, pours }: FixedMix, { mixes, moulds }: YardFile): boolean =>
  mixes.some(({ id }) => id === batch.mix) &&
  pours.every(({ mould, casting }) => moulds.some((one) => one.id === mould && makesPiece(one, casting)));

const enterStep = (picture: Picture, step: LateStep): void => {
  if (isOverdone(picture, step)) return;
  const planned = step.kind === 'pack' ? plannedIn(picture, step.order.id) : [];
  const work = workOfStep(step, picture.yard, { planned, sticks: picture.sticks, sheets: picture.plan.sheets });
  // An order that is gone, or packed already, asks for nothing.
  if (work.kind === 'packed' && work.lines.length === 0) return;
  const booked = enter(picture.yard, work);
  if (!booked.ok) {
    if (step.kind === 'batch' && canHaveBeen(step.mix, picture.yard)) picture.doubtful.push(step.mix);
    return;
  }
  const [before, piece] = [picture.finished, step.kind === 'strip' ? step.strip : null];
  rememberCuts(picture, step, work, picture.yard);
  picture.yard = apply(picture.yard, booked.entries);
  picture.finished = booked.entries.reduce<Placed[]>(
    (pieces, entry: Entry) => changePieces(pieces, entry, (fresh) => ({ ...fresh, origin: piece! })),
    before,
  );
  remember(picture, step, before);
};

/** How the engine is told of a step that is under way. */
const asBegun = (step: LateStep, fromFinished: FromFinished[]): Partial<Begun> => {
  switch (step.kind) {
    case 'batch':
      return { batches: [step.mix.batch], pours: step.mix.pours };
    case 'strip': {
      const { mould, stripStart, stripEnd } = step.strip;
      return { strips: [{ mould, stripStart, stripEnd }] };
    }
    case 'prep': {
      const { mould, casting, prepStart, prepEnd } = step.pour;
      return { preps: [{ mould, casting, prepStart, prepEnd }] };
    }
    case 'coat':
      return { coats: [step.coat] };
    case 'pack': {
      const { id, packStart, packEnd } = step.order;
      return { packs: [{ order: id, packStart, packEnd, fromFinished }] };
    }
  }
};

/** A step under way holds hands, mould and material until it is over, and is in the plan as it was. */
const beginStep = (picture: Picture, step: LateStep): void => {
  if (isOverdone(picture, step)) return;
  const planned = step.kind === 'pack' ? plannedIn(picture, step.order.id) : [];
  const work = workOfStep(step, picture.yard, { planned, sticks: picture.sticks, sheets: picture.plan.sheets });
  if (work.kind === 'packed' && work.lines.length === 0) return;
  const begun = begin(picture.yard, { work, end: endOfStep(step), as: asBegun(step, planned) });
  if (!begun) return;
  rememberCuts(picture, step, work, picture.yard);
  picture.yard = begun;
  if (step.kind === 'prep') picture.written.preps.push(step.pour);
};

/** Which order a plan gives each late piece to. */
const ordersOf = ({ finished, written }: Picture, plan: PlanFile): Map<LatePiece, string> => {
  const orders = new Map<LatePiece, string>();
  for (const { order, pieces: taken } of written.packs) for (const piece of taken) orders.set(piece, order.id);
  for (const { id, fromFinished } of plan.orders)
    for (const { finished: place } of fromFinished) {
      const origin = finished[place]?.origin;
      if (origin !== undefined && typeof origin !== 'number') orders.set(origin, id);
    }
  return orders;
};

const forOrder = <P extends LatePiece>({ order: _before, ...piece }: P, order: string | undefined): P =>
  (order === undefined ? piece : { ...piece, order }) as P;

/** Pours with the times at which the plan strips their pieces, where it is the plan that does. */
const poursBack = (picture: Picture, { pours }: FixedMix, plan: PlanFile, orders: Map<LatePiece, string>): PlanPour[] =>
  pours.map((pour) => {
    const strip = picture.pours.get(pour.mould) === pour && plan.strips.find(({ mould }) => mould === pour.mould);
    if (!strip) return forOrder(pour, orders.get(pour));
    const { stripStart, stripEnd, pieceReadyAt } = strip;
    return forOrder({ ...pour, stripStart, stripEnd, pieceReadyAt }, strip.order);
  });

const orderBack = ({ finished, written }: Picture, order: PlanOrder): PlanOrder => {
  const packs = written.packs.filter((one) => one.order.id === order.id);
  const [last, left] = [packs.at(-1), spellsOf(order)];
  const taken = packs.flatMap((one) => one.fromFinished);
  const spells = packs.map(({ order: { packStart, packEnd } }) => ({ packStart, packEnd }));
  if (last && left.length === 0) return { ...withSpells(last.order, spells), fromFinished: taken };
  const fromFinished = order.fromFinished.flatMap(({ finished: place, count }) => {
    const origin = finished[place]?.origin;
    return typeof origin === 'number' ? [{ finished: origin, count }] : [];
  });
  // Of one in several spells the late ones come before those that are left.
  return { ...(last ? withSpells(order, [...spells, ...left]) : order), fromFinished: [...taken, ...fromFinished] };
};

/** A mould that counts as set up gets its set-up back, where the plan still pours what it was set up for. */
const withPreps = (pours: readonly PlanPour[], preps: readonly PlanPour[]): PlanPour[] => {
  const first = new Map<string, PlanPour>();
  for (const pour of pours) {
    const known = first.get(pour.mould);
    if (!known || minuteOf(pour.prepStart) < minuteOf(known.prepStart)) first.set(pour.mould, pour);
  }
  return pours.map((pour) => {
    const prep = preps.find(({ mould, casting }) => mould === pour.mould && casting === pour.casting);
    if (!prep || first.get(pour.mould) !== pour || pour.prepStart !== pour.prepEnd) return pour;
    return { ...pour, prepStart: prep.prepStart, prepEnd: prep.prepEnd };
  });
};

/** Set-ups of moulds for which a plan has nothing to pour any more, or something else: they stand alone. */
const prepsAside = (preps: readonly PlanPour[], pours: readonly PlanPour[], taken: ReadonlySet<string>): PlanPour[] =>
  preps
    .filter(({ mould, prepStart }) => !pours.some((pour) => pour.mould === mould && pour.prepStart === prepStart))
    .map((pour) => ({ ...pour, id: freeId(pour.id, taken), batch: freeId(pour.batch, taken) }));

/** A coat stands in a plan that has a pour in its mould after it (R6). */
const hasPour = (coat: PlanCoat, pours: readonly PlanPour[]): boolean =>
  pours.some(({ mould, prepStart }) => mould === coat.mould && minuteOf(prepStart) >= minuteOf(coat.end));

const asideOf = (
  mixes: readonly FixedMix[],
  preps: readonly PlanPour[],
  coats: readonly PlanCoat[],
): PlanOfWork | null =>
  mixes.length + preps.length + coats.length === 0
    ? null
    : {
        ...NO_WORK,
        coats: [...coats],
        batches: mixes.map(({ batch }) => batch),
        pours: [...mixes.flatMap(({ pours }) => pours), ...preps],
      };

const putBack = (picture: Picture, plan: PlanFile): WithLateWork => {
  const { doubtful, written } = picture;
  const never = new Set(plan.unstripped.map(({ mould }) => mould));
  // A pour in a plan has its strip; one whose piece never comes out by the plan has no place in it.
  const hasPlace = ({ pours }: FixedMix): boolean =>
    !pours.some((pour) => never.has(pour.mould) && picture.pours.get(pour.mould) === pour);
  const mixes = written.mixes.filter(hasPlace);
  const orders = ordersOf(picture, plan);
  const taken = new Set([...plan.batches, ...plan.pours].map(({ id }) => id));
  const back = allRenamed(
    mixes.map((mix) => ({ ...mix, pours: poursBack(picture, mix, plan, orders) })),
    taken,
  );
  const bags = mixes.reduce((sum, { batch }) => sum + batch.bags, 0);
  const pours = [...back.flatMap((mix) => mix.pours), ...withPreps(plan.pours, written.preps)];
  const names = new Map(mixes.map(({ batch }, place) => [batch.id, back[place]!.batch.id]));
  const cut = written.cut.map((stick) => ({
    ...stick,
    cuts: stick.cuts.map((one) => ({ ...one, for: names.get(one.for) ?? one.for })),
  }));
  const sheets = [
    ...written.sheets.map((sheet) => ({ ...sheet, for: names.get(sheet.for) ?? sheet.for })),
    ...(plan.sheets ?? []),
  ];
  const aside = allRenamed([...doubtful, ...written.mixes.filter((mix) => !hasPlace(mix))], taken);
  return {
    plan: {
      ...plan,
      batches: [...back.map(({ batch }) => batch), ...plan.batches],
      pours,
      coats: [...written.coats.filter((coat) => hasPour(coat, pours)), ...plan.coats],
      strips: [
        ...written.strips.map((strip) => forOrder(strip, orders.get(strip))),
        ...plan.strips.filter(({ mould }) => !picture.pours.has(mould)),
      ],
      unstripped: plan.unstripped.filter(({ mould }) => !picture.pours.has(mould)),
      orders: plan.orders.map((order) => orderBack(picture, order)),
      sticks: sticksBack(plan.sticks, cut, picture.yard.materials),
      ...(sheets.length > 0 ? { sheets } : {}),
      score: { ...plan.score, batches: plan.score.batches + mixes.length, bags: plan.score.bags + bags },
    },
    aside: asideOf(
      aside,
      prepsAside(written.preps, pours, taken),
      written.coats.filter((coat) => !hasPour(coat, pours)),
    ),
  };
};

/**
 * The yard as if all late work had been recorded as it was planned, less the steps that were not done, and with what is
 * under way as such (R14): a plan made of it begins after that work and leaves it alone, though time does not go back. Null
 * where there is neither. Late work apart the yard is the very one that recording that work leaves.
 *
 * Example: at 12:20 a batch of 11:00 is not recorded yet. The yard has its pieces in their moulds and its bags out of
 * stock; what the plan made of it strips next Saturday, `putBack` gives as a pour of 11:00 that is stripped then.
 */
export const withLateWorkDone = (
  yard: YardFile,
  work: PlanOfWork,
  notDone: ReadonlySet<string> = new Set(),
): LateWorkDone | null => {
  const [late, underWay] = [lateWork(yard, work), workUnderWay(yard, work)];
  if (!late && !underWay) return null;
  const picture: Picture = {
    ...{ yard, plan: work },
    finished: yard.finished.map((pieces, origin) => ({ ...pieces, origin })),
    written: { mixes: [], strips: [], packs: [], preps: [], coats: [], cut: [], sheets: [] },
    sticks: work.sticks ?? [],
    doubtful: [],
    pours: new Map(),
  };
  const isDone = ({ name }: LateStep): boolean => !notDone.has(name);
  if (late) for (const step of lateSteps(late).filter(isDone)) enterStep(picture, step);
  if (underWay) for (const step of lateSteps(underWay).filter(isDone)) beginStep(picture, step);
  const steps = Object.values(picture.written).reduce((sum, { length }) => sum + length, picture.doubtful.length);
  if (steps === 0 && !picture.yard.begun) return null;
  return { yard: picture.yard, putBack: (planned) => putBack(picture, planned) };
};
