import { capturedAmong } from '../../../db/stores/captured-store.ts';
import { recentChanges, type StoredChange } from '../../../db/stores/change-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { isSpoken, promisesMoved } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';

const SHOWN = 60;

interface Shown {
  at: string;
  captured: boolean;
  /** Puts a reason in the yard's units. */
  shown: (reason: string | null) => string | null;
}

const changeFacts = ({ id, words, before, after, dropped, undoneBy }: StoredChange, { at, captured, shown }: Shown) => {
  const moved = promisesMoved(before, after).map((move) => ({ ...move, reason: shown(move.reason) }));
  return {
    change: id,
    at,
    words,
    /** Orders whose date given is broken, can be kept again, or has no day left to spare. */
    given: moved.filter(isSpoken),
    /** Orders of which only the day by plan moved. */
    planned: moved.filter((move) => !isSpoken(move)),
    dropped: dropped ?? [],
    undone: undoneBy !== null,
    /** What it wrote is still known, and stands. */
    canBeUndone: captured && undoneBy === null,
  };
};
export type ChangeFacts = ReturnType<typeof changeFacts>;

const byDay = (changes: readonly ChangeFacts[]) => {
  const days = new Map<string, ChangeFacts[]>();
  for (const change of changes) {
    const date = change.at.slice(0, 10);
    days.set(date, [...(days.get(date) ?? []), change]);
  }
  return [...days].map(([date, list]) => ({ date, changes: list }));
};

/** What was changed and what the plan made of it, the newest first; of those before a change where one is named. */
export const showChanges = async (context: UseCaseContext, before?: number) => {
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
    /** Names the change before which there are more. */
    older: stored.length > SHOWN ? (shown.at(-1)?.id ?? null) : null,
    newest: before === undefined,
  };
};
