import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from './apply.ts';
import { afterCoated } from './carry-coat.ts';
import { afterPacked } from './carry-pack.ts';
import { afterPoured, batchPoured } from './carry-pour.ts';
import { afterSetUpDone } from './carry-set-up.ts';
import { afterStripped } from './carry-strip.ts';
import type { Carrying } from './carrying.ts';
import { withCompletions } from './completions.ts';
import { enter } from './enter.ts';
import type { Entry } from './entry.ts';
import { cutFromFor } from './sheets-cut.ts';
import { shiftLater } from './shift-later.ts';
import { tookPastDate } from './took-past-date.ts';
import type { WorkDone } from './work-done.ts';

const less = (carrying: Carrying, work: WorkDone): PlanFile | null => {
  switch (work.kind) {
    case 'poured':
      return afterPoured(carrying, work);
    case 'stripped':
      return afterStripped(carrying, work);
    case 'coated':
      return afterCoated(carrying, work);
    case 'set up':
      return afterSetUpDone(carrying, work);
    case 'packed':
      return afterPacked(carrying, work);
  }
};

/** From when a mould can be poured that was set up: told of later than planned, its batch was begun no sooner. */
const readyFrom = (work: WorkDone): Map<string, Minute> =>
  new Map(work.kind === 'set up' ? [[work.mould, minuteOf(work.doneAt)]] : []);

/**
 * What becomes of a plan when work is recorded that was done as it has it: the plan less that work, or null when it was
 * done otherwise, so that it has to be made anew. `before` is the yard as it was, `entries` what the work came to in the
 * book. With every tap planned anew, tasks half done would begin again.
 *
 * The plan that comes back obeys the rules (R0 to R14) in the yard after the work, as far as the one before did and its
 * tasks begin no earlier than the yard's now.
 */
const carryOn = (plan: PlanFile, before: YardFile, entries: readonly Entry[], work: WorkDone): PlanFile | null => {
  if (tookPastDate(entries, before)) return null;
  const carrying: Carrying = { plan, before, after: apply(before, entries), entries };
  const left = less(carrying, work);
  const shifted = left && shiftLater(left, carrying.after, readyFrom(work));
  return shifted && withCompletions(shifted, carrying.after);
};

/** A yard and its plan while work is recorded in them one thing after another. */
export interface UnderBook {
  yard: YardFile;
  /** Null once it has to be made anew. */
  plan: PlanFile | null;
}

/** What work comes to in the book, with the yard and the plan after it; or why it cannot have been done. */
export type Entered =
  | { ok: true; entries: Entry[]; after: UnderBook }
  | Extract<ReturnType<typeof enter>, { ok: false }>;

/** The same work, cut from the sticks and sheets that the plan cuts it from where nobody said which. */
const asPlanned = (work: WorkDone, plan: PlanFile): WorkDone => {
  if ((work.kind !== 'poured' && work.kind !== 'packed') || work.cutFrom) return work;
  const cutFor = work.kind === 'packed' ? work.order : batchPoured(plan, work.pours)?.batch.id;
  return cutFor === undefined ? work : { ...work, cutFrom: cutFromFor(plan, cutFor) };
};

/** Records one thing in a yard and its plan: the step of which every recording of work is a fold. */
export const record = ({ yard, plan }: UnderBook, told: WorkDone): Entered => {
  const work = plan ? asPlanned(told, plan) : told;
  const booked = enter(yard, work);
  if (!booked.ok) return booked;
  const { entries } = booked;
  const after = { yard: apply(yard, entries), plan: plan && carryOn(plan, yard, entries, work) };
  return { ok: true, entries, after };
};
