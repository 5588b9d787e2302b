import { TASK_KINDS } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { mouldsFor } from '../book/mould-kind.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { sessionsOf } from '../calendar/sessions.ts';
import { planYard } from '../plan.ts';

/** What the yard lacks before anything can have a date, in a maker's order; "else": all is there, and still it can't. */
export type MissingForDate =
  | { kind: 'panel' | 'mould' | 'mix' | 'hours' | 'mixer' }
  | { kind: 'else'; piece: string; reason: string };

const hasHours = (yard: YardFile): boolean => {
  const allowed = sessionsOf(yard, calendarOf(yard.yard.timeZone))
    .flatMap(({ windows }) => windows)
    .filter(({ crew }) => crew > 0)
    .flatMap(({ allows }) => allows);
  // Parcels may be packed at any time of the maker's own; the other three kinds of work have to be possible some time.
  return TASK_KINDS.every((kind) => kind === 'pack' || allowed.includes(kind));
};

/** Why one such piece could not be had if nothing else were to be done; null when it could. */
const whyNot = (yard: YardFile, casting: YardFile['castings'][number]): string | null => {
  const { keep: _fixed, ...rest } = yard;
  const order = { id: 'first', weight: 1, lines: [{ casting: casting.id, quantity: 1 }] };
  const alone: YardFile = { ...rest, finished: [], inMould: [], orders: [order] };
  const { unplanned } = planYard(alone, { effort: 'quick' });
  return unplanned[0]?.reason ?? null;
};

/** The first piece with a mould that could be had decides; when none can, the first says why. */
const elseMissing = (yard: YardFile): MissingForDate[] => {
  const made = yard.castings.filter(({ id }) => mouldsFor(yard, id).length > 0);
  let first: MissingForDate | null = null;
  for (const casting of made) {
    const reason = whyNot(yard, casting);
    if (reason === null) return [];
    first ??= { kind: 'else', piece: casting.name, reason };
  }
  return first ? [first] : [];
};

/**
 * What is missing for a first date: something that is cast, a mould for it that can be used, a mix, hours in which it can
 * be set up, mixed and stripped. Where all of these are there, one piece by itself is planned, and why that fails is said.
 *
 * Example: an empty yard lacks panel, mould, mix and hours, in this order.
 */
export const missingForDate = (yard: YardFile): MissingForDate[] => {
  const missing: MissingForDate[] = [
    ...(yard.castings.length === 0 ? [{ kind: 'panel' } as const] : []),
    ...(yard.castings.some(({ id }) => mouldsFor(yard, id).length > 0) ? [] : [{ kind: 'mould' } as const]),
    ...(yard.mixes.length === 0 ? [{ kind: 'mix' } as const] : []),
    ...(yard.yard.mixers === 0 ? [{ kind: 'mixer' } as const] : []),
    ...(hasHours(yard) ? [] : [{ kind: 'hours' } as const]),
  ];
  return missing.length > 0 ? missing : elseMissing(yard);
};
