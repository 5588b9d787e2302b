import { expect, test } from 'vitest';
import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { LOOK_AGAIN_MINUTES, lookAgain } from '../../../src/usecases/today/look-again.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const firstStart = ({ batches, pours, strips, coats, orders }: PlanFile): number =>
  Math.min(
    ...[...batches, ...coats].map(({ start }) => minuteOf(start)),
    ...pours.map(({ prepStart }) => minuteOf(prepStart)),
    ...strips.map(({ stripStart }) => minuteOf(stripStart)),
    ...orders.flatMap(spellsOf).map(({ packStart }) => minuteOf(packStart)),
  );

const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map(({ message }) => message),
];

/** As the hours begin in which a yard's first work is, a piece of its first strips is put off; null where there is none. */
const putOff = async (seed: number): Promise<{ wrong: string[] } | null> => {
  const { database, now } = await yardContext(randomYard(seed, 'small'));
  const { plan, yard } = await currentPlan({ database, now });
  const calendar = calendarOf(yard.yard.timeZone);
  const hours = sessionsOf(yard, calendar).find(({ end }) => end > firstStart(plan));
  const minute = Math.max(minuteOf(now), hours?.start ?? 0);
  const strip = plan.strips.find(({ stripStart }) => minuteOf(stripStart) < minute + LOOK_AGAIN_MINUTES);
  if (!strip) return null;
  const context = { database, now: calendar.instantText(minute) };
  const stood = await currentPlan(context);
  const before = faultsOf(stood.yard, stood.plan);
  const outcome = await lookAgain(context, strip.mould);
  if (!outcome.ok) return null;
  const { plan: after, yard: then } = outcome.value;
  const put = after.strips.find(({ mould }) => mould === strip.mould);
  const early = put && minuteOf(put.stripStart) < minute + LOOK_AGAIN_MINUTES ? [`${seed}: ${put.stripStart}`] : [];
  // What is under way is no fault of putting off: it stood there before.
  const broken = faultsOf(then, after).filter((fault) => !before.includes(fault));
  return { wrong: [...early, ...broken.map((fault) => `${seed}: ${fault}`)] };
};

test('a piece that is not hard yet is put off by the rules, in yards of all kinds', async () => {
  const seen = [];
  for (const seed of yardSeeds(8, 4)) seen.push(await putOff(seed));
  const put = seen.filter((one) => one !== null);
  expect(put.length).toBeGreaterThan(2);
  expect(put.flatMap(({ wrong }) => wrong)).toEqual([]);
}, 150_000);
