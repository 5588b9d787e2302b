import type { Tx } from '../../../db/open.ts';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { mouldById } from '../../../db/stores/mould-store.ts';
import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { packGoods } from '../orders/pack-order.ts';
import { afterPack, afterPour, afterPrep, afterStrip, type CarryOn } from '../plan/carry-on.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type LateStep, lateSteps } from '../plan/late-steps.ts';
import { lateWords } from '../plan/late-words.ts';
import { lateWork } from '../plan/late-work.ts';
import { type Filled, pourBatch } from './record-pour.ts';
import { prepareMould } from './record-prep.ts';
import { stripMould } from './record-strip.ts';
import { type StockToTake, stockToTake } from './stock-to-take.ts';

/** The plan less one step; null when it has to be made anew. */
type Carry = (plan: PlanFile) => PlanFile | null;

interface Writing {
  tx: Tx;
  yard: YardFile;
  now: string;
  stock: StockToTake;
}

type StepOf<K extends LateStep['kind']> = Extract<LateStep, { kind: K }>;

/** How the plan goes on after a step, seen with the finished pieces as they are just then. */
const carrying = async <T>({ tx }: Writing, carryOn: CarryOn<T>, value: T): Promise<Outcome<Carry>> => {
  const after = { finished: await finishedPieces(tx) };
  return done((plan) => carryOn(plan, after, value));
};

/** A pour as it was planned; a sealing coat that was due by then was given. */
const filledOf = async (tx: Tx, { mould: id, casting, order, oiled }: PlanPour): Promise<Filled> => {
  const mould = await mouldById(tx, id);
  const every = mould?.oilEveryTurns ?? null;
  const due = mould !== null && every !== null && mould.turnsSinceOil >= every;
  return { mould: id, casting, order: order ?? null, sealed: oiled || due };
};

const outOfUse = ({ yard }: Writing, moulds: readonly string[]): string | null =>
  yard.moulds.find(({ id, condition }) => condition === 'damaged' && moulds.includes(id))?.id ?? null;

const writeBatch = async (writing: Writing, { mix: { batch, pours } }: StepOf<'batch'>): Promise<Outcome<Carry>> => {
  const { tx, yard, now, stock } = writing;
  const damaged = outOfUse(
    writing,
    pours.map(({ mould }) => mould),
  );
  if (damaged)
    return refuse(
      'pours',
      `${damaged} is marked damaged. If it was poured before that, write this batch down by itself.`,
    );
  const short = stock.forBatch(batch, pours);
  if (short)
    return refuse(
      'pours',
      `By the stock book there is too little ${short} for it. Write down what arrived or count it, or write this batch down by itself.`,
    );
  const filled: Filled[] = [];
  for (const pour of pours) filled.push(await filledOf(tx, pour));
  const filledAt = pours.map(({ fillEnd }) => fillEnd).reduce((a, b) => (minuteOf(a) > minuteOf(b) ? a : b));
  const poured = await pourBatch(tx, yard, { pours: filled, bags: batch.bags, filledAt }, now);
  return poured.ok ? carrying(writing, afterPour({ pours: filled, ...poured.value }), null) : poured;
};

const writeStrip = async (writing: Writing, { strip }: StepOf<'strip'>): Promise<Outcome<Carry>> => {
  const { tx, yard, now } = writing;
  const { mould, stripEnd } = strip;
  const stripped = await stripMould(tx, yard, { mould, cameOut: 'good', reason: '' }, now);
  return stripped.ok ? carrying(writing, afterStrip(mould, minuteOf(stripEnd)), null) : stripped;
};

const writePrep = async (writing: Writing, { pour }: StepOf<'prep'>): Promise<Outcome<Carry>> => {
  const { mould, casting, oiled, prepEnd } = pour;
  const prepared = await prepareMould(writing.tx, { mould, casting, sealed: oiled });
  return prepared.ok ? carrying(writing, afterPrep(mould, casting, minuteOf(prepEnd)), null) : prepared;
};

const writePack = async (writing: Writing, { order: { id, packEnd } }: StepOf<'pack'>): Promise<Outcome<Carry>> => {
  const { tx, yard, now, stock } = writing;
  const short = stock.forOrder(id);
  if (short)
    return refuse(
      'order',
      `By the stock book there is too little ${short} for it. Write down what arrived or count it, or write this order down by itself.`,
    );
  const packed = await packGoods(tx, yard, { order: id, evenShort: false, now });
  return packed.ok ? carrying(writing, afterPack(id, minuteOf(packEnd)), packed.value) : packed;
};

const writeStep = (writing: Writing, step: LateStep): Promise<Outcome<Carry>> => {
  if (step.kind === 'batch') return writeBatch(writing, step);
  if (step.kind === 'strip') return writeStrip(writing, step);
  return step.kind === 'prep' ? writePrep(writing, step) : writePack(writing, step);
};

interface Written {
  steps: readonly LateStep[];
  carries: readonly Carry[];
}

/**
 * All work of a session that is over and was not written down yet is, as it was planned and in order of time: one change.
 * When one of its steps can't be, none is, and the fault stands at the name of that step.
 */
export const writeLateWork = (context: UseCaseContext): Promise<Outcome<Changed<Written>>> =>
  changing<Written>(
    context,
    { kind: 'as planned', words: ({ steps }) => `${lateWords(steps)} as planned` },
    async (tx, yard, _change, plan) => {
      const late = lateWork(yard, plan);
      if (!late) return refuse('late', 'There is nothing left to be written down as planned. Nothing was changed.');
      const writing = { tx, yard, now: context.now, stock: stockToTake(yard) };
      const [steps, carries] = [lateSteps(late), [] as Carry[]];
      for (const step of steps) {
        const written = await writeStep(writing, step);
        if (!written.ok) return refuse(step.name, written.faults[0]?.message ?? '');
        carries.push(written.value);
      }
      return done({ steps, carries });
    },
    {
      carryOn: (plan, _after, { carries }) =>
        carries.reduce<PlanFile | null>((left, carry) => left && carry(left), plan),
    },
  );
