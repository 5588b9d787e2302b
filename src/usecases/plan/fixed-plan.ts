import type { StoredDrop } from '../../../db/stores/change-store.ts';
import {
  type Keep,
  type PlanBatch,
  type PlanCoat,
  type PlanFile,
  type PlanPour,
  poursByBatch,
} from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatsBefore } from '../../engine/book/coat-before.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { keepLater } from '../../engine/standing/keep-later.ts';
import { asMouldsStand, type FixedMix } from './fixed-pours.ts';
import { type PlannedTasks, plannedTasks } from './planned-tasks.ts';

export type { StoredDrop } from '../../../db/stores/change-store.ts';

/** What has to stay in the next plan, and what would have to but cannot, since something it names is gone. */
export interface FixedPlan {
  keep: Keep;
  gone: StoredDrop[];
  /** Some of it begins later than it was planned. */
  isLater?: boolean;
}

/** What is fixed of which plan, and from when on. */
export interface Fixing {
  yard: YardFile;
  /** The plan so far; null before the first. */
  plan: PlanFile | null;
  /** So many hours before it begins a session is fixed; 0: never ahead of it. */
  hours: number;
  /** The present minute. */
  clock: Minute;
  /** Start of a session that is not fixed for once. */
  anew?: string | null;
  /** Sessions that begin after this minute are not fixed yet, unless they are under way; left out: any may be. */
  searchedUntil?: Minute;
  /** Mixes that take the place of those planned for the same sessions. */
  instead?: Keep;
  /** Nothing begins later than it was planned: what cannot be done then is dropped. */
  asItWas?: boolean;
}

/** Sessions all of which stays as it is planned: those under way, and those that begin within so many hours. */
const fixedSessions = (yard: YardFile, hours: number, clock: Minute): Session[] => {
  const horizonDays = Math.min(yard.yard.horizonDays, Math.ceil(hours / 24) + 1);
  const soon = sessionsOf({ ...yard, yard: { ...yard.yard, horizonDays } }, calendarOf(yard.yard.timeZone));
  return soon.filter(({ start }) => start <= clock || (hours > 0 && start <= clock + hours * 60));
};

/**
 * The mixes of a plan, or of what is kept of one, each with its pours in the order in which they are filled: all of them,
 * or those of the batches that are wanted. Of a large plan that is a few of thousands.
 */
export const mixesOf = ({ batches, pours }: Keep, isWanted?: (batch: PlanBatch) => boolean): FixedMix[] => {
  const wanted = isWanted ? batches.filter(isWanted) : batches;
  const ids = new Set(wanted.map(({ id }) => id));
  const byBatch = poursByBatch(isWanted ? pours.filter(({ batch }) => ids.has(batch)) : pours);
  return wanted.map((batch) => ({
    batch,
    pours: (byBatch.get(batch.id) ?? []).sort((a, b) => minuteOf(a.fillStart) - minuteOf(b.fillStart)),
  }));
};

const sessionOf = (sessions: readonly Session[], { start }: PlanBatch): Session | undefined => {
  const at = minuteOf(start);
  return sessions.find((session) => at >= session.start && at < session.end);
};

/** The mixes of a plan that lie in one of these sessions. */
const mixesIn = (sessions: readonly Session[], plan: Keep): FixedMix[] =>
  mixesOf(plan, (batch) => sessionOf(sessions, batch) !== undefined);

/** An id that nothing else has. */
export const freeId = (id: string, taken: ReadonlySet<string>): string =>
  taken.has(id) ? freeId(`${id}+`, taken) : id;

/** Ids that are the mix's own, whatever plan it comes from. */
const renamed = ({ batch, pours }: FixedMix, taken: ReadonlySet<string>): FixedMix => {
  const id = freeId(batch.id, taken);
  const own = pours.map((pour) => ({ ...pour, id: freeId(pour.id, taken), batch: id }));
  return { batch: { ...batch, id, pours: own.map((pour) => pour.id) }, pours: own };
};

/** Mixes with ids that are their own beside those that are taken, and beside each other; theirs are taken then too. */
export const allRenamed = (mixes: readonly FixedMix[], taken: Set<string>): FixedMix[] =>
  mixes.map((mix) => {
    const own = renamed(mix, taken);
    for (const { id } of [own.batch, ...own.pours]) taken.add(id);
    return own;
  });

