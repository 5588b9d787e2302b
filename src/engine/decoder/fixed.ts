import { type Keep, type PlanBatch, type PlanPour, poursByBatch } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import { bagsFor } from '../pack/bags.ts';
import { askForBatch } from './ask-batch.ts';
import { begunIn } from './begun.ts';
import type { FixedBatch, FixedWork } from './fixed-batch.ts';
import { coatOfPour } from './fixed-coat.ts';
import {
  backTo,
  type FixedGround,
  fits,
  lookAhead,
  lookAheadTo,
  markOf,
  mouldsAtStart,
  settleMould,
  shiftAt,
  take,
} from './fixed-ground.ts';
import { type Pour, pourFault } from './fixed-pour.ts';
import { FixedStock } from './fixed-stock.ts';
import { stripFault } from './fixed-strip.ts';
import { keepTasks, lookAheadToTasks, tasksOf } from './fixed-tasks.ts';
import { BATCH, NONE, type Problem } from './problem.ts';
import { readiedAnew } from './ready-anew.ts';
import { passStripsOn, stripsFirst } from './strips-first.ts';
import { weatherFault } from './weather.ts';

/** When the pieces of fixed pours are stripped, by pour, where that is fixed too. */
type StripsOfPours = ReadonlyMap<string, string>;
/** Fixed pours as they are read, with when their pieces are stripped where that is fixed too. */
interface Reading {
  problem: Problem;
  keep: Keep;
  /** Pours by batch. */
  pours: ReadonlyMap<string, PlanPour[]>;
  strips: StripsOfPours;
}

const pourOf = ({ problem, keep, strips }: Reading, text: PlanPour, batchStart: Minute): Pour => {
  const mould = problem.yard.moulds.findIndex((m) => m.id === text.mould);
  const casting = problem.yard.castings.findIndex((c) => c.id === text.casting);
  const isBegun = problem.begun.preps.some((prep) => prep.mould === mould && prep.start === minuteOf(text.prepStart));
  // A mould that is being set up is set up as far as what comes next is concerned.
  const prepStart = isBegun ? batchStart : minuteOf(text.prepStart);
  const prepMinutes = isBegun ? 0 : minuteOf(text.prepEnd) - prepStart;
  return {
    text,
    fixed: {
      id: text.id,
      mould,
      casting,
      prepStart,
      prepMinutes,
      coat: isBegun ? null : coatOfPour(keep, text, mould),
      fillStart: minuteOf(text.fillStart),
      stripAsPlanned: minuteOf(strips.get(text.id) ?? text.stripStart),
      stripAt: NONE,
      stripFirst: NONE,
    },
  };
};

/** What speaks against a fixed batch as such: its times, its mass, its hours, the weather. */
const batchFault = (ground: FixedGround, batch: FixedBatch, text: PlanBatch): string | null => {
  const { problem } = ground;
  const mix = problem.mixes[batch.mix]!;
  if (batch.start < problem.now) return 'its time has passed';
  if (batch.pours.length === 0) return 'it fills nothing';
  let end = batch.start + mix.mixMinutes;
  for (const pour of batch.pours) {
    const casting = problem.castings[pour.casting]!;
    if (casting.mix !== batch.mix || pour.fillStart !== end) return 'its pours do not follow one another any more';
    end += casting.fillMinutes;
  }
  if (minuteOf(text.end) !== end + mix.washMinutes) return 'it takes another time now';
  if (batch.bags > mix.maxBags + 1e-9) return 'it is more than one batch can hold';
  if (mix.ageing.ageBetween(batch.start + mix.mixMinutes, end) > mix.workingMinutes + 1e-6)
    return 'the mix would stiffen before it is all filled';
  const shift = shiftAt(problem, batch.start, batch.start + batch.minutes);
  if (shift === NONE || !fits(ground, BATCH, batch.start, batch.minutes, mix.crew))
    return 'nobody is there to mix it then';
  if (end + mix.attendMinutes > problem.shifts.sessionEnd[shift]!) return 'nobody stays long enough after it';
  const first = problem.shifts.offset[shift]! + batch.start - problem.shifts.from[shift]!;
  for (let i = first; i < first + mix.mixMinutes; i++)
    if (ground.mixing[i]! >= problem.mixers) return 'no mixer is free then';
  return weatherFault(problem, batch.mix, batch.start, end);
};

