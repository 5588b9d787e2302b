import type { PlanOrder } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { Session } from '../calendar/sessions.ts';
import type { Ground } from './ground.ts';
import { handoverOn } from './handover.ts';
import { wantsOf } from './wants.ts';

type Found = (message: string) => void;

/** No more than that is packed in one go, in minutes. */
const MOST_IN_ONE_GO = 16 * 60;
/** A spell that is not the last one is no shorter than that, in minutes. */
const LEAST_SPELL = 15;
/** Sessions that begin so long after the one in which a packing begins count for it, in minutes. */
const SOON = 14 * 24 * 60;

/** The longest run of minutes of a session, from now on, at each of which somebody may pack, all being wet; no more than in one go. */
const longestRun = ({ wetUntil: from, to, windows }: Session, now: Minute): number => {
  let [longest, run] = [0, 0];
  for (let minute = Math.max(from, now); minute < to; minute++) {
    const isOpen = windows.some((x) => x.start <= minute && minute < x.end && x.crew > 0 && x.allows.includes('pack'));
    run = isOpen ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return Math.min(longest, MOST_IN_ONE_GO);
};

/** Whether so many minutes that begin to be packed at one have to be packed in one go: no spells would come sooner. */
const fitsInOneGo = (ground: Ground, first: Minute, minutes: number): boolean => {
  const { sessions, calendar, now } = ground;
  const begins = sessions.filter(({ start }) => start <= first).at(-1)?.start ?? first;
  const soon = sessions.filter(({ start }) => start >= begins && start < begins + SOON);
  const dayOf = ({ start }: Session) => handoverOn(ground, calendar.dayOf(Math.max(start, now)));
  let [inSpells, spellsOn] = [0, Number.POSITIVE_INFINITY];
  for (const session of soon) {
    const run = longestRun(session, now);
    if (run >= minutes) return dayOf(session) <= spellsOn;
    inSpells += run;
    if (inSpells >= minutes) spellsOn = Math.min(spellsOn, dayOf(session));
  }
  return false;
};

/** What is left of an order's packing, with that under way; a packing under way lasts as long as it was to. */
const minutesLeft = (ground: Ground, id: string): number => {
  const { packMinutes } = wantsOf(ground, ground.orders.get(id)!);
  const begun = ground.underWay.packs.get(id);
  return Math.max(packMinutes, begun ? minuteOf(begun.packEnd) - minuteOf(begun.packStart) : 0);
};

/**
 * R11, an order that is packed in spells: one after another, none but the last shorter than 15 minutes, all of its packing and
 * no more; and only where no session of the 14 days from the one it begins in is long enough for it, or those before that one
 * have time for it in spells by an earlier hand-over day, or some of it is done or under way.
 *
 * Example: 300 minutes in spells of 200 and 90 are found: "order 27-001: its spells last 300 minutes".
 */
export const checkSpells = (ground: Ground, order: PlanOrder, found: Found): void => {
  const { id, packs = [] } = order;
  const spells = packs.map((x) => ({ start: minuteOf(x.packStart), end: minuteOf(x.packEnd) }));
  const [first, last] = [packs[0]!, packs.at(-1)!];
  const isBegun = ground.underWay.packs.has(id);
  if (order.packStart === undefined || minuteOf(order.packStart) !== minuteOf(first.packStart))
    found(`order ${id} is packed from the start of its first spell`);
  if (order.packEnd === undefined || minuteOf(order.packEnd) !== minuteOf(last.packEnd))
    found(`order ${id} is packed until the end of its last spell`);
  if (minuteOf(order.completesAt) !== minuteOf(last.packEnd)) found(`order ${id} is complete when it is packed`);
  spells.forEach(({ start, end }, i) => {
    if (i > 0 && start < spells[i - 1]!.end) found(`order ${id}: its spells do not come one after another`);
    const mayBeShort = i === spells.length - 1 || (i === 0 && isBegun);
    if (!mayBeShort && end - start < LEAST_SPELL) found(`order ${id}: a spell is shorter than ${LEAST_SPELL} minutes`);
  });
  const minutes = minutesLeft(ground, id);
  if (spells.reduce((sum, { start, end }) => sum + end - start, 0) !== minutes)
    found(`order ${id}: its spells last ${minutes} minutes`);
  const asked = ground.orders.get(id)!;
  const mayBeBroken = isBegun || asked.packedMinutes !== undefined;
  if (!mayBeBroken && fitsInOneGo(ground, minuteOf(first.packStart), wantsOf(ground, asked).allPackMinutes))
    found(`order ${id} is packed in spells, and a session is long enough for all of it`);
};

/** R14: where a spell of an order is under way it is the first one, and after it comes the rest, where there is any. */
export const checkSpellBegun = (ground: Ground, { id, packs }: PlanOrder, found: Found): void => {
  const begun = ground.underWay.packs.get(id);
  if (!begun) return;
  if (packs && !begun.part) found(`order ${id} is packed after the packing that is under way`);
  if (packs && minuteOf(packs[0]!.packStart) !== minuteOf(begun.packStart))
    found(`order ${id} is packed before the packing that is under way`);
  const isAll = minuteOf(begun.packEnd) - minuteOf(begun.packStart) >= minutesLeft(ground, id);
  if (!packs && begun.part && !isAll) found(`order ${id}: the rest of its packing is missing`);
};
