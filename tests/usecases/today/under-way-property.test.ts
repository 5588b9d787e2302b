import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import type { Database } from '../../../db/open.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { Minute } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { type Begun, begunBy, besides, goneOf } from '../../support/begun-by.ts';
import { type LivedSession, livedSession, minuteInTask, tapOnToday } from '../../support/lived-session.ts';
import { MIDWAY_ACTS } from '../../support/midway-acts.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { type Dice, diceOf } from '../../support/random-yard/dice.ts';
import { randomYard } from '../../support/random-yard.ts';
import { screensOn } from '../../support/screens.ts';

const YARDS = 7;
const MOMENTS = 3;

/** Works as a thread does, and holds each plan it makes against the rules. */
const checking = (faults: string[]) => {
  const compute: Compute = async (kind, question) => {
    const answer = await computeWithoutThread(kind, question);
    if (kind === 'quick plan' && answer && 'plan' in answer && 'yard' in question)
      faults.push(...faultsOf((question as { yard: YardFile }).yard, answer.plan));
    return answer;
  };
  return { planMade: () => {}, improving: () => true, compute, computeForRequest: compute };
};

const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults.map((fault) => `${yard.yard.now} ${fault}`),
  ...refereePlan(yard, plan).map(({ rule, message }) => `${yard.yard.now} ${rule} ${message}`),
];

/** Every row of every table. */
const stored = async (database: Database) =>
  database.read(async (tx) => {
    const tables = await tx.all<{ name: string }>(
      sql`select name from sqlite_master where type = 'table' and name not like 'sqlite%' order by name`,
    );
    const rows: Record<string, unknown> = {};
    for (const { name } of tables) rows[name] = await tx.all(sql.raw(`select * from "${name}"`));
    return rows;
  });

const PAGES = [
  '/',
  '/today',
  '/today/sheet',
  '/turns',
  '/buying',
  '/moulds',
  '/orders',
  '/orders/new',
  '/changes',
  '/yard',
];

/** One session that is lived through: what was done in it, and what had begun and was gone. */
class Watched {
  readonly told: string[] = [];
  readonly wrong: string[] = [];
  begun = 0;
  changed = 0;
  readonly #lived: LivedSession;
  readonly #dice: Dice;
  constructor(lived: LivedSession, dice: Dice) {
    this.#lived = lived;
    this.#dice = dice;
  }

  say(what: string, faults: readonly string[]): void {
    this.told.push(what);
    if (faults.length > 0) this.wrong.push(`${this.told.join(', ')}: ${faults.slice(0, 4).join(' | ')}`);
  }

  async read(minute: Minute): Promise<void> {
    const { get } = screensOn(this.#lived.database, this.#lived.at(minute).now);
    const before = await stored(this.#lived.database);
    for (const page of this.#dice.some(PAGES, 2)) this.say(page, (await get(page)).ok ? [] : ['is not shown']);
    expect(await stored(this.#lived.database), this.told.join(', ')).toEqual(before);
  }

  async change(minute: Minute, begun: Begun): Promise<void> {
    const context = this.#lived.at(minute);
    const acts = this.#dice.some(Object.entries(MIDWAY_ACTS), Object.keys(MIDWAY_ACTS).length);
    let [name, change]: [string, number | null] = ['', null];
    // The first for which there is something of the kind.
    for (const [what, act] of acts) {
      change = await act(context, begun, this.#dice, this.#lived.session);
      name = what;
      if (change !== null) break;
    }
    if (change === null) return;
    this.changed++;
    this.say(name, goneOf(begun, await begunBy(context)));
    if (this.#dice.chance(0.4)) return;
    const back = await undoChange(context, change);
    this.say('undone', back.ok ? goneOf(begun, await begunBy(context)) : back.faults.map(({ message }) => message));
  }

  async moment(minute: Minute, before: Begun | null): Promise<Begun> {
    const context = this.#lived.at(minute);
    let begun = await begunBy(context);
    this.say(context.now, before ? goneOf({ ...before, held: [] }, begun) : []);
    const tap = this.#dice.chance(0.5) ? await tapOnToday(context, this.#dice) : null;
    if (tap) {
      const left = { steps: besides(begun.steps, tap.name), held: [] };
      begun = await begunBy(context);
      this.say(tap.said, goneOf(left, begun));
    }
    this.begun += begun.underWay;
    await this.read(minute);
    await this.change(minute, begun);
    return begunBy(context);
  }
}

/** With goods in hand: what nobody orders here would keep most first sessions empty. */
const stocked = (yard: YardFile): YardFile => ({
  ...yard,
  materials: yard.materials.map((one) => ({ ...one, onHand: one.onHand + 50 })),
});

/* Some steps are begun by tap or recorded, all others go by the clock; what is held, and until when, is never another. */
test('what has begun is there until its time is over or it is recorded, whatever is read or changed meanwhile', {
  timeout: 240_000,
}, async () => {
  let [begun, changed] = [0, 0];
  for (const seed of yardSeeds(YARDS, 9500)) {
    const [dice, faults] = [diceOf(seed), [] as string[]];
    const yard = randomYard(seed, 'small');
    const lived = await livedSession(seed % 3 === 0 ? yard : stocked(yard), checking(faults));
    if (!lived) continue;
    const watched = new Watched(lived, dice);
    let before: Begun | null = null;
    let minute: Minute | null = await minuteInTask(lived, lived.from, dice);
    for (let moment = 0; moment < MOMENTS && minute !== null; moment++) {
      before = await watched.moment(minute, before);
      minute = await minuteInTask(lived, minute + 1, dice);
    }
    expect([...watched.wrong, ...faults], `seed ${seed}: ${watched.told.join(', ')}`).toEqual([]);
    begun += watched.begun;
    changed += watched.changed;
  }
  expect(begun).toBeGreaterThan(YARDS / 2);
  expect(changed).toBeGreaterThan(YARDS / 2);
});