/** Those of the plan and, in their sessions, those that stand in for them. */
const planned = ({ plan, instead }: Fixing, sessions: readonly Session[]): FixedMix[] => {
  const old = instead ? mixesIn(sessions, instead) : [];
  const taken = new Set(old.map(({ batch }) => sessionOf(sessions, batch)));
  const isOther = (batch: PlanBatch): boolean => !taken.has(sessionOf(sessions, batch));
  const others = plan ? mixesIn(sessions, plan).filter(({ batch }) => isOther(batch)) : [];
  if (old.length === 0) return others;
  const ids = new Set(plan?.batches.filter(isOther).flatMap(({ id, pours }) => [id, ...pours]));
  return [...others, ...old.map((mix) => renamed(mix, ids))];
};

/** What the yard's own file says is fixed, as far as a plan since then has not given it up. */
const imported = ({ yard, plan }: Fixing): FixedMix[] => {
  if (!yard.keep) return [];
  const stands = new Set(plan?.batches.map(({ id, start }) => `${id} ${start}`));
  return mixesOf(yard.keep).filter(({ batch }) => !plan || stands.has(`${batch.id} ${batch.start}`));
};

/** The planned pour that filled a mould with the piece that is in it: of all of its mould the nearest in time. */
const pourOf = (piece: YardFile['inMould'][number], pours: readonly PlanPour[]): PlanPour | undefined => {
  const filled = minuteOf(piece.filledAt);
  const away = ({ fillEnd }: PlanPour): number => Math.abs(minuteOf(fillEnd) - filled);
  return pours.filter(({ mould }) => mould === piece.mould).sort((a, b) => away(a) - away(b))[0];
};

/** Mixes that were poured already: a mould of theirs was filled since the plan was made, in a session under way. */
const isPoured = ({ yard, plan, clock }: Fixing, sessions: readonly Session[]): ((mix: FixedMix) => boolean) => {
  const underWay = sessions.filter(({ start }) => start <= clock);
  const known = new Set([...(plan?.strips ?? []), ...(plan?.unstripped ?? [])].map(({ mould }) => mould));
  const filled = yard.inMould.filter(({ mould }) => !known.has(mould));
  const last = new Set(filled.flatMap((piece) => pourOf(piece, plan?.pours ?? [])?.batch ?? []));
  const poured = new Set(
    plan ? mixesIn(underWay, plan).flatMap(({ batch: { id } }) => (last.has(id) ? [id] : [])) : [],
  );
  return ({ batch }) => poured.has(batch.id);
};

/** What is no longer there of the things a fixed mix names, in words; null when all is. */
const missing = (yard: YardFile, { batch, pours }: FixedMix): string | null => {
  if (!yard.mixes.some(({ id }) => id === batch.mix)) return 'its mix is no longer there';
  for (const { mould: id, casting } of pours) {
    const mould = yard.moulds.find((one) => one.id === id);
    if (!mould) return `mould ${id} is no longer there`;
    const makes = yard.castings.some((one) => one.id === casting) && mould.makes.some((one) => one.casting === casting);
    if (!makes) return `mould ${id} no longer makes it`;
  }
  return null;
};

/**
 * The coats that moulds get for some mixes, by the plan or what stands in its place: also one that was to be for a pour to come
 * which is not kept.
 */
const coatsOf = ({ yard, plan, instead }: Fixing, mixes: readonly FixedMix[]): PlanCoat[] => {
  const own = mixes.flatMap(({ pours }) => pours);
  const now = minuteOf(yard.yard.now);
  return [plan, instead, yard.keep].flatMap((from) => {
    if (!from?.coats || from.coats.length === 0) return [];
    const before = from.pours.filter(({ fillStart }) => minuteOf(fillStart) < now);
    return coatsBefore(from.coats, [...before, ...own], own);
  });
};

/** Mixes and the coats before them as what is to be kept. */
const keepOf = (mixes: readonly FixedMix[], coats: readonly PlanCoat[]): Keep => ({
  batches: mixes.map(({ batch }) => batch),
  pours: mixes.flatMap(({ pours }) => pours),
  ...(coats.length > 0 ? { coats: [...coats] } : {}),
});

const dropOf = ({ batch, pours }: FixedMix, reason: string): StoredDrop => ({
  at: batch.start,
  moulds: pours.map(({ mould }) => mould),
  reason,
});

const sessionsOfFixing = ({ yard, hours, clock, anew, searchedUntil = Number.POSITIVE_INFINITY }: Fixing): Session[] =>
  fixedSessions(yard, hours, clock).filter(
    ({ start }) => (!anew || start !== minuteOf(anew)) && (start <= clock || start <= searchedUntil),
  );

