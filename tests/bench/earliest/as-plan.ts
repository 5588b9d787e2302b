import type { PlanFile } from '../../../shared/plan.ts';
import type { Best } from './enumerate.ts';
import { stepsFrom } from './steps.ts';
import { dateOf, daysLate, handoverOn, instantOf, type Tiny } from './tiny.ts';
import type { Done, Piece, WorkState } from './work-state.ts';

type Task = Done['task'];
type Batch = Extract<Task, { kind: 'batch' }>;
type Strip = Extract<Task, { kind: 'strip' }>;
type Pack = Extract<Task, { kind: 'pack' }>;

const tasksOf = ({ done }: WorkState): Task[] => {
  const tasks: Task[] = [];
  for (let one = done; one; one = one.before) tasks.unshift(one.task);
  return tasks;
};

/** What is in a mould and nobody waits for comes out as well, last of all (the plan has to say when). */
const emptied = (tiny: Tiny, state: WorkState): WorkState => {
  let last = state;
  while (last.moulds.some(({ held }) => held)) {
    const strip = [...stepsFrom(tiny, last)].find(({ done }) => done !== last.done && done?.task.kind === 'strip');
    if (!strip) break;
    last = strip;
  }
  return last;
};

const ownerOf = (pieces: readonly Piece[], is: (source: Piece['source']) => boolean): number =>
  pieces.find(({ source }) => is(source))?.usedBy ?? -1;

/** The plan file of a way to work: its tasks, its deal and its score, by the names of the yard. */
export const asPlan = (tiny: Tiny, best: Best): PlanFile => {
  const { yard, orders } = tiny;
  const tasks = tasksOf(emptied(tiny, best.state!));
  const of = <K extends Task['kind']>(kind: K) => tasks.filter((task) => task.kind === kind);
  const nameOf = (order: number) => (order < 0 ? {} : { order: orders[order]!.id });
  const strips = of('strip') as Strip[];
  const timesOf = ({ start, end, readyAt }: Strip) => ({
    stripStart: instantOf(start),
    stripEnd: instantOf(end),
    pieceReadyAt: instantOf(readyAt),
  });
  let pours = 0;
  const batches = (of('batch') as Batch[]).map((batch, b) => {
    const kg = batch.fills.reduce((n, { casting }) => n + yard.castings[casting]!.kg, 0);
    const poured = batch.fills.map((fill) => {
      const pour = pours++;
      const owner = ownerOf(best.pieces, (source) => 'pour' in source && source.pour === pour);
      return {
        id: `p${pour}`,
        batch: `b${b}`,
        mould: yard.moulds[fill.mould]!.id,
        casting: yard.castings[fill.casting]!.id,
        ...nameOf(owner),
        prepStart: instantOf(fill.prepStart),
        prepEnd: instantOf(fill.prepEnd),
        fillStart: instantOf(fill.fillStart),
        fillEnd: instantOf(fill.fillEnd),
        ...timesOf(strips.find((strip) => strip.pour === pour)!),
      };
    });
    const { yieldKgPerBag } = yard.mixes[0]!;
    return {
      id: `b${b}`,
      mix: yard.mixes[0]!.id,
      start: instantOf(batch.start),
      mixEnd: instantOf(batch.mixEnd),
      end: instantOf(batch.end),
      bags: Math.ceil(kg / yieldKgPerBag - 1e-9),
      kg,
      pours: poured.map(({ id }) => id),
      poured,
    };
  });
  const packs = of('pack') as Pack[];
  const planned = orders.map((order, o) => {
    const at = best.completesAt[o]!;
    const lots = best.pieces.flatMap(({ usedBy, source }) => (usedBy === o && 'lot' in source ? [source.lot] : []));
    const pack = packs.find((one) => one.order === o);
    return {
      id: order.id,
      ...(pack ? { packStart: instantOf(pack.start), packEnd: instantOf(pack.end) } : {}),
      completesAt: instantOf(at),
      completesOn: dateOf(handoverOn(tiny, at)),
      daysLate: daysLate(tiny, order, at),
      fromFinished: [...new Set(lots)].map((finished) => ({
        finished,
        count: lots.filter((lot) => lot === finished).length,
      })),
    };
  });
  return {
    format: 'mould-rota/plan',
    version: 2,
    batches: batches.map(({ poured: _poured, ...batch }) => batch),
    pours: batches.flatMap(({ poured }) => poured),
    coats: tasks.flatMap((task) =>
      task.kind === 'coat'
        ? [{ mould: yard.moulds[task.mould]!.id, start: instantOf(task.start), end: instantOf(task.end) }]
        : [],
    ),
    strips: strips.flatMap((strip) => {
      if (strip.pour >= 0) return [];
      const owner = ownerOf(best.pieces, (source) => 'mould' in source && source.mould === strip.mould);
      return [{ mould: yard.moulds[strip.mould]!.id, ...nameOf(owner), ...timesOf(strip) }];
    }),
    unstripped: [],
    orders: planned,
    unplanned: [],
    sticks: [],
    buys: [],
    dropped: [],
    score: {
      unplannedWeight: 0,
      weightedDaysLate: planned.reduce((n, order, o) => n + orders[o]!.weight * order.daysLate, 0),
      weightedDaysAfterWanted: 0,
      batches: batches.length,
      bags: batches.reduce((n, { bags }) => n + bags, 0),
      weightedCompletionDays: orders.reduce(
        (n, { weight }, o) => n + weight * (handoverOn(tiny, best.completesAt[o]!) - tiny.today),
        0,
      ),
    },
  };
};
