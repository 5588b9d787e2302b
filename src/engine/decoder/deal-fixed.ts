import { curedAt, outAt } from '../book/curing-times.ts';
import { takeAsStood } from './deal-as-stood.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedBatch, FixedPour } from './fixed-batch.ts';
import { nextOrder } from './place-pour.ts';
import { NONE } from './problem.ts';

/** To whom fixed pours are dealt, by pour. */
export type Owners = ReadonlyMap<FixedPour, number>;

interface Dealt {
  pour: FixedPour;
  batchStart: number;
  outAt: number;
  readyAt: number;
}

const dealtOf = ({ problem }: DecoderState, batch: FixedBatch): Dealt[] =>
  batch.pours.map((pour) => {
    const { fillMinutes, stripMinutes } = problem.castings[pour.casting]!;
    const mix = problem.mixes[batch.mix]!;
    const filled = pour.fillStart + fillMinutes;
    const out = outAt(mix, filled);
    const strip = pour.stripAt === NONE ? out : pour.stripAt;
    return { pour, batchStart: batch.start, outAt: out, readyAt: Math.max(strip + stripMinutes, curedAt(mix, filled)) };
  });

/**
 * Deals the pours of fixed batches of one shift: the piece that is ready soonest goes to the first order of the sequence,
 * whichever is filled first. What is filled last may be stripped first, and that is known of what is fixed. Pours that are
 * somebody's by the plan that stands are so still.
 */
export const dealFixed = (state: DecoderState, batches: readonly FixedBatch[]): Owners => {
  const dealt = batches.flatMap((batch) => dealtOf(state, batch));
  dealt.sort((a, b) => a.readyAt - b.readyAt || a.pour.fillStart - b.pour.fillStart);
  return new Map(
    dealt.map(({ pour, outAt: out, batchStart }) => [
      pour,
      takeAsStood(state, pour) ?? nextOrder(state, pour.casting, out, batchStart),
    ]),
  );
};