/** Name of a material that the batch needs and that is not there when it is mixed; null when all is. */
const shortOf = (ground: FixedGround, batch: FixedBatch): string | null => {
  const { problem, stock } = ground;
  askForBatch(problem, stock, batch);
  const short = stock.shortBy(batch.start);
  return short === NONE ? null : problem.yard.materials[short]!.name;
};

/** A batch that is looked at. `readyAnew` is how a mould may be made ready otherwise than it was planned; of what is fixed none is. */
interface Looking {
  text: PlanBatch;
  batch: FixedBatch;
  pours: Pour[];
  readyAnew: ((pour: Pour) => ReturnType<typeof readiedAnew>) | null;
}

/** Counts the people who set up moulds for pours in (1) or out (-1) of those that are not there for anything else. */
const lookAheadToSetUps = (ground: FixedGround, pours: readonly Pour[], sign: 1 | -1): void => {
  for (const { fixed } of pours) {
    lookAhead(ground, fixed.prepStart, fixed.prepMinutes, sign);
    if (fixed.coat) lookAhead(ground, fixed.coat.start, fixed.coat.minutes, sign);
  }
};

/** What speaks against a pour of a batch, also where its mould is made ready otherwise; or null. */
const faultOf = (ground: FixedGround, pour: Pour, { batch, pours, readyAnew }: Looking): string | null => {
  const fault = pourFault(ground, pour, batch.start);
  if (fault === null || !readyAnew) return fault;
  const rest = pours.slice(pours.indexOf(pour) + 1);
  lookAheadToSetUps(ground, rest, 1);
  const ready = readyAnew(pour);
  lookAheadToSetUps(ground, rest, -1);
  if (!ready) return fault;
  Object.assign(pour.fixed, ready);
  return pourFault(ground, pour, batch.start);
};

/** Looks at one fixed batch; takes its hours and moulds when nothing speaks against it. */
const keepOrDrop = (ground: FixedGround, looking: Looking): string | null => {
  const { text, batch, pours } = looking;
  const { problem } = ground;
  const before = markOf(ground);
  const undo = (reason: string) => {
    backTo(ground, before);
    return reason;
  };
  const fault = batchFault(ground, batch, text);
  if (fault) return fault;
  const mix = problem.mixes[batch.mix]!;
  take(ground, batch.start, batch.minutes, mix.crew);
  const moulds = new Set<number>();
  for (const pour of pours) {
    if (moulds.has(pour.fixed.mould)) return undo('one mould cannot take two of its pours');
    moulds.add(pour.fixed.mould);
    const reason = faultOf(ground, pour, looking);
    if (reason) return undo(reason);
    take(ground, pour.fixed.prepStart, pour.fixed.prepMinutes, 1);
    if (pour.fixed.coat) take(ground, pour.fixed.coat.start, pour.fixed.coat.minutes, 1);
  }
  for (const pour of batch.pours) {
    const reason = stripFault(ground, pour);
    if (reason) return undo(reason);
  }
  const short = shortOf(ground, batch);
  if (short) return undo(`there is not enough ${short} by then`);
  ground.stock.use(batch.start);
  const shift = shiftAt(problem, batch.start, batch.start + batch.minutes);
  const first = problem.shifts.offset[shift]! + batch.start - problem.shifts.from[shift]!;
  for (let i = first; i < first + mix.mixMinutes; i++) ground.mixing[i] = ground.mixing[i]! + 1;
  for (const { fixed } of pours) settleMould(ground, batch, fixed);
  return null;
};

/** A fixed batch as the yard file has it, with its pours in order of filling, before anything speaks for or against it. */
const batchAsFixed = (reading: Reading, text: PlanBatch): { batch: FixedBatch; pours: Pour[] } => {
  const { problem } = reading;
  const mix = problem.yard.mixes.findIndex((m) => m.id === text.mix);
  const pours = (reading.pours.get(text.id) ?? [])
    .map((p) => pourOf(reading, p, minuteOf(text.start)))
    .sort((a, b) => a.fixed.fillStart - b.fixed.fillStart);
  const kg = pours.reduce((n, p) => n + problem.castings[p.fixed.casting]!.kg, 0);
  const { mixMinutes, washMinutes } = problem.mixes[mix]!;
  const fill = pours.reduce((n, p) => n + problem.castings[p.fixed.casting]!.fillMinutes, 0);
  const batch: FixedBatch = {
    id: text.id,
    mix,
    start: minuteOf(text.start),
    minutes: mixMinutes + fill + washMinutes,
    kg,
    bags: bagsFor(kg, problem.mixes[mix]!.yieldKgPerBag, problem.mixes[mix]!.bagStep),
    pours: pours.map((p) => p.fixed),
    isBegun: false,
  };
  return { batch, pours };
};

