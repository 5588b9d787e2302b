import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../engine/book/apply.ts';
import { enter } from '../../engine/book/enter.ts';
import { wasCoated } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { sessionsOf } from '../../engine/calendar/sessions.ts';
import { poursWithin } from './pour-minutes.ts';

/** By mould, the first pour that a plan still has for it in the session under way: one that is over counts as poured. */
const firstPours = (yard: YardFile, plan: PlanFile): Map<string, PlanPour> => {
  const now = minuteOf(yard.yard.now);
  const soon = { ...yard, yard: { ...yard.yard, horizonDays: 1 } };
  const session = sessionsOf(soon, calendarOf(yard.yard.timeZone)).find(({ start }) => start <= now);
  const first = new Map<string, PlanPour>();
  for (const pour of session ? poursWithin(plan, 'prepStart', session) : []) {
    if (minuteOf(pour.fillEnd) <= now) continue;
    const known = first.get(pour.mould);
    if (!known || minuteOf(pour.prepStart) < minuteOf(known.prepStart)) first.set(pour.mould, pour);
  }
  return first;
};

const isBegun = ({ prepStart, prepEnd }: PlanPour, yard: YardFile): boolean =>
  // Set up in no time: it was begun when an earlier plan was made, or there is nothing to do.
  minuteOf(prepStart) < minuteOf(yard.yard.now) || prepStart === prepEnd;

/**
 * The yard as it is taken to stand in the middle of a session: moulds that the present plan has begun to set up by now
 * count as set up. Nobody records half a task, and a plan made anew that began all of them again would fall behind with
 * every tap. What the maker has said stands: a mould that is full or out of use is left as it is.
 */
export const withBegunSetUps = (yard: YardFile, plan: PlanFile | null): YardFile => {
  const begun = plan ? [...firstPours(yard, plan).values()].filter((pour) => isBegun(pour, yard)) : [];
  return begun.reduce<YardFile>((before, pour) => {
    const { mould, casting, prepEnd: doneAt } = pour;
    const found = before.moulds.find(({ id }) => id === mould);
    const coated = found !== undefined && wasCoated(found, pour);
    const booked = enter(before, { kind: 'set up', mould, casting, coated, doneAt });
    return booked.ok ? apply(before, booked.entries) : before;
  }, yard);
};
