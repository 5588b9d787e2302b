import { refusals } from '../decoder/admit.ts';
import { decode } from '../decoder/decode.ts';
import { type Choices, type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { NEVER, type Problem } from '../decoder/problem.ts';
import { poursOf } from '../search/effort.ts';
import { foundIn } from '../search/found.ts';
import { improvePlan } from '../search/improve.ts';
import { BY_HAND, startSequences, TRIED_CHOICES, waitingForLots } from '../search/quick.ts';
import { randomFrom } from '../search/random.ts';
import { type Earliest, NOWHERE, soonerUnder } from './completes-under.ts';
import { type Asking, type Present, withOrderAt } from './present.ts';
import { handoverOn } from './promise.ts';

/** Pours placed in all by the plans from nothing, about. */
const POURS_FROM_NOTHING = 8_000;
const MOST_FROM_NOTHING = 60;
const MOST_ROUNDS = 4;

/** The problem with the new order due on a day; without one where that is NEVER. */
const dueOn = ({ problem, added }: Asking, day: number): Problem => ({
  ...problem,
  orders: problem.orders.map((order, o) => (o === added ? { ...order, dueDay: day, aimDay: day } : order)),
});

/** Sequences by the dispatch rules, the new order where it comes when it is due on a day, and in front. */
const sequencesFor = (asking: Asking, day: number): Int32Array[] => {
  const sequences = startSequences(dueOn(asking, day));
  const inFront = sequences.map((sequence) => sequence.filter((o) => o !== asking.added));
  return [...sequences, ...inFront.map((others) => Int32Array.from([asking.added, ...others]))];
};

/** What the decoder weighs by in these plans: as in quick planning, and as by hand. */
const CHOICES = [...TRIED_CHOICES.slice(0, 3), ...BY_HAND, ...TRIED_CHOICES.slice(3)];

/**
 * One round of plans from nothing, in which the new order is due the day before the earliest one known. What was `tried`
 * before, and was no sooner than what was known then, is not tried again: several rules often come to one sequence.
 */
const roundFromNothing = (asking: Asking, present: Present, best: Earliest, tried: Set<string>): Earliest => {
  const { problem } = asking;
  const day = best.completesAt >= NEVER ? NEVER : handoverOn(problem, best.completesAt) - 1;
  const sequences = sequencesFor(asking, day);
  const most = Math.min(MOST_FROM_NOTHING, Math.floor(POURS_FROM_NOTHING / poursOf(problem)));
  let earliest = best;
  const attempt = (sequence: Int32Array, choices: Partial<Choices>): void => {
    const key = `${sequence.join()} ${JSON.stringify(choices)}`;
    if (tried.has(key)) return;
    tried.add(key);
    earliest = soonerUnder(asking, dispatchOf(sequence, choices), present, 'given', earliest);
  };
  for (let i = 0; i < Math.min(most, sequences.length * CHOICES.length); i++) {
    const choices = CHOICES[(i + Math.floor(i / sequences.length)) % CHOICES.length]!;
    attempt(sequences[i % sequences.length]!, choices);
  }
  for (const choices of waitingForLots(problem))
    for (const sequence of sequences.slice(0, most)) attempt(sequence, choices);
  return earliest;
};

/**
 * The earliest completion among plans made from nothing, in which no date given is later than at present: by dispatch
 * rules, with what the decoder weighs by as quick planning has it; again from each day found. Sooner than `best`, or that.
 */
export const earliestFromNothing = (asking: Asking, present: Present, best: Earliest): Earliest => {
  let earliest = best;
  const tried = new Set<string>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const sooner = roundFromNothing(asking, present, earliest, tried);
    if (sooner === earliest) break;
    earliest = sooner;
  }
  return earliest;
};

/** Pours placed in all by the search for any place at all, about. */
const POURS_SEARCHED = 20_000;
const MOST_SEARCHED = 400;

/**
 * Looks longer for any plan that has the new order in it beside all others, no date given later: for when no place was
 * found, since "no" has to be true. A search of a counted length, from the present plan and from dispatch rules.
 */
export const searchForPlace = (asking: Asking, present: Present): Earliest => {
  const { state, problem, added } = asking;
  const last = withOrderAt(present, present.dispatch.sequence.length, added);
  if (refusals(problem, last.sequence).has(added)) return NOWHERE;
  const starts: Dispatch[] = [last, ...startSequences(problem).map((sequence) => dispatchOf(sequence))];
  const plans = Math.min(MOST_SEARCHED, Math.floor(POURS_SEARCHED / poursOf(problem)));
  const stop = { plans: Math.ceil(plans / starts.length), polishing: 0, judged: 0 };
  for (const start of starts) {
    state.orders.excluded.fill(0);
    state.orders.excluded.set(present.leftOut);
    decode(state, start);
    const { dispatch } = improvePlan(state, foundIn(state, start), stop, randomFrom(1));
    const found = soonerUnder(asking, dispatch, present, 'given', NOWHERE);
    if (found !== NOWHERE) return found;
  }
  return NOWHERE;
};
