import { expect, test } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { askWhen } from '../../../src/usecases/first/ask-when.ts';
import { dayInHandToTell } from '../../../src/usecases/orders/day-to-tell.ts';
import { saveOrder } from '../../../src/usecases/orders/save-order.ts';
import { takeOrder } from '../../../src/usecases/orders/take-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import type { OrderDraft } from '../../../src/usecases/typed/order-form.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { doneOf } from '../../support/outcomes.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { randomYard } from '../../support/random-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** A few pieces that some mould of the yard makes; null where none makes any. */
const linesOf = (yard: YardFile, seed: number): OrderDraft['lines'] | null => {
  const dice = diceOf(seed);
  const made = yard.castings.filter(({ id }) =>
    yard.moulds.some(({ makes, condition }) => condition === 'ready' && makes.some(({ casting }) => casting === id)),
  );
  if (made.length === 0) return null;
  return [{ row: 0, line: { casting: dice.pick(made).id, quantity: dice.whole(1, 4) } }];
};

const draft = (lines: OrderDraft['lines'], promisedOn: string): OrderDraft => ({
  ...BLANK_DRAFT,
  promisedOn,
  lines,
});

/** With one length of each stick on its way, and no other to be had soon: what is left of it is sought after. */
const withFewSticks = (yard: YardFile, seed: number): YardFile => {
  const dice = diceOf(seed);
  const today = dayNumber(yard.yard.now.slice(0, 10));
  const sticks = yard.materials.filter(({ stickMm }) => stickMm !== undefined).map(({ id }) => id);
  return {
    ...yard,
    materials: yard.materials.map((one) =>
      sticks.includes(one.id) ? { ...one, onHand: dice.whole(0, 1), offcuts: undefined, leadDays: 25 } : one,
    ),
    incoming: [
      ...yard.incoming.filter(({ material }) => !sticks.includes(material)),
      ...sticks.map((material) => ({ material, quantity: dice.whole(1, 3), on: dateOfDay(today + dice.whole(2, 14)) })),
    ],
  };
};

/** In these yards every date was given. */
test('a date that was told is taken without a question and planned no later, and an earlier one that is asked about comes with one that is', {
  timeout: 300_000,
}, async () => {
  let [told, asked] = [0, 0];
  for (const seed of yardSeeds(16, 9000)) {
    const random = randomYard(seed, 'small');
    const yard = seed % 3 === 0 ? withFewSticks(random, seed) : random;
    const lines = linesOf(yard, seed);
    if (!lines) continue;
    const context = await yardContext(yard);
    const { earliestOn, promiseOn } = doneOf(await askWhen(context, lines));
    const on = promiseOn ?? earliestOn;
    if (on === null) continue;
    // Where the plan has it sooner than it was told, a day less is kept, and nothing is asked.
    if (on === earliestOn) {
      const early = await saveOrder(context, takeOrder(draft(lines, dateOfDay(dayNumber(on) - 1))), undefined);
      asked++;
      expect(early, `seed ${seed}`).toMatchObject({ kind: 'moves', effect: { insteadOn: on } });
    }
    told++;
    const saved = await saveOrder(context, takeOrder(draft(lines, on)), undefined);
    expect(saved, `seed ${seed}`).toMatchObject({ kind: 'saved' });
    const id = saved.kind === 'saved' ? saved.value.id : '';
    const { plan } = await currentPlan(context);
    // What it was told with sessions in hand is no reason to begin it so late that none is left.
    const { completesAt, completesOn } = plan.orders.find((order) => order.id === id)!;
    const keeps = dayInHandToTell(yard, completesAt)?.on ?? completesOn;
    expect(completesOn <= earliestOn! || keeps <= on, `seed ${seed}`).toBe(true);
  }
  expect(told).toBeGreaterThan(9);
  expect(asked).toBeGreaterThan(2);
});
