import type { Tx } from '../../db/open.ts';
import { markImproved, type StoredPlan, savePlan, storedPlan } from '../../db/stores/plan-store.ts';
import { fixedHours, loadYardFile, revision } from '../../db/stores/yard-store.ts';
import type { PlanFile, Score } from '../../shared/plan.ts';
import { minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { asBegun } from './begun-preps.ts';
import type { UseCaseContext } from './context.ts';
import { dropsOf, type FixedPlan, fixedPlan, withKeep } from './fixed-plan.ts';
import { type Think, thinkHere } from './long-thought.ts';
import { BETTER_PLAN, recordRemake } from './record-remake.ts';
import { fixingFrom, startingFrom } from './remake-plan.ts';

const EPSILON = 1e-9;

/** What decides between plans, first number first; less is better. */
const measuresOf = ({ batchWorthDays, bagWorthDays }: YardFile['yard'], score: Score): number[] => [
  score.unplannedWeight,
  score.weightedDaysLate,
  batchWorthDays * score.batches + bagWorthDays * score.bags + score.weightedCompletionDays,
];

const isBetter = (yard: YardFile, plan: PlanFile, than: PlanFile): boolean => {
  const [ours, theirs] = [measuresOf(yard.yard, plan.score), measuresOf(yard.yard, than.score)];
  const decisive = ours.findIndex((measure, at) => Math.abs(measure - theirs[at]!) > EPSILON);
  return decisive >= 0 && ours[decisive]! < theirs[decisive]!;
};

/** A plan that was made in a hurry, and what a better one has to be made from. */
interface Hurried {
  stored: StoredPlan;
  yard: YardFile;
  fixed: FixedPlan;
}

const isSame = (one: StoredPlan, other: StoredPlan | null): boolean =>
  other !== null && one.revision === other.revision && one.madeAt === other.madeAt && !other.improved;

/** The stored plan, unless a longer search has been through it or its time or its data is over. */
const hurriedPlan = async (tx: Tx, now: string): Promise<Hurried | null> => {
  const stored = await storedPlan(tx);
  const minute = minuteOf(now);
  if (!stored || stored.improved || stored.revision !== (await revision(tx))) return null;
  if (minute < stored.goodFromMinute || minute >= stored.goodUntilMinute) return null;
  // As of the plan's own now: both are then measured alike, and what was planned for since then stays fixed.
  const yard = asBegun(await loadYardFile(tx, stored.now), stored.plan);
  const fixed = fixedPlan({ ...fixingFrom(yard, stored, await fixedHours(tx)), clock: minute });
  return { stored, yard: withKeep(yard, fixed.keep), fixed };
};

/** Puts a better plan in place of the one it was made from, if that still stands. True when it did. */
const storeBetter = async (
  tx: Tx,
  now: string,
  { stored, yard, fixed }: Hurried,
  { plan, memory }: { plan: PlanFile; memory: unknown },
): Promise<boolean> => {
  if (!isSame(stored, await storedPlan(tx)) || (await revision(tx)) !== stored.revision) return false;
  if (!isBetter(yard, plan, stored.plan)) {
    await markImproved(tx);
    return false;
  }
  await savePlan(tx, { ...stored, plan, memory, improved: true });
  const after = { plan, yard, revision: stored.revision, now: stored.now, dropped: dropsOf(fixed, plan) };
  await recordRemake(tx, now, BETTER_PLAN, stored, after);
  return true;
};

/**
 * Looks longer for a better plan than the stored one, which was made while somebody waited. It is put in place only if
 * nothing was changed meanwhile and it is better. When the search is given up, the plan that is there stays.
 */
export const improvePlan = async (
  { database, now }: UseCaseContext,
  think: Think = thinkHere,
): Promise<'improved' | 'as good as it gets' | 'given up' | 'nothing to do'> => {
  const hurried = await database.read((tx) => hurriedPlan(tx, now));
  if (!hurried) return 'nothing to do';
  const found = await think('better plan', { yard: hurried.yard, ...startingFrom(hurried.stored) });
  if (!found) return 'given up';
  const better = await database.write((tx) => storeBetter(tx, now, hurried, found));
  return better ? 'improved' : 'as good as it gets';
};

/** Lets the stored plan be as it is: looking for a better one took too long. */
export const giveUpImproving = ({ database, now }: UseCaseContext): Promise<void> =>
  database.write(async (tx) => {
    if (await hurriedPlan(tx, now)) await markImproved(tx);
  });
