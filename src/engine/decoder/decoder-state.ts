import { inBlock } from './block.ts';
import { type Choices, DEFAULT_CHOICES, type Dispatch, MOST_PARTS } from './dispatch.ts';
import { type Openings, openingsOf } from './opening-list.ts';
import { type Hold, NEVER, NONE, type Problem } from './problem.ts';
import { Rack } from './rack.ts';
import { Stock } from './stock.ts';
import { Timeline } from './timeline.ts';

const ints = (length: number) => new Int32Array(length);

/** What each mould holds and is set up for, while a plan is being made. All arrays by mould. */
interface MouldStates {
  setFor: Int32Array;
  dirty: Int32Array;
  turnsSinceOil: Int32Array;
  /** Empty and usable from this minute on. */
  freeAt: Int32Array;
  /** Casting in it, NONE when empty. */
  held: Int32Array;
  heldOrder: Int32Array;
  /** Pour that filled it, NONE for a piece that was in it at the start. */
  heldPour: Int32Array;
  outAt: Int32Array;
  curedAt: Int32Array;
  /** When what it holds is stripped, where that is fixed; NONE where any time will do. */
  stripAt: Int32Array;
  /** Casting it is set up for with nothing left to do before the pour, NONE otherwise. */
  preppedFor: Int32Array;
  /** NONE where the yard file says that the mould is prepped. */
  prepStart: Int32Array;
  /** From then on a mould that is set up can be filled. */
  prepEnd: Int32Array;
  /** A sealing coat given since the last pour, NONE without one. */
  coatStart: Int32Array;
  coatEnd: Int32Array;
  /** Fixed pours still to come in it; until then it takes no other. */
  reserved: Int32Array;
}

/** Pieces still to pour, by casting: a queue of orders as pieces are dealt to them, each with how many it lacks. */
interface Demand {
  /** Start of each casting's queue in `order` and `left`; a casting more than there are. */
  start: Int32Array;
  order: Int32Array;
  left: Int32Array;
  head: Int32Array;
  end: Int32Array;
  /** The same pieces by the place in the sequence at which each is wanted, whoever gets it. */
  wantedPlace: Int32Array;
  wantedOrder: Int32Array;
  wantedLeft: Int32Array;
  wantedHead: Int32Array;
  wantedEnd: Int32Array;
  /** Pieces left in each queue, of orders that are not held back. */
  need: Int32Array;
  total: number;
  /** By casting: moulds set up for it now. */
  prepped: Int32Array;
  /** By lot of finished pieces: how many nobody has been given. */
  lotsLeft: Int32Array;
}

/** How far each order is. All arrays by order, but `waiting`: orders whose pieces are all ready, to be packed. */
interface OrderStates {
  excluded: Uint8Array;
  /** Place in the sequence. */
  place: Int32Array;
  unpoured: Int32Array;
  unstripped: Int32Array;
  readyAt: Int32Array;
  /** When it is packed, where that is fixed and can still be; NONE otherwise. */
  packAt: Int32Array;
  /** Its parts are taken out of the stock already. */
  partsTaken: Int32Array;
  packStart: Int32Array;
  /** Minutes packed in spells, and how many spells; both empty where no order is packed in spells. */
  packed: Int32Array;
  spells: Int32Array;
  /** Spells of all orders, those of one in a row from its place in `spellsFrom` on. */
  spellsFrom: readonly number[];
  spellStart: Int32Array;
  spellMinutes: Int32Array;
  completesAt: Int32Array;
  waiting: number[];
  open: number;
}

/** What has been placed, one entry a task; the plan file is written from it. */
export interface Placed {
  batches: number;
  batchMix: Int32Array;
  batchStart: Int32Array;
  batchEnd: Int32Array;
  batchKg: Float64Array;
  batchBags: Float64Array;
  /** Index of the fixed batch that it is, NONE for any other. */
  batchFixed: Int32Array;
  pours: number;
  pourBatch: Int32Array;
  pourMould: Int32Array;
  pourCasting: Int32Array;
  pourOrder: Int32Array;
  pourPrepStart: Int32Array;
  pourPrepEnd: Int32Array;
  /** The sealing coat its mould got before it, NONE where it got none. */
  pourCoatStart: Int32Array;
  pourCoatEnd: Int32Array;
  pourFillStart: Int32Array;
  pourFillEnd: Int32Array;
  pourStripStart: Int32Array;
  pourReadyAt: Int32Array;
  /** By mould: strip of the piece that was in it at the start, NONE when not stripped. */
  firstStripStart: Int32Array;
  firstReadyAt: Int32Array;
  firstOrder: Int32Array;
  /** Finished pieces given to orders: of which lot, to whom (NONE for an order that is gone), how many. */
  deals: number;
  dealLot: Int32Array;
  dealOrder: Int32Array;
  dealCount: Int32Array;
}

