import { describe, expect, test } from 'vitest';
import type { Database } from '../../../db/open.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { writeLateWork } from '../../../src/usecases/today/write-late-work.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard, type YardKind } from '../../support/random-yard.ts';
import { beforeFirstSession } from '../../support/work-by-plan.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Works as a thread does, and holds each plan it makes against the rules. */
const checking = (faults: string[]) => {
  const compute: Compute = async (kind, question) => {
    const answer = await computeWithoutThread(kind, question);
    if (kind === 'quick plan' && answer && 'plan' in answer && 'yard' in question) {
      const { yard } = question as { yard: YardFile };
      const found = [
        ...audit(yard, answer.plan).faults,
        ...refereePlan(yard, answer.plan).map((x) => `${x.rule} ${x.message}`),
      ];
      faults.push(...found.map((fault) => `${yard.yard.now}: ${fault}`));
    }
    return answer;
  };
  return { planMade: () => {}, improving: () => true, compute, computeForRequest: compute };
};

/** What the book has, as of a now: of pieces only how many of which there are, wherever they stand in it. */
const bookOf = async (database: Database, now: string) => {
  const { moulds, materials, inMould, finished, orders } = await database.read((tx) => loadYardFile(tx, now));
  const pieces = new Map<string, number>();
  for (const { casting, readyAt, order, count } of finished) {
    const ready = readyAt === undefined || minuteOf(readyAt) <= minuteOf(now) ? 'ready' : readyAt;
    const name = [casting, order ?? 'nobody', ready].join(' ');
    pieces.set(name, (pieces.get(name) ?? 0) + count);
  }
  return {
    moulds,
    stock: materials.map(({ id, onHand }) => [id, Number(onHand.toFixed(6))]),
    inMould: [...inMould].sort((a, b) => (a.mould < b.mould ? -1 : 1)),
    pieces: [...pieces].sort(),
    orders,
  };
};

/** When orders are ready, of those that are to be: what is packed goes out on some day to come. */
const daysToCome = ({ orders }: PlanFile, now: string) =>
  orders
    .filter(({ completesAt }) => minuteOf(completesAt) > minuteOf(now))
    .map(({ id, completesOn }) => [id, completesOn]);

/** A yard whose pages are looked at through some sessions, by a maker who records as he goes or not at all. */
const workedBy = async (yard: YardFile, ends: readonly Minute[], recordsAtOnce: boolean) => {
  const { database } = await yardContext(yard);
  const faults: string[] = [];
  const at = (minute: Minute) => ({
    ...{ database, now: calendarOf(yard.yard.timeZone).instantText(minute) },
    background: checking(faults),
  });
  await currentPlan({ ...at(minuteOf(yard.yard.now)) });
  for (const end of ends) {
    await currentPlan(at(end));
    if (recordsAtOnce) await writeLateWork(at(end));
  }
  return { database, at, faults };
};

const KINDS: readonly YardKind[] = ['small', 'odd', 'tight-rack', 'cold-spring'];
const SESSIONS = 4;

const sessionsToWork = (yard: YardFile): Minute[] =>
  sessionsOf(yard, calendarOf(yard.yard.timeZone))
    .slice(0, SESSIONS)
    .map(({ end }) => end);

/** Nobody buys anything in it: there is enough of all. */
const started = (seed: number, kind: YardKind): YardFile | null => {
  const { keep: _keep, ...random } = randomYard(seed, kind);
  const materials = random.materials.map((one) => ({ ...one, onHand: 100_000 }));
  return beforeFirstSession({ ...random, materials });
};

describe.each(KINDS)('a random yard (%s) of which nothing is recorded for some sessions', (kind) => {
  test.each(yardSeeds(4, 1))(
    '%i: no plan breaks a rule, and all as planned at last is what recording in time is',
    async (seed) => {
      const yard = started(seed, kind);
      if (!yard) return;
      const ends = sessionsToWork(yard);
      const last = ends.at(-1)!;
      const [lazy, prompt] = [await workedBy(yard, ends, false), await workedBy(yard, ends, true)];
      expect(lazy.faults).toEqual([]);
      const days = async () => daysToCome((await lazy.database.read(storedPlan))!.plan, lazy.at(last).now);
      const planned = await days();
      const steps = (await showToday(lazy.at(last))).late.flatMap(({ lines }) => lines).length;
      const outcome = await writeLateWork(lazy.at(last));
      if (steps > 0) expect(outcome.ok ? [] : outcome.faults).toEqual([]);
      expect((await showToday(lazy.at(last))).late).toEqual([]);
      expect(await days()).toEqual(planned);
      const now = lazy.at(last).now;
      expect(await bookOf(lazy.database, now)).toEqual(await bookOf(prompt.database, now));
    },
    120_000,
  );
});
