import type { Database } from '../../db/open.ts';
import { type Minute, minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../src/engine/calendar/sessions.ts';
import type { Outcome, UseCaseContext } from '../../src/usecases/core/context.ts';
import { packOrder } from '../../src/usecases/orders/pack-order.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { recordCoat } from '../../src/usecases/today/record-coat.ts';
import { recordPour } from '../../src/usecases/today/record-pour.ts';
import { recordPrep } from '../../src/usecases/today/record-prep.ts';
import { recordStrip } from '../../src/usecases/today/record-strip.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { showToday } from '../../src/usecases/today/show-today.ts';
import { startMixing } from '../../src/usecases/today/start-mixing.ts';
import type { Dice } from './random-yard/dice.ts';
import { beforeFirstSession, tasksOf } from './work-by-plan.ts';
import { yardContext } from './yard-context.ts';

/** A yard whose first session with a mix is lived through, minute by minute. */
export interface LivedSession {
  database: Database;
  session: Session;
  /** From when the first of its mixes is to be begun. */
  from: Minute;
  at(minute: Minute): UseCaseContext;
}

/** Records a step as its button on Today does, just now. */
const recorded = (context: UseCaseContext, step: SessionStep): Promise<Outcome<unknown>> | null => {
  const { name } = step;
  switch (step.kind) {
    case 'coat':
      return step.waits ? null : recordCoat(context, { mould: step.mould, step: name });
    case 'prep': {
      const { mould, casting, sealed } = step;
      return step.waits ? null : recordPrep(context, { mould, casting, sealed, step: name });
    }
    case 'batch': {
      const { bags, pours } = step;
      return step.waits ? null : recordPour(context, { bags, pours, filledAt: null, step: name, sure: ['short'] });
    }
    case 'strip':
      return step.inMould ? recordStrip(context, { mould: step.mould, cameOut: 'good', reason: '', step: name }) : null;
    case 'pack':
      return packOrder(context, step.order, { evenShort: false, step: name, sure: ['short'] });
    default:
      return null;
  }
};

const isWork = ({ kind }: SessionStep): boolean => kind !== 'set up' && kind !== 'clear up';

/** What was tapped on Today: the name of its step, and what came of it. */
interface Tapped {
  name: string;
  said: string;
}

/** Of the steps of a session one that is over is recorded, or a batch is begun by tap, by the dice; null where there is none. */
export const tapOnToday = async (context: UseCaseContext, dice: Dice): Promise<Tapped | null> => {
  const { steps, begun } = await showToday(context);
  const over = steps.filter((step) => isWork(step) && Date.parse(step.until) <= Date.parse(context.now));
  const isBegun = (step: SessionStep): boolean => step.at === context.now || begun.some((one) => one.step === step);
  const batches = steps.filter((step) => step.kind === 'batch' && !step.waits && !isBegun(step));
  const mixes = batches.length > 0 && (over.length === 0 || dice.chance(0.5));
  const [step] = mixes ? batches : over;
  if (!step) return null;
  const mould = step.kind === 'batch' ? (step.pours[0]?.mould ?? '') : '';
  const outcome = mixes ? await startMixing(context, { mould, at: step.at }) : await recorded(context, step);
  const became = outcome === null ? 'no button' : outcome.ok ? 'done' : outcome.faults[0]?.message;
  return { name: step.name, said: `${context.now} ${mixes ? 'mixing ' : ''}${step.name}: ${became}` };
};

/** A minute from one on at which a task of the session is under way by the plan, by the dice; null where there is none. */
export const minuteInTask = async ({ session, at }: LivedSession, from: Minute, dice: Dice): Promise<Minute | null> => {
  const { plan } = await currentPlan(at(from));
  const tasks = tasksOf(plan).filter(({ start, end }) => start >= session.start && start < session.end && end > from);
  const next = tasks.filter(({ start }) => start < from + 45);
  if (next.length === 0) return null;
  const { start, end } = dice.pick(next);
  return dice.whole(Math.max(start, from), end - 1);
};

/** A yard at the beginning of its first session in which something is mixed; null where nothing is. */
export const livedSession = async (
  random: YardFile,
  background: NonNullable<UseCaseContext['background']>,
): Promise<LivedSession | null> => {
  const yard = beforeFirstSession(random);
  if (!yard) return null;
  const { database } = await yardContext(yard);
  const calendar = calendarOf(yard.yard.timeZone);
  const at = (minute: Minute) => ({ database, now: calendar.instantText(minute), background });
  const { plan } = await currentPlan(at(minuteOf(yard.yard.now)));
  const starts = plan.batches.map(({ start }) => minuteOf(start));
  const session = sessionsOf(yard, calendar).find(({ start, end }) => starts.some((one) => one >= start && one < end));
  if (!session) return null;
  const from = Math.min(...starts.filter((one) => one >= session.start));
  return { database, session, from: Math.max(session.start, from - 15), at };
};
