import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { type DecoderState, decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { choicesIn, type Dispatch, dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { branchOff, followBranch, trajectoryOf } from '../../../src/engine/decoder/trajectory.ts';
import { changeChoices, scopeOf } from '../../../src/engine/search/moves/choices.ts';
import { startSequences } from '../../../src/engine/search/quick.ts';
import { below, randomFrom } from '../../../src/engine/search/random.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { withLongPacking } from '../../support/random-yard/long-packing.ts';
import { randomYard, type YardKind } from '../../support/random-yard.ts';

const KINDS: YardKind[] = ['small', 'tight-rack', 'typical', 'cold-spring'];

/** All that was placed and what became of the orders and moulds. */
const planIn = ({ placed, orders, moulds }: DecoderState) =>
  structuredClone({
    batches: placed.batchStart.slice(0, placed.batches),
    bags: placed.batchBags.slice(0, placed.batches),
    pours: placed.pourFillStart.slice(0, placed.pours),
    moulds: placed.pourMould.slice(0, placed.pours),
    owners: placed.pourOrder.slice(0, placed.pours),
    strips: placed.pourStripStart.slice(0, placed.pours),
    readyAt: placed.pourReadyAt.slice(0, placed.pours),
    first: placed.firstStripStart,
    lots: placed.dealLot.slice(0, placed.deals),
    gets: placed.dealOrder.slice(0, placed.deals),
    completesAt: orders.completesAt,
    spells: [orders.spells, orders.spellStart, orders.spellMinutes],
    setFor: moulds.setFor,
  });

const begun = (yard: YardFile): DecoderState => {
  const problem = compile(yard);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  settle(state, dispatchOf(startSequences(problem)[0]!));
  return state;
};

const afresh = (state: DecoderState, dispatch: Dispatch) => {
  const other = decoderStateOf(state.problem, dispatch);
  other.orders.excluded.set(state.orders.excluded);
  decode(other, dispatch);
  return planIn(other);
};

/** Steps of choices in single shifts, every third of them followed; other sequences are decoded in between. */
const walk = (
  seed: number,
  yard = randomYard(seed, KINDS[seed % KINDS.length]!),
): { joined: number; apart: number } => {
  const state = begun(yard);
  const random = randomFrom(seed);
  const [first = new Int32Array(0), other = first] = startSequences(state.problem);
  let dispatch = dispatchOf(first);
  const trajectory = trajectoryOf(state, dispatch);
  const counts = { joined: 0, apart: 0 };
  if (!trajectory.isWhole || trajectory.shifts === 0) return counts;
  const spare: Parameters<typeof branchOff>[4] = [];
  for (let step = 0; step < 24; step++) {
    if (step % 5 === 4) decode(state, dispatchOf(other, { leastFill: 0 }));
    const shift = below(random, trajectory.shifts);
    const choices = changeChoices(choicesIn(dispatch, shift), random, scopeOf(state.problem));
    const tried = { ...dispatch, inShift: new Map(dispatch.inShift).set(shift, choices) };
    const branch = branchOff(state, tried, trajectory, shift, spare);
    expect(planIn(state), `seed ${seed}, step ${step}`).toEqual(afresh(state, tried));
    counts[branch.hasJoined ? 'joined' : 'apart']++;
    if (step % 3 !== 0 || !branch.isWhole) continue;
    followBranch(state, trajectory, branch);
    dispatch = tried;
  }
  return counts;
};

describe('a branch of a trajectory', () => {
  test('is the plan that its dispatch comes to from nothing, whatever was decoded before it', () => {
    const walks = yardSeeds(16).map((seed) => walk(seed));
    // Both ways to end have to have been gone, or this shows nothing about them.
    expect(walks.filter(({ joined }) => joined > 0).length).toBeGreaterThan(4);
    expect(walks.filter(({ apart }) => apart > 0).length).toBeGreaterThan(4);
  });

  test('also where an order is packed over several sessions', () => {
    const walks = yardSeeds(16, 30_000).map((seed) => walk(seed, withLongPacking(diceOf(seed), randomYard(seed))));
    expect(walks.filter(({ joined }) => joined > 0).length).toBeGreaterThan(4);
  });
});
