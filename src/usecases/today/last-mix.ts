import type { Mix } from '../../../shared/mix.ts';
import type { PlanBatch, PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Session } from '../../engine/calendar/sessions.ts';

const fillMinutesOf = (batch: PlanBatch, plan: PlanFile): number =>
  plan.pours
    .filter((pour) => pour.batch === batch.id)
    .reduce((sum, { fillStart, fillEnd }) => sum + minuteOf(fillEnd) - minuteOf(fillStart), 0);

/** The last minute at which mixing may begin in a session, so that filling, washing out and keeping wet still fit. */
const lastMixStart = (mix: Mix, fillMinutes: number, session: Session): Minute | null => {
  const open = session.windows.filter(({ allows }) => allows.includes('batch')).map(({ end }) => end);
  if (open.length === 0) return null;
  const filled = mix.mixMinutes + fillMinutes;
  const last = Math.min(
    Math.min(session.to, Math.max(...open)) - filled - mix.washMinutes,
    session.end - filled - mix.attendMinutes,
  );
  return last >= session.from ? last : null;
};

/** For each mix that is mixed in a session, the last minute to begin a batch as large as the last one planned. */
export const lastMixes = (plan: PlanFile, yard: YardFile, session: Session): { mix: string; at: Minute }[] => {
  const mixed = plan.batches
    .filter(({ start }) => minuteOf(start) >= session.start && minuteOf(start) < session.end)
    .sort((a, b) => minuteOf(a.start) - minuteOf(b.start));
  return yard.mixes.flatMap((mix) => {
    const last = mixed.filter((batch) => batch.mix === mix.id).at(-1);
    const at = last ? lastMixStart(mix, fillMinutesOf(last, plan), session) : null;
    return at === null ? [] : [{ mix: mix.name, at }];
  });
};
