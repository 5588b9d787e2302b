import { describe, expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { DEFAULT_CHOICES, type Dispatch, dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { dispatchFrom, memoryOf, type PlanMemory } from '../../../src/engine/search/memory.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const lines = [{ kit: 'pair', quantity: 1 }];
const order = (id: string, due?: string) => ({ id, due, lines });
const three = [order('a', '2027-04-10'), order('b'), order('c', '2027-04-17')];
const problem = compile(smallYard({ orders: three }));
const dispatch: Dispatch = {
  ...dispatchOf(Int32Array.of(2, 0, 1), { leastFill: 0.9 }),
  inShift: new Map([[1, { ...DEFAULT_CHOICES, noPours: true, restMould: 1 }]]),
};
const memory = JSON.parse(JSON.stringify(memoryOf(problem, dispatch))) as PlanMemory;

describe('a memory that went through JSON', () => {
  test('stands for the same dispatch', () => {
    expect(dispatchFrom(problem, memory)).toEqual(dispatch);
  });

  test('knows what is set up first, also in parts; what is new comes last there too', () => {
    const split: Dispatch = { ...dispatch, setUp: Int32Array.of(1, 2, 0, 1) };
    const known = JSON.parse(JSON.stringify(memoryOf(problem, split))) as PlanMemory;
    expect(dispatchFrom(problem, known)).toEqual(split);
    const orders = [order('b'), order('c', '2027-04-17'), order('d')];
    const later = compile(smallYard({ orders }));
    expect([...dispatchFrom(later, known).setUp!].map((o) => orders[o]!.id)).toEqual(['b', 'c', 'b', 'd']);
  });

  test('knows who waits for no finished piece, but for those that are gone', () => {
    const poured: Dispatch = { ...dispatch, pourFirst: [0, 2] };
    const known = JSON.parse(JSON.stringify(memoryOf(problem, poured))) as PlanMemory;
    expect(dispatchFrom(problem, known)).toEqual(poured);
    const later = compile(smallYard({ orders: [order('b'), order('c', '2027-04-17')] }));
    expect(dispatchFrom(later, known).pourFirst).toEqual([1]);
  });

  test('leaves out orders that are gone; new ones come last, by their dates', () => {
    const orders = [order('d'), order('c', '2027-04-17'), order('e', '2027-05-01'), order('a', '2027-04-10')];
    const later = compile(smallYard({ orders }));
    const ids = [...dispatchFrom(later, memory).sequence].map((o) => orders[o]!.id);
    expect(ids).toEqual(['c', 'a', 'e', 'd']);
  });

  // The first Saturday is closed: what was chosen for the second is now for the first that is left.
  test('finds its sessions by the minute they start', () => {
    const closed = compile(smallYard({ orders: three, closed: ['2027-04-10'] }));
    expect([...dispatchFrom(closed, memory).inShift.keys()]).toEqual([0]);
    const moved = compile(smallYard({ orders: three, work: [{ ...smallYard().work[0]!, start: '08:30' }] }));
    expect(dispatchFrom(moved, memory).inShift.size).toBe(0);
  });

  test('chooses no mould and no mix that is gone', () => {
    const one = compile(smallYard({ orders: three, moulds: [smallYard().moulds[0]!] }));
    expect(dispatchFrom(one, memory).inShift.get(1)!.restMould).toBe(DEFAULT_CHOICES.restMould);
  });

  test('from before a choice was thought of goes by what is usual', () => {
    const { leaveInMoulds: _new, ...old } = memory.choices;
    const before = { ...memory, choices: old } as PlanMemory;
    expect(dispatchFrom(problem, before).choices.leaveInMoulds).toBe(DEFAULT_CHOICES.leaveInMoulds);
  });
});

describe('planning again with the memory and the plan at hand, nothing changed', () => {
  const again = (seed: number, effort: 'quick' | 'normal') => {
    const yard = randomYard(seed, 'small');
    const { plan, memory: own } = planWithMemory(yard, { effort });
    const known = JSON.parse(JSON.stringify(own)) as PlanMemory;
    const { bound: _bound, ...bare } = plan;
    expect(planWithMemory(yard, { effort: 'quick', memory: known, near: plan }).plan, `seed ${seed}`).toEqual(bare);
  };

  test('gives the plan of a quick planning', () => {
    for (const seed of yardSeeds(40)) again(seed, 'quick');
  });

  test('loses nothing that a longer search has found', { timeout: 60_000 }, () => {
    for (const seed of [3, 8, 11]) again(seed, 'normal');
  });
});