/** A batch under way, as it was planned: nothing speaks against it any more. */
const begunBatch = ({ problem, strips }: Reading, text: PlanBatch): FixedBatch => {
  const { batches, pours } = begunIn(problem.yard);
  const keep = { batches, pours };
  const { batch } = batchAsFixed({ problem, keep, pours: poursByBatch(pours), strips }, text);
  const minutes = minuteOf(text.end) - batch.start;
  return { ...batch, minutes, kg: text.kg, bags: text.bags, isBegun: true };
};

const groundOf = (problem: Problem): FixedGround => {
  const { people, mixing } = problem.shifts;
  return {
    problem,
    people: people.slice(),
    taken: [],
    ahead: new Int32Array(people.length),
    mixing: mixing.slice(),
    moulds: mouldsAtStart(problem),
    lying: problem.finished.map((lot) => ({
      from: problem.now,
      until: lot.readyAt,
      spaces: problem.castings[lot.casting]!.rackSpaces * lot.count,
    })),
    stock: new FixedStock(problem.materials),
    stripsFirst: new Map(),
    stripNow: new Map(),
  };
};

const NOTHING: Keep = { batches: [], pours: [] };

/** What of a plan that stands is fixed. */
interface Stands {
  firm: Keep | undefined;
}

const batchName = ({ id, start }: PlanBatch): string => `${id} ${start}`;

/**
 * What is fixed (R13) as far as the rules still allow it, batches first, each looked at in order of time with the ones
 * before it in place; the rest with the reason why it is dropped. Batches under way (R14) stay whatever the rules say.
 * Worked out once for a problem: the search never moves any of it.
 *
 * Where it is a plan that stands, only what is `firm` is fixed: of the rest moulds are coated and set up otherwise where
 * that keeps a batch, and a coat that no pour comes after is left out.
 */
export const fixedWorkOf = (problem: Problem, stands?: Stands): FixedWork => {
  const { keep = NOTHING } = problem.yard;
  const strips: StripsOfPours = new Map(
    keep.strips?.flatMap(({ pour, stripStart }) => (pour === undefined ? [] : [[pour, stripStart] as const])),
  );
  const reading: Reading = { problem, keep, pours: poursByBatch(keep.pours), strips };
  const begun = begunIn(problem.yard).batches.map((text) => begunBatch(reading, text));
  const dropped: FixedWork['dropped'] = [];
  const ground = groundOf(problem);
  const lyingNow = ground.lying.length;
  for (const batch of begun) for (const pour of batch.pours) settleMould(ground, batch, pour);
  const tasks = tasksOf(problem, keep);
  ground.stripNow = tasks.stripNow;
  const inTime = [...keep.batches].sort((a, b) => minuteOf(a.start) - minuteOf(b.start));
  const all = inTime.map((text) => ({ text, ...batchAsFixed(reading, text) }));
  for (const { batch } of all) lookAheadTo(ground, batch, 1);
  lookAheadToTasks(ground, tasks, 1);
  ground.stripsFirst = stripsFirst(
    ground,
    all.map(({ batch }) => batch),
  );
  const batches = [...begun];
  const firm = new Set(stands?.firm?.batches.map(batchName));
  const staying = [...begunIn(problem.yard).pours];
  for (const [b, { text, batch, pours }] of all.entries()) {
    lookAheadTo(ground, batch, -1);
    const readyAnew = (pour: Pour) => readiedAnew(ground, pour, batch.start, { keep, staying });
    const isLoose = stands && !firm.has(batchName(text));
    const reason = keepOrDrop(ground, { text, batch, pours, readyAnew: isLoose ? readyAnew : null });
    if (reason === null) {
      batches.push(batch);
      staying.push(...pours.map((pour) => pour.text));
      continue;
    }
    dropped.push({ batch: text.id, at: text.start, reason });
    passStripsOn(
      ground,
      batch,
      all.slice(b + 1).map((later) => later.batch),
    );
  }
  lookAheadToTasks(ground, tasks, -1);
  const kept = keepTasks(ground, keep, tasks, batches, stands);
  return { batches, ...kept, rack: ground.lying.slice(lyingNow), dropped: [...dropped, ...kept.dropped] };
};
