import type { Keep } from '../../../shared/plan.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { thereAt } from '../../engine/buy/there-at.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { sessionsOf } from '../../engine/calendar/sessions.ts';

/** What questions are asked of: the yard at an instant, and the plan that stands. */
interface Asked {
  yard: YardFile;
  standing?: Keep;
}

const withoutNow = ({ yard: { yard, ...rest }, standing }: Asked): string =>
  JSON.stringify({ ...rest, standing, yard: { ...yard, now: '' } });

/** Instants at which something is there, dry or ready that was not before. */
const instantsOf = ({ yard, finished, moulds, materials, incoming }: YardFile): number[] => {
  const calendar = calendarOf(yard.timeZone);
  const leadDays = new Map(materials.map((one) => [one.id, one.leadDays]));
  return [
    ...finished.flatMap(({ readyAt }) => (readyAt === undefined ? [] : [minuteOf(readyAt)])),
    ...moulds.flatMap(({ dryFrom }) => (dryFrom === undefined ? [] : [minuteOf(dryFrom)])),
    ...incoming.map(({ material, on }) =>
      thereAt(dayNumber(on), { leadDays: leadDays.get(material), deliveredBy: yard.deliveredBy }, calendar),
    ),
  ];
};

/**
 * Whether every question beside one plan is answered at `then` as it was at `before`: it is the same day, nobody could work
 * in between, nothing became ready, dry or delivered in between, and all else is the same. Only ever wrong by saying no.
 */
export const sameQuestions = (before: Asked, then: Asked): boolean => {
  const [from, to] = [minuteOf(before.yard.yard.now), minuteOf(then.yard.yard.now)];
  const calendar = calendarOf(before.yard.yard.timeZone);
  if (to < from || calendar.dayOf(from) !== calendar.dayOf(to)) return false;
  const today = { ...before.yard, yard: { ...before.yard.yard, horizonDays: 0 } };
  if (sessionsOf(today, calendar).some(({ start }) => start < to)) return false;
  if (instantsOf(before.yard).some((at) => at > from && at <= to)) return false;
  return withoutNow(before) === withoutNow(then);
};
