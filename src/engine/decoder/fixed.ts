import { type Keep, type PlanBatch, type PlanPour, poursByBatch } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import { isCoatDue, setUpMinutes } from '../book/mould-state.ts';
import { bagsFor } from '../pack/bags.ts';
import { askForBatch } from './ask-batch.ts';
import { begunIn } from './begun.ts';
import { type FixedBatch, type FixedPour, type FixedWork, readiedFrom } from './fixed-batch.ts';
import { coatFault, coatOfPour } from './fixed-coat.ts';
import {
  backTo,
  type FixedGround,
  fits,
  lookAheadTo,
  markOf,
  mouldsAtStart,
  settleMould,
  shiftAt,
  take,
} from './fixed-ground.ts';
import { FixedStock } from './fixed-stock.ts';
import { stripFault } from './fixed-strip.ts';
import { keepTasks, lookAheadToTasks, tasksOf } from './fixed-tasks.ts';
import { BATCH, NEVER, NONE, PREP, type Problem } from './problem.ts';
import { stripsFirst } from './strips-first.ts';
import { weatherFault } from './weather.ts';

/** When the pieces of fixed pours are stripped, by pour, where that is fixed too. */
type StripsOfPours = ReadonlyMap<string, string>;
type Pour = { text: PlanPour; fixed: FixedPour };

/** What speaks against a fixed pour in its mould, the strip it needs first apart; or null. */
const pourFault = (ground: FixedGround, { text, fixed }: Pour, batchStart: number): string | null => {
  const { problem } = ground;
  const first = readiedFrom(fixed);
  const coated = fixed.coat !== null;
  const mould = ground.moulds[fixed.mould]!;
  const of = problem.moulds[fixed.mould]!;
  const name = problem.yard.moulds[fixed.mould]!.id;
  const change = of.change[fixed.casting]!;
  if (mould.freeAt >= NEVER) return `mould ${name} is out of use`;
  if (change === NONE) return `mould ${name} no longer makes it`;
  if (first < problem.now) return 'its set-up would have begun already';
  if (mould.held !== NONE && mould.outAt + problem.castings[mould.held]!.stripMinutes > first)
    return `mould ${name} is not empty by then`;
  if (mould.freeAt > first) return `mould ${name} is not free by then`;
  const asIs = mould.prepped && mould.held === NONE && mould.setFor === fixed.casting && !coated;
  if (!asIs && isCoatDue(mould.turnsSinceOil, of.oilEveryTurns) && !coated)
    return `mould ${name} is due for a sealing coat`;
  const dirty = !coated && (mould.dirty || mould.held !== NONE);
  const setFor = mould.held === NONE ? mould.setFor : mould.held;
  const changing = setFor === fixed.casting ? 0 : change;
  const lasts = setUpMinutes(problem.castings[fixed.casting]!, changing, dirty);
  if (fixed.prepMinutes !== (asIs ? 0 : lasts)) return `setting up mould ${name} takes another time now`;
  if (minuteOf(text.prepEnd) > batchStart) return `mould ${name} is not ready by then`;
  const fault = fixed.coat && coatFault(ground, fixed.coat, fixed.prepStart);
  if (fault) return fault;
  return fits(ground, PREP, fixed.prepStart, fixed.prepMinutes, 1)
    ? null
    : `nobody is free to set up mould ${name} then`;
};

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

/** Looks at one fixed batch; takes its hours and moulds when nothing speaks against it. */
const keepOrDrop = (ground: FixedGround, batch: FixedBatch, text: PlanBatch, pours: Pour[]): string | null => {
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
    const reason = pourFault(ground, pour, batch.start);
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

/**
 * What is fixed (R13) as far as the rules still allow it, batches first, each looked at in order of time with the ones
 * before it in place; the rest with the reason why it is dropped. Batches under way (R14) stay whatever the rules say.
 * Worked out once for a problem: the search never moves any of it.
 */
export const fixedWorkOf = (problem: Problem): FixedWork => {
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
  for (const { text, batch, pours } of all) {
    lookAheadTo(ground, batch, -1);
    const reason = keepOrDrop(ground, batch, text, pours);
    if (reason) dropped.push({ batch: text.id, at: text.start, reason });
    else batches.push(batch);
  }
  lookAheadToTasks(ground, tasks, -1);
  const kept = keepTasks(ground, keep, tasks, batches);
  return { batches, ...kept, rack: ground.lying.slice(lyingNow), dropped: [...dropped, ...kept.dropped] };
};
