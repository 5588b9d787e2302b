import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { sessionsOf } from '../../engine/calendar/sessions.ts';
import { poursWithin } from './pour-minutes.ts';

/** By mould, the first pour that a plan has for it in the session under way. */
const firstPours = (yard: YardFile, plan: PlanFile): Map<string, PlanPour> => {
  const now = minuteOf(yard.yard.now);
  const soon = { ...yard, yard: { ...yard.yard, horizonDays: 1 } };
  const session = sessionsOf(soon, calendarOf(yard.yard.timeZone)).find(({ start }) => start <= now);
  const first = new Map<string, PlanPour>();
  for (const pour of session ? poursWithin(plan, 'prepStart', session) : []) {
    const known = first.get(pour.mould);
    if (!known || minuteOf(pour.prepStart) < minuteOf(known.prepStart)) first.set(pour.mould, pour);
  }
  return first;
};

/**
 * The yard as it is taken to stand in the middle of a session: moulds that the present plan has begun to set up by now
 * count as set up. Nobody writes down half a task, and a plan made anew that began all of them again would fall behind
 * with every tap. What the maker has said stands: a mould that is full or out of use is left as it is.
 */
export const asBegun = (yard: YardFile, plan: PlanFile | null): YardFile => {
  const pours = plan ? firstPours(yard, plan) : new Map<string, PlanPour>();
  if (pours.size === 0) return yard;
  const now = minuteOf(yard.yard.now);
  const full = new Set(yard.inMould.map(({ mould }) => mould));
  const moulds = yard.moulds.map((mould) => {
    const pour = pours.get(mould.id);
    const usable = (mould.condition === 'ready' || mould.condition === 'dirty') && !full.has(mould.id);
    if (!pour || !usable || !mould.makes.some(({ casting }) => casting === pour.casting)) return mould;
    // Set up in no time: it was begun when an earlier plan was made, or there is nothing to do.
    if (minuteOf(pour.prepStart) >= now && pour.prepStart !== pour.prepEnd) return mould;
    const sealed = pour.oiled || (mould.oilEveryTurns !== undefined && mould.turnsSinceOil >= mould.oilEveryTurns);
    const turnsSinceOil = sealed ? 0 : mould.turnsSinceOil;
    return { ...mould, condition: 'ready' as const, prepped: true, setFor: pour.casting, turnsSinceOil };
  });
  return { ...yard, moulds };
};