/**
 * The mixes and pours that the next plan has to keep, with the coats before them: those that the present plan has for
 * sessions that are fixed, still to come, and not poured already. What a piece is for may change.
 */
export const fixedMixes = (fixing: Fixing): FixedPlan => {
  const { yard } = fixing;
  const now = minuteOf(yard.yard.now);
  const sessions = sessionsOfFixing(fixing);
  const poured = isPoured(fixing, sessions);
  const begun = new Set(yard.begun?.batches.map(({ id }) => id));
  const fromPlan = planned(fixing, sessions);
  const known = new Set(fromPlan.map(({ batch }) => batch.id));
  const mixes = [...fromPlan, ...imported(fixing).filter(({ batch }) => !known.has(batch.id))]
    .filter((mix) => minuteOf(mix.batch.start) >= now && !begun.has(mix.batch.id) && !poured(mix))
    .sort((a, b) => minuteOf(a.batch.start) - minuteOf(b.batch.start));
  const gone = mixes.flatMap((mix) => {
    const reason = missing(yard, mix);
    return reason === null ? [] : [dropOf(mix, reason)];
  });
  const there = mixes.filter((mix) => missing(yard, mix) === null);
  const { mixes: kept, coats } = asMouldsStand(yard, there, coatsOf(fixing, there));
  return { keep: keepOf(kept, coats), gone };
};

/**
 * All that the next plan has to keep: what `fixedMixes` says, and what the plan strips, packs, coats and sets up then; later,
 * where what comes before it ended later than planned (`keepLater`).
 */
export const fixedPlan = (fixing: Fixing): FixedPlan => {
  const { keep, gone } = fixedMixes(fixing);
  const { yard, plan } = fixing;
  if (!plan) return { keep, gone };
  const tasks = tasksIn(sessionsOfFixing(fixing), plannedTasks(yard, plan, keep.pours));
  const all = { ...keep, ...tasks, coats: [...(keep.coats ?? []), ...tasks.coats] };
  const { keep: kept, left } = fixing.asItWas ? { keep: all, left: [] } : keepLater(yard, all, plan);
  const ids = new Set(left.map(({ id }) => id));
  const tooLate = mixesOf(keep, ({ id }) => ids.has(id)).map((mix) => dropOf(mix, TOO_LATE));
  return { keep: kept, gone: [...gone, ...tooLate], isLater: kept !== all };
};

const TOO_LATE = 'what comes before it ends too late for its session';

/** Of strips, packings, set-ups and coats those that begin in one of these sessions. */
const tasksIn = (sessions: readonly Session[], { strips, packs, preps, coats }: PlannedTasks): PlannedTasks => {
  const isIn = (instant: string): boolean => {
    const at = minuteOf(instant);
    return sessions.some(({ start, end }) => at >= start && at < end);
  };
  return {
    strips: strips.filter(({ stripStart }) => isIn(stripStart)),
    packs: packs.filter(({ packStart }) => isIn(packStart)),
    preps: preps.filter(({ prepStart }) => isIn(prepStart)),
    coats: coats.filter(({ start }) => isIn(start)),
  };
};

const isEmpty = ({ batches, strips = [], packs = [], preps = [], coats = [] }: Keep): boolean =>
  batches.length + strips.length + packs.length + preps.length + coats.length === 0;

/** The yard with what has to stay in its next plan. */
export const withKeep = ({ keep: _own, ...yard }: YardFile, keep: Keep): YardFile =>
  isEmpty(keep) ? yard : { ...yard, keep };

/** What is fixed of a yard for one session. */
export const fixedIn = ({ keep }: YardFile, session: Session): Keep => {
  const mixes = keep ? mixesIn([session], keep) : [];
  const pours = mixes.flatMap((mix) => mix.pours);
  return keepOf(mixes, coatsBefore(keep?.coats ?? [], keep?.pours ?? [], pours));
};

/** What a plan made with `keep` could not keep, with what was gone before. */
export const dropsOf = ({ keep, gone }: FixedPlan, plan: PlanFile): StoredDrop[] => {
  const reasons = new Map(
    plan.dropped.flatMap(({ batch, reason }) => (batch === undefined ? [] : [[batch, reason] as const])),
  );
  const dropped = mixesOf(keep).flatMap((mix) => {
    const reason = reasons.get(mix.batch.id);
    return reason === undefined ? [] : [dropOf(mix, reason)];
  });
  return [...gone, ...dropped];
};
