import { capturedAmong } from '../../../db/stores/captured-store.ts';
import { recentChanges, type StoredChange, type StoredDrop } from '../../../db/stores/change-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { isSpoken, type PromiseMove, promisesMoved } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';

const SHOWN = 60;

/** One change, with what the plan made of it. */
export interface ChangeFacts {
  change: number;
  at: string;
  words: string;
  /** The name chosen on the device it was done on, if any. */
  by: string | null;
  /** Orders whose date given is broken, can be kept again, or has no day left to spare. */
  given: readonly PromiseMove[];
  /** Orders of which only the day by plan moved. */
  planned: readonly PromiseMove[];
  /** What was fixed and could not stay. */
  dropped: readonly StoredDrop[];
  undone: boolean;
  /** What it wrote is still known, and stands. */
  canBeUndone: boolean;
}

/** The changes of one day, the newest first. */
interface ChangesOfDay {
  date: string;
  changes: readonly ChangeFacts[];
}

/** A page of changes, the newest first. */
export interface ChangesModel extends PageHead {
  days: readonly ChangesOfDay[];
  /** Names the change before which there are more; null when there are none. */
  older: number | null;
  /** It is the first page: nothing is newer. */
  newest: boolean;
}

interface Shown {
  at: string;
  captured: boolean;
  /** Puts a reason in the yard's units. */
  shown: (reason: string | null) => string | null;
}

const changeFacts = (
  { id, words, by, before, after, dropped, undoneBy }: StoredChange,
  { at, captured, shown }: Shown,
): ChangeFacts => {
  const moved = promisesMoved(before, after).map((move) => ({ ...move, reason: shown(move.reason) }));
  return {
    change: id,
    at,
    words,
    by,
    given: moved.filter(isSpoken),
    planned: moved.filter((move) => !isSpoken(move)),
    dropped: dropped ?? [],
    undone: undoneBy !== null,
    canBeUndone: captured && undoneBy === null,
  };
};

const byDay = (changes: readonly ChangeFacts[]): ChangesOfDay[] => {
  const days = new Map<string, ChangeFacts[]>();
  for (const change of changes) {
    const date = change.at.slice(0, 10);
    days.set(date, [...(days.get(date) ?? []), change]);
  }
  return [...days].map(([date, list]) => ({ date, changes: list }));
};

/** What was changed and what the plan made of it, the newest first; of those before a change where one is named. */
export const showChanges = async (context: UseCaseContext, before?: number): Promise<ChangesModel> => {
  const { yard } = await currentPlan(context);
  const { stored, captured, system } = await context.database.read(async (tx) => {
    const recent = await recentChanges(tx, SHOWN + 1, before);
    const ids = recent.map(({ id }) => id);
    return { stored: recent, captured: await capturedAmong(tx, ids), system: await unitsOfYard(tx) };
  });
  const calendar = calendarOf(yard.yard.timeZone);
  const shown = stored.slice(0, SHOWN);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    days: byDay(
      shown.map((one) =>
        changeFacts(one, {
          at: calendar.instantText(minuteOf(one.at)),
          captured: captured.has(one.id),
          shown: (reason) => reasonShown(reason, yard.materials, system),
        }),
      ),
    ),
    older: stored.length > SHOWN ? (shown.at(-1)?.id ?? null) : null,
    newest: before === undefined,
  };
};
