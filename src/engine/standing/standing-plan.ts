import type { DroppedTask, Keep, PlanFile, PlanPour } from '../../../shared/plan.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatName, coatsBefore } from '../book/coat-before.ts';
import { compile } from '../decoder/compile.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { droppedBy } from '../decoder/dropped-by.ts';
import { NONE, type Problem } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { fitIn } from '../quote/fit-in.ts';
import { daysLateOf } from '../quote/present.ts';
import { type Evaluation, evaluate, isBetter } from '../search/evaluation.ts';
import { dispatchFrom, memoryOf, type PlanMemory } from '../search/memory.ts';
import { waitingForLots } from '../search/quick.ts';
import { earliestDueFirst } from '../search/rules.ts';
import { type BatchOfPours, lessPours } from './less-pours.ts';
import { type Judged, mayTakePlace } from './may-take-place.ts';
import { standingDeal } from './standing-deal.ts';

/** A way to plan, with what comes of it for each order. */
export interface Candidate {
  problem: Problem;
  dispatch: Dispatch;
  evaluation: Evaluation;
  /** Days late by order; NEVER for one that is left out. */
  daysLate: number[];
  /** Hand-over day by order; NONE for one that is left out. */
  readyOn: number[];
  /** What is kept and not in it. */
  dropped: DroppedTask[];
}

/** What a dispatch comes to, settled in the problem's own state. */
export const candidateOf = (state: DecoderState, dispatch: Dispatch): Candidate => {
  settle(state, dispatch);
  const { problem, orders } = state;
  const readyOn = problem.orders.map((_, o) => {
    const completesAt = orders.completesAt[o]!;
    return completesAt === NONE ? NONE : problem.handover[problem.calendar.dayOf(completesAt) - problem.today]!;
  });
  const dropped = droppedBy(state);
  return { problem, dispatch, evaluation: evaluate(state), daysLate: daysLateOf(state), readyOn, dropped };
};

/** Days that an order counts as late which falls out of a plan. */
export const A_YEAR = 365;

/**
 * What a plan does to the dates that were given: weighted days that they are later in it than in the plan that stands, as
 * that was. An order that falls out of it counts like a year.
 */
export const harmOf = (
  { problem, daysLate, readyOn }: Candidate,
  near: Pick<PlanFile, 'orders'>,
  given: ReadonlySet<string>,
): number => {
  const before = new Map(near.orders.map((order) => [order.id, order.daysLate]));
  let harm = 0;
  problem.yard.orders.forEach(({ id, weight }, o) => {
    if (!given.has(id)) return;
    // An order that is new was told its date just now.
    const was = before.get(id) ?? 0;
    harm += weight * (readyOn[o] === NONE ? A_YEAR : Math.max(0, daysLate[o]! - was));
  });
  return harm;
};

const judged = ({ problem, evaluation, daysLate, readyOn }: Candidate): Judged => ({
  figures: evaluation,
  orders: new Map(
    problem.yard.orders.flatMap(({ id }, o) =>
      readyOn[o] === NONE ? [] : [[id, { daysLate: daysLate[o]!, readyOn: readyOn[o]! }] as const],
    ),
  ),
});

/** Whether a candidate may take the place of the plan that stands (`mayTakePlace`). */
export const mayReplace = (standing: Candidate, other: Candidate, given: ReadonlySet<string>): boolean =>
  mayTakePlace(judged(standing), judged(other), given);

/** Pours that were meant for an order and are for nobody by the plan in `state`: another piece came in their place. */
const idlePours = ({ problem, placed }: DecoderState, standing: Keep): ReadonlySet<PlanPour> => {
  const meant = new Map(standing.pours.filter(({ order }) => order !== undefined).map((pour) => [pour.id, pour]));
  const idle = new Set<PlanPour>();
  const seen = new Map<number, number>();
  for (let p = 0; p < placed.pours; p++) {
    const batch = placed.pourBatch[p]!;
    const place = seen.get(batch) ?? 0;
    seen.set(batch, place + 1);
    const fixed = problem.fixed.batches[placed.batchFixed[batch]!];
    const pour = meant.get(fixed?.pours[place]?.id ?? '');
    if (pour && placed.pourOrder[p] === NONE) idle.add(pour);
  }
  return idle;
};

/** What stands less pours that nobody waits for any more; what is fixed stays. */
const withoutIdle = (standing: Keep, idle: ReadonlySet<PlanPour>, yard: YardFile, problem: Problem): Keep => {
  const fixed = new Set(yard.keep?.batches.map(({ id }) => id));
  const own = (id: string) => standing.pours.filter(({ batch }) => batch === id);
  const left = standing.batches.flatMap((batch): BatchOfPours[] => {
    const pours = own(batch.id);
    const gone = new Set(pours.filter((pour) => idle.has(pour)));
    if (fixed.has(batch.id) || gone.size === 0) return [{ batch, pours }];
    if (gone.size === pours.length) return [];
    const inOrder = pours.sort((a, b) => minuteOf(a.fillStart) - minuteOf(b.fillStart));
    return [lessPours({ batch, pours: inOrder }, gone, problem.calendar.instantText)];
  });
  const pours = left.flatMap((one) => one.pours);
  const stays = new Set(pours.map(({ id }) => id));
  return {
    ...standing,
    ...{ batches: left.map(({ batch }) => batch), pours },
    strips: standing.strips?.filter(({ pour }) => pour === undefined || stays.has(pour)),
    coats: standing.coats && coatsBefore(standing.coats, pours, pours),
  };
};

/** What is left in a state, and the state. */
interface Stood {
  best: Candidate;
  state: DecoderState;
}

