import { expect, test } from 'vitest';
import { dayNumber } from '../../../../shared/time.ts';
import { compile } from '../../../../src/engine/decoder/compile.ts';
import { type Choices, DEFAULT_CHOICES } from '../../../../src/engine/decoder/dispatch.ts';
import { changeChoices, scopeOf } from '../../../../src/engine/search/moves/choices.ts';
import { randomFrom } from '../../../../src/engine/search/random.ts';
import { smallYard } from '../../../support/small-yard.ts';

const STEPS = 3000;
/** With a finished piece that is ready on the 20th. */
const yard = smallYard({ finished: [{ casting: 'panel-900', count: 1, readyAt: '2027-04-20T08:00:00+01:00' }] });
const walk = (seed: number): Choices[] => {
  const random = randomFrom(seed);
  const scope = scopeOf(compile(yard));
  const list: Choices[] = [DEFAULT_CHOICES];
  for (let i = 0; i < STEPS; i++) list.push(changeChoices(list.at(-1)!, random, scope));
  return list;
};
const differing = (a: Choices, b: Choices) => (Object.keys(a) as (keyof Choices)[]).filter((key) => a[key] !== b[key]);

test('a yard has as much to choose from as it has mixes, moulds and pieces that are not ready yet', () => {
  expect(scopeOf(compile(smallYard()))).toEqual({ mixes: 1, moulds: 2, lotDays: [] });
  expect(scopeOf(compile(yard)).lotDays).toEqual([dayNumber('2027-04-20')]);
});

/** What only tidying tries (`faults.ts`), on a plan that is found already. */
const OF_TIDYING = ['changeSeldom', 'leastFillInHand'];

test('few choices change at a time, and in the end every one of them has', () => {
  const list = walk(1);
  const changes = list.slice(1).map((choices, i) => differing(list[i]!, choices));
  expect(Math.max(...changes.map((x) => x.length))).toBeLessThanOrEqual(4);
  expect(new Set(changes.flat())).toEqual(
    new Set(Object.keys(DEFAULT_CHOICES).filter((key) => !OF_TIDYING.includes(key))),
  );
});

test('they name only mixes and moulds that are there', () => {
  const list = walk(2);
  expect(new Set(list.map((x) => x.heldMix))).toEqual(new Set([-1, 0]));
  expect(new Set(list.map((x) => x.restMould))).toEqual(new Set([-1, 0, 1]));
});

test('the choices it starts from are left as they were, and the same seed gives the same steps', () => {
  const before = { ...DEFAULT_CHOICES };
  expect(walk(3)).toEqual(walk(3));
  expect(DEFAULT_CHOICES).toEqual(before);
});
