import { describe, expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { recentChanges } from '../../../db/stores/change-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordCoat } from '../../../src/usecases/today/record-coat.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const SATURDAY = '2027-04-10';
const OVER = minuteOf(`${SATURDAY}T13:30:00+01:00`);

type Work = Exclude<SessionStep, { kind: 'set up' | 'clear up' }>;

const isWork = (step: SessionStep): step is Work => step.kind !== 'set up' && step.kind !== 'clear up';

/** The demo on a Saturday at eight. */
const demoDay = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, SATURDAY, `${SATURDAY}T06:00:00Z`));
  return (minute: number) => ({ database, now: `${new Date(minute * 60_000).toISOString().slice(0, 16)}:00Z` });
};

type At = Awaited<ReturnType<typeof demoDay>>;

const write = (step: Work, context: ReturnType<At>) => {
  if (step.kind === 'coat') return recordCoat(context, { mould: step.mould });
  if (step.kind === 'prep')
    return recordPrep(context, { mould: step.mould, casting: step.casting, sealed: step.sealed });
  if (step.kind === 'strip') return recordStrip(context, { mould: step.mould, cameOut: 'good', reason: '' });
  if (step.kind === 'pack') return packOrder(context, step.order, { evenShort: false });
  return recordPour(context, { pours: step.pours, bags: step.bags, filledAt: null });
};

/** Works the session down, tapping what ends next when it ends or a little later. Returns what was tapped. */
const workDown = async (at: At, lateMinutes: number, taps: (step: Work) => boolean) => {
  const tapped: string[] = [];
  for (let now = minuteOf(`${SATURDAY}T08:00:00+01:00`); now < OVER; ) {
    const { steps } = await showToday(at(now));
    const [next] = steps
      .filter(isWork)
      .filter(
        (step) =>
          taps(step) &&
          !(step.kind === 'strip' && !step.inMould) &&
          !((step.kind === 'coat' || step.kind === 'prep') && step.waits),
      )
      .sort((a, b) => minuteOf(a.until) - minuteOf(b.until));
    if (!next) break;
    now = Math.max(now, minuteOf(next.until) + lateMinutes);
    if (now >= OVER) break;
    const outcome = await write(next, at(now));
    if (!outcome.ok) throw new Error(`${next.kind}: ${outcome.faults[0]?.message}`);
    expect(outcome.value.moved).toEqual([]);
    tapped.push(next.kind);
  }
  return tapped;
};

describe('a session that is worked as planned', () => {
  test.each<[string, number, (step: Work) => boolean]>([
    ['with every tap in time', 0, () => true],
    ['with every tap a few minutes late', 4, () => true],
    ['without a word about the moulds that were set up', 0, ({ kind }) => kind !== 'prep' && kind !== 'coat'],
  ])('%s moves no date and begins nothing again', async (_how, lateMinutes, taps) => {
    const at = await demoDay();
    const dates = async (minute: number) =>
      (await currentPlan(at(minute))).plan.orders.map(({ id, completesOn }) => [id, completesOn]);
    const before = await dates(minuteOf(`${SATURDAY}T07:00:00+01:00`));
    const tapped = await workDown(at, lateMinutes, taps);
    expect(tapped.filter((kind) => kind === 'batch').length).toBeGreaterThan(3);
    expect(tapped).toContain('strip');
    const { database } = at(OVER);
    const changes = await database.read((tx) => recentChanges(tx, 100));
    expect(changes.flatMap(({ dropped }) => dropped ?? [])).toEqual([]);
    expect(await dates(OVER - 1)).toEqual(before);
  });
});
