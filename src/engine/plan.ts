import type { DroppedTask, Keep, PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { lateBound } from './bound/bound.ts';
import { asInFile, canonicalYard } from './canonical-yard.ts';
import { compile } from './decoder/compile.ts';
import { decoderStateOf } from './decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from './decoder/dispatch.ts';
import { firmIn } from './decoder/dropped-by.ts';
import { NEVER, NONE, type Problem } from './decoder/problem.ts';
import { settle } from './decoder/settle.ts';
import { writePlan } from './decoder/write-plan.ts';
import { fewestLate } from './exact/fewest-late.ts';
import { fitCarefully } from './quote/fit-in.ts';
import type { FoundLonger } from './quote/longer.ts';
import { completeInHand } from './quote/promise.ts';
import type { Effort } from './search/effort.ts';
import { foundIn } from './search/found.ts';
import { leftOutLast } from './search/left-out.ts';
import { dispatchFrom, memoryOf, type PlanMemory } from './search/memory.ts';
import { presentPours } from './search/nearness.ts';
import { quickSearch } from './search/quick.ts';
import { searchOn } from './search/search.ts';
import { tidied, tidyingTries } from './search/tidy.ts';
import { chooseBeside, onceTaken } from './standing/choose-beside.ts';
import { exactlyTaken } from './standing/exactly-taken.ts';
import { judgedInTurn, plannedInTurn } from './standing/in-turn.ts';
import { rescuesOf } from './standing/rescue.ts';
import { type Candidate, candidateOf, standOn } from './standing/standing-plan.ts';

const NO_LENGTHS = 'its lengths can no longer be cut from what is there by then';

/** Gives up the last fixed packing, or else the last fixed batch; its sticks are then there for the others. */
const dropLastKept = ({ yard, fixed, calendar }: Problem): Problem => {
  const { keep } = yard;
  const [pack, batch] = [fixed.packs.at(-1), fixed.batches.filter(({ isBegun }) => !isBegun).at(-1)];
  if (!keep || (!pack && !batch)) throw new Error('a plan that cuts no scarce stick found no cut plan');
  const order = pack && yard.orders[pack.order]!.id;
  const less = compile({
    ...yard,
    keep: pack
      ? { ...keep, packs: keep.packs!.filter((one) => one.order !== order) }
      : { ...keep, batches: keep.batches.filter(({ id }) => id !== batch!.id) },
  });
  const dropped = {
    ...(pack ? { pack: order } : { batch: batch!.id }),
    at: calendar.instantText((pack ?? batch!).start),
    reason: NO_LENGTHS,
  };
  return { ...less, fixed: { ...less.fixed, dropped: [...less.fixed.dropped, dropped] } };
};

/** The plan of one dispatch, placed again with fewer sticks to count on where their cuts do not fit. */
const planOf = (problem: Problem, dispatch: Dispatch): PlanFile => {
  const heldBack = new Int32Array(problem.materials.length);
  for (;;) {
    const state = decoderStateOf(problem, dispatch, heldBack);
    const refused = settle(state, dispatch);
    const unplanned = [...refused].map(([order, why]) => ({ order: problem.yard.orders[order]!.id, ...why }));
    const written = writePlan(state, unplanned);
    if ('plan' in written) return written.plan;
    heldBack[written.shortOf] = heldBack[written.shortOf]! + 1;
    const { onHand, arrivals, offcuts, sheets } = problem.materials[written.shortOf]!;
    const rests = offcuts.length + (sheets?.rests.length ?? 0);
    const sticks = arrivals.reduce((n, x) => n + x.quantity, onHand + rests);
    if (heldBack[written.shortOf]! <= sticks + 1) continue;
    return planOf(dropLastKept(problem), dispatch);
  }
};

/** The plan that stands, with what it could not keep of what is fixed; that other pours of it had to go is no news. */
const standingPlan = (
  isFixed: (task: DroppedTask) => boolean,
  { problem, dispatch }: Candidate,
): { plan: PlanFile; memory: PlanMemory } => {
  const plan = planOf(problem, dispatch);
  const dropped = plan.dropped.filter(isFixed);
  return { plan: { ...plan, dropped }, memory: memoryOf(problem, dispatch) };
};

/** How to plan: "normal" where no effort is named, and one seed for all plans where none is. */
export interface PlanOptions {
  effort?: Effort;
  seed?: number;
  /** The present plan: of plans that are equally good the closest to it wins. */
  near?: PlanFile;
  /** How the present plan was come by: planning starts from there. */
  memory?: PlanMemory;
  /** The plan that stands: its pours, coats, strips and packings, as they are in the yard as it is now. Another takes its place only for a gain. */
  standing?: Keep;
  /** Orders whose date was given to the customer: no plan that takes the place of the one that stands has them later. */
  given?: readonly string[];
  /** What a longer search found for the one order that is new, when it was asked about. */
  longer?: FoundLonger;
}

/** The bound of a plan whose every order that a mould could make is planned; none where time or material left one out. */
const boundOf = (problem: Problem, plan: PlanFile): PlanFile['bound'] => {
  if (plan.unplanned.some((u) => u.cause !== 'mould')) return undefined;
  const left = new Set(plan.unplanned.map((u) => u.order));
  const orders = problem.orders.flatMap((_, o) => (left.has(problem.yard.orders[o]!.id) ? [] : [o]));
  return { weightedDaysLate: lateBound(problem, orders, plan.score.weightedDaysLate) };
};

/** Steps of a search through all ways to do the work. */
const STEPS = { normal: 20_000, thorough: 100_000 };

/** A plan of a small yard with fewer days late, where all ways were looked through and one has; and what they prove. */
const withFewestLate = (
  problem: Problem,
  { plan, dispatch, effort }: { plan: PlanFile; dispatch: Dispatch; effort: keyof typeof STEPS },
): { plan: PlanFile; memory: PlanMemory } => {
  const { found, bound: least } = fewestLate(problem, plan.score.weightedDaysLate, STEPS[effort]);
  const best = found ? planOf(found.problem, found.dispatch) : plan;
  const bound = least === null ? plan.bound : { weightedDaysLate: least };
  return { plan: { ...best, ...(bound && { bound }) }, memory: memoryOf(problem, found?.dispatch ?? dispatch) };
};

/**
 * Whether an order just taken is planned with the sessions in hand before the date it was given: it need not be sooner, at the
 * cost of what the others have in hand.
 */
const isNewInHand = ({ problem, readyOn }: Candidate, memory: PlanMemory): boolean => {
  const known = new Set(memory.sequence);
  return problem.orders.some(({ dueDay }, o) => {
    if (known.has(problem.yard.orders[o]!.id) || dueDay >= NEVER || readyOn[o] === NONE) return false;
    const until = completeInHand(problem, dueDay);
    return until < NEVER && problem.calendar.midnightOf(readyOn[o]! + 1) - 1 <= until;
  });
};

/** The dispatch of a plan, or of a tidier one that is as good (`tidied`). What the plan keeps stays in it. */
const tidyDispatch = (
  { problem, dispatch }: Pick<Candidate, 'problem' | 'dispatch'>,
  effort: Effort,
  near: PlanFile | undefined,
): Dispatch => {
  const tries = tidyingTries(problem, effort);
  if (tries === 0) return dispatch;
  const state = decoderStateOf(problem, dispatch);
  settle(state, dispatch);
  const present = near && presentPours(problem, near);
  const found = tidied(state, foundIn(state, dispatch, present), tries, present);
  return leftOutLast(state.orders.excluded, found.dispatch);
};

/** As `planWithMemory`, of a yard whose lists are in the order that is theirs. */
const planOfCanonical = (yard: YardFile, options: PlanOptions): { plan: PlanFile; memory: PlanMemory } => {
  const { effort = 'normal', seed = 1, near, memory, standing } = options;
  const problem = compile(yard);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const present = near && presentPours(problem, near);
  const fit = memory ? fitCarefully(yard, memory, { standing, near, longer: options.longer }) : null;
  const fitted = fit?.memory;
  const memories = [memory, fitted].filter((m) => !!m);
  const quick = quickSearch(state, { first: memories.map((m) => dispatchFrom(problem, m)), present });
  const searched = effort === 'quick' ? quick : searchOn(state, quick, effort, seed, present);
  if (standing) {
    const tried = [...memories.map((m) => dispatchFrom(problem, m)), searched.dispatch];
    const given = new Set(options.given);
    const { stood, freer } = standOn(yard, standing, memory, near);
    const isFixed = firmIn(yard.keep);
    const lost = ({ dropped }: Candidate) => dropped.filter(isFixed).length;
    const inTurn = (one: Candidate) => (near ? judgedInTurn(yard, one, near) : one);
    const candidates = tried.map((one) => inTurn(candidateOf(state, one)));
    const beside = { given, near, lost };
    const isInHand = (one: Candidate) => memory === undefined || isNewInHand(one, memory);
    const mayTake = fit && (fit.isCareful || !isInHand(stood));
    const inPlace = onceTaken(stood, mayTake ? candidates[memories.indexOf(fit.memory)]! : null, beside);
    const taken = onceTaken(
      inPlace,
      !memory || isInHand(inPlace) ? null : exactlyTaken(yard, memory, standing, { inPlace, near }),
      beside,
    );
    const others = [inTurn(freer), stood, ...candidates];
    const chosen = chooseBeside(taken, others, beside);
    // No date is said to be late before plans that keep it were looked for.
    const rescues = effort === 'quick' && near ? rescuesOf({ state, given, near, memory, present, seed }, chosen) : [];
    const all = [...others, ...rescues.map(inTurn)];
    const last = rescues.length === 0 ? chosen : chooseBeside(taken, all, beside);
    // Not tidied: what a foreman minds least is often what keeps a date when a day is lost (seasons with mishaps).
    return standingPlan(isFixed, last);
  }
  const dispatch = tidyDispatch({ problem, dispatch: searched.dispatch }, effort, near);
  const plan = planOf(problem, dispatch);
  if (effort === 'quick') return { plan, memory: memoryOf(problem, dispatch) };
  const bound = boundOf(problem, plan);
  const late = plan.score.weightedDaysLate;
  if (plan.unplanned.length > 0 || !bound || bound.weightedDaysLate >= late - 1e-6)
    return { plan: bound ? { ...plan, bound } : plan, memory: memoryOf(problem, dispatch) };
  return withFewestLate(problem, { plan: { ...plan, bound }, dispatch, effort });
};

/**
 * Plans a yard: every order planned whole, or left out with a reason, by rules R0–R14 of the yard file contract. Pure and
 * deterministic: the same file and options give the same plan on any machine. The file has to come from `readYardFile`.
 * Quick tries a few dispatches; normal and thorough search on from there, for a counted number of plans, and state a
 * bound. The memory goes into the next planning of the same yard.
 */
export const planWithMemory = (yard: YardFile, options: PlanOptions = {}): { plan: PlanFile; memory: PlanMemory } => {
  const canonical = canonicalYard(yard);
  const made = planOfCanonical(canonical.yard, options);
  const { plan, memory } = options.near ? plannedInTurn(canonical.yard, made, options.near) : made;
  return { plan: asInFile(plan, yard, canonical.lots), memory };
};

/**
 * The plan alone; see `planWithMemory`.
 *
 * Example: `planYard(emptyYard({ name: 'Our yard', timeZone: 'UTC', now: '2027-04-05T08:00:00Z' })).orders` is [].
 */
export const planYard = (yard: YardFile, options: PlanOptions = {}): PlanFile => planWithMemory(yard, options).plan;
