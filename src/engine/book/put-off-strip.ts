import type { PlanOfWork } from '../../../shared/late-work.ts';
import { type PlanFile, type PlanStrip, spellsOf } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import type { Session } from '../calendar/sessions.ts';
import { curingTimesOf } from './curing-times.ts';
import { Hands, type Task } from './hands.ts';

/**
 * The work of a plan in which the piece that is in a mould is stripped from a later minute on; all else stays where it is, and
 * so may no longer go with it. A mould that holds no piece is left as it is.
 *
 * Example: put off from 10:37 to 10:55, a strip of 8 minutes ends at 11:03.
 */
export const withStripPutOff = <W extends Pick<PlanOfWork, 'strips'>>(
  work: W,
  mould: string,
  at: Minute,
  yard: YardFile,
): W => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const piece = yard.inMould.find((one) => one.mould === mould);
  if (!piece) return work;
  const curedAt = curingTimesOf(yard).curedAt(piece.casting, minuteOf(piece.filledAt));
  const putOff = (strip: PlanStrip): PlanStrip => {
    const end = at + minuteOf(strip.stripEnd) - minuteOf(strip.stripStart);
    return {
      ...strip,
      ...{ stripStart: instantText(at), stripEnd: instantText(end), pieceReadyAt: instantText(Math.max(end, curedAt)) },
    };
  };
  return { ...work, strips: work.strips.map((strip) => (strip.mould === mould ? putOff(strip) : strip)) };
};

const stripCrewOf = ({ castings }: YardFile, casting: string | undefined): number =>
  castings.find(({ id }) => id === casting)?.stripCrew ?? 1;

/** All that a plan has hands at, each with how many people, but for the strip of the piece that is in one mould. */
const tasksBeside = (plan: PlanFile, yard: YardFile, mould: string): Task[] => {
  const task = (kind: Task['kind'], start: string, end: string, people = 1): Task => ({
    ...{ kind, start: minuteOf(start), minutes: minuteOf(end) - minuteOf(start), people },
  });
  const held = new Map(yard.inMould.map((piece) => [piece.mould, piece.casting]));
  const strips = plan.strips.filter((strip) => strip.mould !== mould);
  return [
    ...plan.batches.map(({ start, end, mix }) =>
      task('batch', start, end, yard.mixes.find(({ id }) => id === mix)?.crew),
    ),
    ...plan.coats.map(({ start, end }) => task('prep', start, end)),
    ...plan.pours.map(({ prepStart, prepEnd }) => task('prep', prepStart, prepEnd)),
    ...plan.pours.map((one) => task('strip', one.stripStart, one.stripEnd, stripCrewOf(yard, one.casting))),
    ...strips.map((one) => task('strip', one.stripStart, one.stripEnd, stripCrewOf(yard, held.get(one.mould)))),
    ...plan.orders.flatMap(spellsOf).map(({ packStart, packEnd }) => task('pack', packStart, packEnd)),
  ];
};

/**
 * Whether there are hands in a session to strip the piece that is in a mould from a minute on, with all else of the plan where
 * it is.
 *
 * Example: with one person there, who packs from 10:52 to 10:57, a strip of 8 minutes has no hands at 10:50, and has at 10:57.
 */
export const hasHandsToStrip = (
  plan: PlanFile,
  yard: YardFile,
  session: Session,
  mould: string,
  at: Minute,
): boolean => {
  const strip = plan.strips.find((one) => one.mould === mould);
  const casting = yard.inMould.find((one) => one.mould === mould)?.casting;
  if (!strip || casting === undefined) return false;
  const hands = new Hands(session, yard.yard.mixers);
  for (const task of tasksBeside(plan, yard, mould))
    if (task.start < session.to && task.start + task.minutes > session.from) hands.take(task, task.start);
  const minutes = minuteOf(strip.stripEnd) - minuteOf(strip.stripStart);
  return hands.earliest({ kind: 'strip', start: at, minutes, people: stripCrewOf(yard, casting) }) === at;
};