const better = (a: Candidate, one: Candidate): Candidate => (isBetter(one.evaluation, a.evaluation) ? one : a);

/** Whether all that is kept is in it, and no order of the plan that stands is later than there; what is ready is so today. */
const isWhole = ({ problem, dropped, readyOn }: Candidate, near: PlanFile): boolean => {
  if (dropped.length > 0) return false;
  const planned = new Map(near.orders.map(({ id, completesOn }) => [id, dayNumber(completesOn)]));
  return problem.yard.orders.every(({ id }, o) => {
    const day = planned.get(id);
    return day === undefined || (readyOn[o] !== NONE && readyOn[o]! <= Math.max(day, problem.handover[0]!));
  });
};

const setUpName = ({ mould, prepStart, prepEnd }: Pick<PlanPour, 'mould' | 'prepStart' | 'prepEnd'>): string =>
  `${mould} ${minuteOf(prepStart)} ${minuteOf(prepEnd)}`;

/**
 * A yard with just this kept. A set-up that is fixed and was a pour's own is one by itself where the batch of that cannot
 * stay, or its mould is made ready otherwise: it is done, or it is said why not.
 */
const compileKeeping = (yard: YardFile, standing: Keep): Problem => {
  const problem = compile({ ...yard, keep: standing }, { firm: yard.keep });
  const done = problem.fixed.batches.flatMap(({ pours }) =>
    pours.map(
      ({ mould, prepStart, prepMinutes }) => `${yard.moulds[mould]!.id} ${prepStart} ${prepStart + prepMinutes}`,
    ),
  );
  const known = new Set([...done, ...(standing.preps?.map(setUpName) ?? [])]);
  const freed = (yard.keep?.preps ?? []).filter((prep) => !known.has(setUpName(prep)));
  if (freed.length === 0) return problem;
  return compileKeeping(yard, { ...standing, preps: [...(standing.preps ?? []), ...freed] });
};

/** The best of carrying the plan forward with just this kept of it, in one of these ways, left in its state. */
const stand = (yard: YardFile, kept: Keep, ways: readonly PlanMemory[], near: PlanFile | undefined): Stood => {
  const problem = compileKeeping(yard, kept);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const dispatches = [...ways.map((way) => dispatchFrom(problem, way)), dispatchOf(earliestDueFirst(problem))];
  const deal = near && standingDeal(state, near);
  const bestOf = (list: readonly Dispatch[]) => list.map((dispatch) => candidateOf(state, dispatch)).reduce(better);
  const left = (best: Candidate): Stood => ({ best: candidateOf(state, best.dispatch), state });
  const dealt = deal && bestOf(dispatches.map((dispatch) => ({ ...dispatch, deal })));
  if (dealt && isWhole(dealt, near)) return left(dealt);
  const first = bestOf(dispatches);
  // Pieces that were just poured are stock that is ready later: whom they were poured for has to wait for them.
  const waiting = waitingForLots(problem).map((more) =>
    candidateOf(state, { ...first.dispatch, choices: { ...first.dispatch.choices, ...more } }),
  );
  const best = waiting.reduce(better, first);
  // Dealt anew it moves days about: for a gain alone, and with nobody later.
  const all = new Set(problem.yard.orders.map(({ id }) => id));
  return left(dealt && !mayReplace(dealt, best, all) ? dealt : best);
};

/** As `stand`, less pours that nobody waits for any more. */
const standLean = (
  yard: YardFile,
  standing: Keep,
  ways: readonly PlanMemory[],
  near: PlanFile | undefined,
): Candidate => {
  const { best, state } = stand(yard, standing, ways, near);
  const idle = idlePours(state, standing);
  if (idle.size === 0) return best;
  const keep = withoutIdle(standing, idle, yard, best.problem);
  const leaner = stand(yard, keep, [...ways, memoryOf(best.problem, best.dispatch)], near).best;
  return isBetter(best.evaluation, leaner.evaluation) ? best : leaner;
};

/**
 * The plan that stands, carried forward: its pours, coats, strips and packings stay as far as the rules allow, less pours that
 * nobody waits for any more, each for the order it was for, and an order that it does not know is placed round them, where the question "when could it be
 * ready?" would place it. It is the yardstick for every other plan; `freer` is the first of them, in which pours and their coats alone stay.
 */
export const standOn = (
  yard: YardFile,
  standing: Keep,
  memory: PlanMemory | undefined,
  near?: PlanFile,
): { stood: Candidate; freer: Candidate } => {
  const { batches, pours, coats } = standing;
  const keep = withFixed(standing, yard);
  const fitted = memory && fitIn({ ...yard, keep }, memory, { anew: false, near });
  const stood = standLean(
    yard,
    keep,
    [memory, fitted].filter((way) => !!way),
    near,
  );
  // What was found for the one is a way for the other: to look for a place once more takes as long as all the rest.
  return {
    stood,
    freer: standLean(yard, withFixed({ batches, pours, coats }, yard), [memoryOf(stood.problem, stood.dispatch)], near),
  };
};

/** Whatever stands, what is fixed beside batches is; a set-up for a pour that stands is that pour's own. */
const withFixed = (standing: Keep, { keep }: YardFile): Keep => {
  const own = new Set(standing.pours.map(setUpName));
  const coats = new Set(standing.coats?.map(coatName));
  return {
    ...standing,
    strips: standing.strips ?? keep?.strips,
    packs: standing.packs ?? keep?.packs,
    preps: standing.preps ?? keep?.preps?.filter((prep) => !own.has(setUpName(prep))),
    coats: [...(standing.coats ?? []), ...(keep?.coats ?? []).filter((coat) => !coats.has(coatName(coat)))],
  };
};
