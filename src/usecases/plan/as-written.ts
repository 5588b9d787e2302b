import type { PlanFile, PlanOrder, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { renamed } from './fixed-plan.ts';
import type { FixedMix } from './fixed-pours.ts';
import { type LateStep, lateSteps } from './late-steps.ts';
import { lateWork, type PlanOfWork } from './late-work.ts';
import {
  type Book,
  type LatePiece,
  openBook,
  writePack,
  writePour,
  writePrep,
  writeStrip,
  yardOf,
} from './written-book.ts';

/** A yard as it stands once its late work is written down, and the way from its plan to one that has that work to do. */
export interface AsWritten {
  yard: YardFile;
  /** Null where the plan leaves no room for it: a piece would never come out of its mould. */
  putBack: (plan: PlanFile) => PlanFile | null;
}

/** Which order a plan gives each late piece to. */
const ordersOf = ({ pieces, written }: Book, plan: PlanFile): Map<LatePiece, string> => {
  const orders = new Map<LatePiece, string>();
  for (const { order, pieces: taken } of written.packs) for (const piece of taken) orders.set(piece, order.id);
  for (const { id, fromFinished } of plan.orders)
    for (const { finished } of fromFinished) {
      const piece = pieces.get(finished);
      if (piece) orders.set(piece, id);
    }
  return orders;
};

const forOrder = <P extends LatePiece>({ order: _before, ...piece }: P, order: string | undefined): P =>
  (order === undefined ? piece : { ...piece, order }) as P;

/** Pours with the times at which the plan strips their pieces, where it is the plan that does. */
const poursBack = (book: Book, { pours }: FixedMix, plan: PlanFile, orders: Map<LatePiece, string>): PlanPour[] =>
  pours.map((pour) => {
    const strip = book.pours.get(pour.mould) === pour && plan.strips.find(({ mould }) => mould === pour.mould);
    if (!strip) return forOrder(pour, orders.get(pour));
    const { stripStart, stripEnd, pieceReadyAt } = strip;
    return forOrder({ ...pour, stripStart, stripEnd, pieceReadyAt }, strip.order);
  });

const orderBack = ({ pieces, written }: Book, order: PlanOrder): PlanOrder => {
  const pack = written.packs.find((one) => one.order.id === order.id);
  if (pack) return { ...pack.order, fromFinished: pack.fromFinished };
  return { ...order, fromFinished: order.fromFinished.filter(({ finished }) => !pieces.has(finished)) };
};

/** A mould that counts as set up gets its set-up back, where the plan still pours what it was set up for. */
const withPreps = (pours: readonly PlanPour[], preps: readonly PlanPour[]): PlanPour[] => {
  const first = new Map<string, PlanPour>();
  for (const pour of pours) {
    const known = first.get(pour.mould);
    if (!known || minuteOf(pour.prepStart) < minuteOf(known.prepStart)) first.set(pour.mould, pour);
  }
  return pours.map((pour) => {
    const prep = preps.find(({ mould, casting }) => mould === pour.mould && casting === pour.casting);
    if (!prep || first.get(pour.mould) !== pour || pour.prepStart !== pour.prepEnd) return pour;
    return { ...pour, prepStart: prep.prepStart, prepEnd: prep.prepEnd, oiled: prep.oiled };
  });
};

const putBack = (book: Book, plan: PlanFile): PlanFile | null => {
  const { mixes, strips, preps } = book.written;
  if (plan.unstripped.some(({ mould }) => book.pours.has(mould))) return null;
  const orders = ordersOf(book, plan);
  const taken = new Set([...plan.batches, ...plan.pours].map(({ id }) => id));
  const back = mixes.map((mix) => renamed({ ...mix, pours: poursBack(book, mix, plan, orders) }, taken));
  const bags = mixes.reduce((sum, { batch }) => sum + batch.bags, 0);
  const stripped = (strip: PlanStrip): PlanStrip => forOrder(strip, orders.get(strip));
  return {
    ...plan,
    batches: [...back.map(({ batch }) => batch), ...plan.batches],
    pours: [...back.flatMap(({ pours }) => pours), ...withPreps(plan.pours, preps)],
    strips: [...strips.map(stripped), ...plan.strips.filter(({ mould }) => !book.pours.has(mould))],
    orders: plan.orders.map((order) => orderBack(book, order)),
    score: { ...plan.score, batches: plan.score.batches + mixes.length, bags: plan.score.bags + bags },
  };
};

const writeStep = (book: Book, step: LateStep, now: Minute): void => {
  if (step.kind === 'batch') writePour(book, step.mix);
  else if (step.kind === 'strip') writeStrip(book, step.strip, now);
  else if (step.kind === 'prep') writePrep(book, step.pour);
  else writePack(book, step.order);
};

/**
 * The yard as if all late work had been written down as it was planned, less the steps that were not done: a plan made of
 * it begins after that work and leaves it alone, though time does not go back. Null where there is none.
 *
 * Example: at 12:20 a batch of 11:00 is not written down yet. The yard has its pieces in their moulds and its bags out of
 * stock; what the plan made of it strips next Saturday, `putBack` gives as a pour of 11:00 that is stripped then.
 */
export const asWritten = (
  yard: YardFile,
  plan: PlanOfWork,
  notDone: ReadonlySet<string> = new Set(),
): AsWritten | null => {
  const late = lateWork(yard, plan);
  if (!late) return null;
  const book = openBook(yard);
  const now = minuteOf(yard.yard.now);
  for (const step of lateSteps(late)) if (!notDone.has(step.name)) writeStep(book, step, now);
  const { mixes, strips, packs, preps } = book.written;
  if (mixes.length + strips.length + packs.length + preps.length === 0) return null;
  return { yard: yardOf(book), putBack: (planned) => putBack(book, planned) };
};
