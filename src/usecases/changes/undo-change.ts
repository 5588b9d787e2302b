import type { Tx } from '../../../db/open.ts';
import { isCaptured, type MovedOn, putRowsBack } from '../../../db/stores/captured-store.ts';
import {
  changeById,
  markStandingAgain,
  markUndone,
  type PlannedAnew,
  plannedAnews,
  recentHeads,
  type StoredChange,
} from '../../../db/stores/change-store.ts';
import { lateTakenSince, type StoredLateWork } from '../../../db/stores/late-work-store.ts';
import { settleStock } from '../../../db/stores/store-rows.ts';
import type { LateTaken } from '../../../shared/late-work.ts';
import { minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { stripOf } from '../plan/late-steps.ts';
import { planBefore } from '../plan/plans-before.ts';
import { UNDO_DAYS } from '../plan/record-change.ts';
import { BETTER_PLAN, TIME_PASSED } from '../plan/record-remake.ts';
import type { Unfixed } from '../plan/remake-plan.ts';

/** What the maker calls the things that the tables hold. */
const NAMES: Record<string, string> = {
  moulds: 'Mould',
  mouldMakes: 'What mould',
  piecesInMould: 'The piece in mould',
  finishedPieces: 'A finished piece',
  piecesToMend: 'A piece to mend',
  workRecords: 'What was recorded',
  orders: 'Order',
  orderLines: 'An order',
  customers: 'A customer',
  materials: 'The stock of',
  stockEntries: 'The stock book',
  incomings: 'Goods on their way',
  workWindows: 'The hours of work',
  extraWindows: 'The hours of a day',
  closedDays: 'A day off',
  temperatureSteps: 'A temperature',
  weatherDays: 'The weather of a day',
  yards: 'The yard',
  yardHabits: 'The yard',
  yardUnits: 'The yard',
  mixWaters: 'The water of',
  mixWetCures: 'How long pieces are kept wet of',
  keptKits: 'What stands ready of',
  keptCastings: 'What stands ready of',
  guesses: 'A figure to check',
  typedFigures: 'A figure',
};

/** `thing({ table: 'moulds', key: { id: "'800 no. 2'" } })` is 'Mould 800 no. 2'. */
const thing = ({ table, key }: MovedOn): string => {
  const name = NAMES[table] ?? 'Something it wrote';
  const painted = Object.values(key).find((literal) => literal.startsWith("'"));
  return painted ? `${name} ${painted.slice(1, -1).replaceAll("''", "'")}` : name;
};

const undone = async (tx: Tx, change: StoredChange, by: number, now: string): Promise<Outcome<{ undone: number }>> => {
  const movedOn = await putRowsBack(tx, change.id, now);
  if (movedOn)
    return refuse('change', `${thing(movedOn)} has been changed since. Undo that first. Nothing was undone.`);
  await settleStock(tx, now, { reason: 'Undone' });
  await markUndone(tx, change.id, by);
  await markStandingAgain(tx, change.id);
  return done({ undone: change.id });
};

/**
 * What putting a change back does to a session that was planned anew: taken back, the session gets its old mixes again;
 * done again, the session is planned anew once more.
 */
const unfixedBy = (before: readonly PlannedAnew[], after: readonly PlannedAnew[]): Unfixed => {
  const of = (rows: readonly PlannedAnew[]) => new Set(rows.map(({ change }) => change));
  const gone = before.find(({ change }) => !of(after).has(change));
  const back = after.find(({ change }) => !of(before).has(change));
  return { ...(gone ? { instead: gone.before } : {}), ...(back ? { anew: back.sessionStart } : {}) };
};

const MINUTES_OF_DAY = 1440;

/** Pieces that are in their moulds again were to be stripped; so they are, unless that went off the list as well. */
const stripsOfPours = ({ pours }: LateTaken): LateTaken => ({
  ...{ names: [], batches: [], pours: [], preps: [], orders: [] },
  strips: pours.map(stripOf),
});

/** Late work is on its list again once what took it off is undone; off it again once that is undone in turn. */
const lateBy = (before: readonly StoredLateWork[], after: readonly StoredLateWork[]): Unfixed => {
  const without = (rows: readonly StoredLateWork[], others: readonly StoredLateWork[]): LateTaken[] => {
    const known = new Set(others.map(({ change }) => change));
    return rows.filter(({ change }) => !known.has(change)).map(({ taken }) => taken);
  };
  const [back, off] = [without(before, after), without(after, before)];
  return {
    lateBack: [...back, ...off.map(stripsOfPours)],
    notDone: [...back.flatMap(({ instead = [] }) => instead), ...off.flatMap(({ names }) => names)],
  };
};

/** Whether all that is on its list again, or off it, is a batch that was begun at another time: no data were changed. */
const isOnlyMoved = (before: readonly StoredLateWork[], after: readonly StoredLateWork[]): boolean => {
  const all = [...before, ...after];
  const changed = all.filter(({ change }) => all.filter((one) => one.change === change).length === 1);
  return changed.length > 0 && changed.every(({ taken }) => taken.instead !== undefined);
};

/** What the plan did by itself changes no data. */
const BY_ITSELF: readonly string[] = [TIME_PASSED, BETTER_PLAN];
/** More of what the plan did by itself does not come between a change and its undoing. */
const HEADS_READ = 12;

/** Whether nothing was changed since, so that the data are again what they were before it. */
const isLast = async (tx: Tx, id: number, by: number): Promise<boolean> => {
  const heads = await recentHeads(tx, HEADS_READ);
  return heads.find((change) => change.id !== by && !BY_ITSELF.includes(change.kind))?.id === id;
};

/** Undoing it asks nothing of the plan but what it had to do: no session was planned anew. */
const isPlain = ({ anew, instead }: Unfixed): boolean => anew === undefined && instead === undefined;

/**
 * Puts everything that a change wrote back as it was, if it still is as the change left it. Undoing is a change of its
 * own: it can be undone in turn. `ownOnly`: refused where another than `context.by` did it.
 */
export const undoChange = async (
  context: UseCaseContext,
  id: number,
  { ownOnly = false }: { ownOnly?: boolean } = {},
): Promise<Outcome<Changed<{ undone: number }>>> => {
  const words = await context.database.read(async (tx) => (await changeById(tx, id))?.words ?? '');
  let unfixed: Unfixed = {};
  let isMoved = false;
  return changing(
    context,
    { kind: 'undo', words: `Undone: ${words}` },
    async (tx, _yard, by) => {
      const change = await changeById(tx, id);
      if (!change) return refuse('change', 'There is no such change.');
      if (ownOnly && change.by !== context.by)
        return refuse('change', 'Somebody else did that. Nothing was changed: ask them, or the office.');
      if (change.undoneBy !== null) return refuse('change', 'That was undone already.');
      if (!(await isCaptured(tx, id))) return refuse('change', 'That is too long ago to be undone.');
      const lateNow = () => lateTakenSince(tx, minuteOf(context.now) - UNDO_DAYS * MINUTES_OF_DAY);
      const [anewBefore, lateBefore] = [await plannedAnews(tx), await lateNow()];
      const outcome = await undone(tx, change, by, context.now);
      const lateAfter = await lateNow();
      unfixed = { ...unfixedBy(anewBefore, await plannedAnews(tx)), ...lateBy(lateBefore, lateAfter) };
      const standAgain = (await isLast(tx, id, by)) ? planBefore(context.database, id) : null;
      isMoved = isOnlyMoved(lateBefore, lateAfter);
      if (standAgain && isPlain(unfixed)) unfixed = { standAgain };
      return outcome;
    },
    // A batch that stands at another time again is not gone.
    { unfixed: () => unfixed, takes: () => (isMoved && unfixed.standAgain ? null : undefined) },
  );
};
