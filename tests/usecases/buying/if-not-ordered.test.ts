import { expect, test } from 'vitest';
import { ifNotOrdered } from '../../../src/usecases/buying/if-not-ordered.ts';
import { showBuying } from '../../../src/usecases/buying/show-buying.ts';
import { computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const MORTAR = {
  id: 'mortar',
  name: 'Fast-setting mortar',
  unit: 'bag',
  onHand: 0,
  pack: 2,
  minimum: 0,
  kerfMm: 0,
  leadDays: 2,
};
const yard = () => smallYard({ materials: [MORTAR, smallYard().materials[1]!] });
const asked = { material: 'mortar', orderBy: '2027-04-08' };

/** As in the program, where threads answer; here they answer at once, and what they were asked is counted. */
const withThread = (context: UseCaseContext) => {
  let count = 0;
  const compute: typeof computeWithoutThread = (kind, question) => {
    count += 1;
    return computeWithoutThread(kind, question);
  };
  const background = { planMade: () => undefined, improving: () => false, compute, computeForRequest: compute };
  return { context: { ...context, background }, asked: () => count };
};

const lineIn = async (context: UseCaseContext) => (await showBuying(context)).weeks[0]?.trips[0]?.lines[0];

// Ordered today the bag comes on Saturday the 10th, on which the pair is poured; a day later it waits for the Saturday after.
test('what slips where a thing is not ordered by its day is planned once, and stands beside the line then', async () => {
  const { context, asked: questions } = withThread(await yardContext(yard()));
  expect(await lineIn(context)).toMatchObject({ isAskedIfLate: true, ifLate: null });
  const before = questions();
  const slips = await ifNotOrdered(context, asked);
  expect(slips).toEqual([{ order: '27-001', customer: 'School garden', from: '2027-04-10', to: '2027-04-17' }]);
  expect(await ifNotOrdered(context, asked)).toEqual(slips);
  expect(questions()).toBe(before + 1);
  expect((await lineIn(context))?.ifLate).toEqual(slips);
});

test('nothing is said of what is not on the list, nor where there is no thread to ask', async () => {
  const context = await yardContext(yard());
  expect(await ifNotOrdered(withThread(context).context, { ...asked, material: 'gold' })).toBeNull();
  expect(await ifNotOrdered(context, asked)).toBeNull();
});