/** Bags of all batches placed, halves where the mix's steps allow. */
export const bagsOf = (placed: Placed): number => {
  let bags = 0;
  for (let b = 0; b < placed.batches; b++) bags += placed.batchBags[b]!;
  return bags;
};

/** Everything a decode changes; made once for a problem and used again for each dispatch. */
export interface DecoderState {
  problem: Problem;
  dispatch: Dispatch;
  /** Those of the shift being worked. */
  choices: Choices;
  timeline: Timeline;
  rack: Rack;
  stock: Stock;
  moulds: MouldStates;
  demand: Demand;
  orders: OrderStates;
  placed: Placed;
  openings: Openings;
  /** Orders that are held back in this plan, and by order the shift until which it is; 0 for one that is not. */
  holds: readonly Hold[];
  heldUntil: Int32Array;
  shift: number;
  /** Batches placed when the shift was entered. */
  batchesBefore: number;
  /** By casting: not to be tried again in this shift. */
  blocked: Uint8Array;
  /** By mix: shifts in a row in which it waited for a fuller batch. */
  waited: Int32Array;
  /** Whether the piece that just comes out of a mould is not good, where that is asked; a plan has none of that. */
  isSpoiled: ((mould: number, casting: number) => boolean) | null;
  /** No fill may end after this minute; lowered when pieces would stay in their moulds past the horizon. */
  pourUntil: number;
  /** By casting: last minute at which a strip can start. */
  lastStrip: Int32Array;
  /** Everything of the above that changes from shift to shift, in one block. */
  shiftBlock: Int32Array;
  /** What the sequence settles before the first shift, in one block. */
  queueBlock: Int32Array;
  /** What has been placed, in one block; it is only ever added to. */
  placedBlock: Int32Array;
}

const mouldStates = (count: number): MouldStates => ({
  setFor: ints(count),
  dirty: ints(count),
  turnsSinceOil: ints(count),
  freeAt: ints(count),
  held: ints(count),
  heldOrder: ints(count),
  heldPour: ints(count),
  outAt: ints(count),
  curedAt: ints(count),
  stripAt: ints(count),
  preppedFor: ints(count),
  prepStart: ints(count),
  prepEnd: ints(count),
  coatStart: ints(count),
  coatEnd: ints(count),
  reserved: ints(count),
});

const demandOf = (problem: Problem): Demand => {
  const start = ints(problem.castings.length + 1);
  for (const order of problem.orders) for (const piece of order.pieces) start[piece.casting + 1]!++;
  for (let c = 0; c < problem.castings.length; c++) start[c + 1] = start[c + 1]! + start[c]!;
  const entries = start[problem.castings.length]!;
  const perCasting = () => ints(problem.castings.length);
  return {
    start,
    order: ints(entries),
    left: ints(entries),
    head: perCasting(),
    end: perCasting(),
    wantedPlace: ints(MOST_PARTS * entries),
    wantedOrder: ints(MOST_PARTS * entries),
    wantedLeft: ints(MOST_PARTS * entries),
    wantedHead: perCasting(),
    wantedEnd: perCasting(),
    need: perCasting(),
    total: 0,
    prepped: perCasting(),
    lotsLeft: ints(problem.finished.length),
  };
};

/** Room for the spells of orders that are packed in more than one. */
const spellStates = ({
  orders,
}: Problem): Pick<OrderStates, 'packed' | 'spells' | 'spellsFrom' | 'spellStart' | 'spellMinutes'> => {
  let most = 0;
  const spellsFrom = orders.map(({ mostSpells }) => {
    most += mostSpells;
    return most - mostSpells;
  });
  const count = most > 0 ? orders.length : 0;
  return { packed: ints(count), spells: ints(count), spellsFrom, spellStart: ints(most), spellMinutes: ints(most) };
};

const orderStates = (problem: Problem, count = problem.orders.length): OrderStates => ({
  excluded: new Uint8Array(count),
  place: ints(count),
  unpoured: ints(count),
  unstripped: ints(count),
  readyAt: ints(count),
  packAt: ints(count),
  partsTaken: ints(count),
  packStart: ints(count),
  ...spellStates(problem),
  completesAt: ints(count),
  waiting: [],
  open: 0,
});

/** Each deal uses a lot up, or gives an order all it asks for of a casting, or is of a packing under way. */
const mostDeals = ({ finished, orders, begun }: Problem): number =>
  2 * (finished.length + orders.reduce((n, { pieces }) => n + pieces.length, 0)) +
  begun.packs.reduce((n, { lots }) => n + lots.length, 0);

const placedOf = (problem: Problem, most: number): Placed => ({
  batches: 0,
  batchMix: ints(most),
  batchStart: ints(most),
  batchEnd: ints(most),
  batchKg: new Float64Array(most),
  batchBags: new Float64Array(most),
  batchFixed: ints(most),
  pours: 0,
  pourBatch: ints(most),
  pourMould: ints(most),
  pourCasting: ints(most),
  pourOrder: ints(most),
  pourPrepStart: ints(most),
  pourPrepEnd: ints(most),
  pourCoatStart: ints(most),
  pourCoatEnd: ints(most),
  pourFillStart: ints(most),
  pourFillEnd: ints(most),
  pourStripStart: ints(most),
  pourReadyAt: ints(most),
  firstStripStart: ints(problem.moulds.length),
  firstReadyAt: ints(problem.moulds.length),
  firstOrder: ints(problem.moulds.length),
  deals: 0,
  dealLot: ints(mostDeals(problem)),
  dealOrder: ints(mostDeals(problem)),
  dealCount: ints(mostDeals(problem)),
});

/** By casting: the last minute at which a strip can start, by the hours alone. */
const lastStrips = (problem: Problem, timeline: Timeline): Int32Array =>
  Int32Array.from(problem.castings, (casting) => {
    for (let s = problem.shifts.count - 1; s >= 0; s--) {
      timeline.enter(s);
      const start = timeline.latest(4, casting.stripMinutes, casting.stripCrew, problem.shifts.from[s]!);
      if (start !== NONE) return start;
    }
    return NONE;
  });

/** Arrays that are filled from the sequence and that no shift changes. */
const QUEUED = new Set(['order', 'end', 'wantedPlace', 'wantedOrder', 'wantedEnd', 'place']);
/** Arrays that stay as the problem has them. */
const UNCHANGED = new Set(['start']);
/** Of what is placed, what holds for the moulds as they were at the start. */
const FIRST = new Set(['firstStripStart', 'firstReadyAt', 'firstOrder']);

const namesBut = (owner: object, ...others: ReadonlySet<string>[]): Set<string> =>
  new Set(Object.keys(owner).filter((name) => !others.some((set) => set.has(name))));

/** The blocks of a state; its arrays become views of them. */
const blocksOf = (parts: Pick<DecoderState, 'moulds' | 'demand' | 'orders' | 'placed' | 'waited'>) => {
  const queueBlock = inBlock([parts.demand, parts.orders], QUEUED);
  const placedBlock = inBlock([parts.placed], namesBut(parts.placed, FIRST));
  const changing = new Set([
    ...namesBut(parts.demand, QUEUED, UNCHANGED),
    ...namesBut(parts.orders, QUEUED),
    ...FIRST,
    'waited',
  ]);
  const shiftBlock = inBlock(
    [parts.moulds, parts.demand, parts.orders, parts.placed, parts],
    new Set([...Object.keys(parts.moulds), ...changing]),
  );
  return { queueBlock, placedBlock, shiftBlock };
};

/**
 * Room for plans of one problem. `heldBack` (by material, sticks) is nothing but for a second try after a cut plan failed;
 * `anew` is how many pieces may be poured once more (`pourAnew`).
 */
export const decoderStateOf = (
  problem: Problem,
  dispatch: Dispatch,
  heldBack?: ArrayLike<number>,
  anew = 0,
): DecoderState => {
  const fixed = problem.fixed.batches.reduce((n, b) => n + b.pours.length, 0);
  const most = anew + fixed + problem.orders.reduce((n, o) => n + o.pieceCount, 0);
  const timeline = new Timeline(problem.shifts, problem.mixers);
  const orders = problem.orders.length;
  const parts = {
    moulds: mouldStates(problem.moulds.length),
    demand: demandOf(problem),
    orders: orderStates(problem),
    placed: placedOf(problem, most),
    waited: ints(problem.mixes.length),
  };
  return {
    problem,
    dispatch,
    choices: DEFAULT_CHOICES,
    timeline,
    rack: new Rack(
      problem.rackSpaces,
      most + fixed + problem.finished.length + problem.inMould.length,
      problem.fixed.rack,
    ),
    stock: new Stock(problem.materials, heldBack ?? ints(problem.materials.length)),
    openings: openingsOf(problem),
    holds: [],
    heldUntil: ints(orders),
    shift: 0,
    batchesBefore: 0,
    blocked: new Uint8Array(problem.castings.length),
    isSpoiled: null,
    pourUntil: NEVER,
    lastStrip: lastStrips(problem, timeline),
    // The blocks first: they put their views in place of the arrays of the parts.
    ...blocksOf(parts),
    ...parts,
  };
};
