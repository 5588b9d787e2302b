import type { Keep, PlanBatch, PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { bagsFor } from '../pack/bags.ts';
import { askForBatch } from './ask-batch.ts';
import { fits, lookAheadTo, mouldsAtStart, settleMould, shiftAt, type Then, take } from './fixed-ground.ts';
import { stripFault } from './fixed-strip.ts';
import { BATCH, NEVER, NONE, PREP, type Problem } from './problem.ts';
import { Stock } from './stock.ts';
import { weatherFault } from './weather.ts';

/** A firm pour as it will be placed again. */
export interface KeptPour {
  id: string;
  mould: number;
  casting: number;
  prepStart: number;
  prepMinutes: number;
  coated: boolean;
  fillStart: number;
  /** Strip of what the mould holds before it is set up; NONE when it is empty by then. */
  stripFirst: number;
  /** When that piece is ready, and the rack spaces it takes until then; NONE when it takes none. */
  rackUntil: number;
  rackSpaces: number;
}

/** A firm batch that the rules still allow, with what has to be done for it. */
export interface KeptBatch {
  id: string;
  mix: number;
  start: number;
  minutes: number;
  kg: number;
  bags: number;
  pours: KeptPour[];
}

/** Firm batches that stay, by start, and those that do not, with the reason that goes into the plan file. */
export interface Kept {
  batches: KeptBatch[];
  dropped: PlanFile['dropped'];
}

type Pour = { text: PlanPour; kept: KeptPour };

/** What speaks against a firm pour in its mould, the strip it needs first apart; or null. */
const pourFault = (then: Then, { text, kept }: Pour, batchStart: number): string | null => {
  const { problem } = then;
  const mould = then.moulds[kept.mould]!;
  const of = problem.moulds[kept.mould]!;
  const name = problem.yard.moulds[kept.mould]!.id;
  const change = of.change[kept.casting]!;
  if (mould.freeAt >= NEVER) return `mould ${name} is out of use`;
  if (change === NONE) return `mould ${name} no longer makes it`;
  if (kept.prepStart < problem.now) return 'its set-up would have begun already';
  if (mould.held !== NONE && mould.outAt + problem.castings[mould.held]!.stripMinutes > kept.prepStart)
    return `mould ${name} is not empty by then`;
  if (mould.freeAt > kept.prepStart) return `mould ${name} is not free by then`;
  const asIs = mould.prepped && mould.held === NONE && mould.setFor === kept.casting;
  if (!asIs && mould.turnsSinceOil >= of.oilEveryTurns && !kept.coated)
    return `mould ${name} is due for a sealing coat`;
  const dirty = mould.dirty || mould.held !== NONE;
  const setFor = mould.held === NONE ? mould.setFor : mould.held;
  const { prepMinutes, cleanMinutes } = problem.castings[kept.casting]!;
  const lasts =
    prepMinutes +
    (dirty ? cleanMinutes : 0) +
    (setFor === kept.casting ? 0 : change) +
    (kept.coated ? of.oilMinutes : 0);
  if (kept.prepMinutes !== (asIs ? 0 : lasts) || (asIs && kept.coated))
    return `setting up mould ${name} takes another time now`;
  if (minuteOf(text.prepEnd) + (kept.coated ? of.oilDryMinutes : 0) > batchStart)
    return `mould ${name} is not ready by then`;
  return fits(then, PREP, kept.prepStart, kept.prepMinutes, 1) ? null : `nobody is free to set up mould ${name} then`;
};

const pourOf = (problem: Problem, text: PlanPour): Pour => {
  const mould = problem.yard.moulds.findIndex((m) => m.id === text.mould);
  const casting = problem.yard.castings.findIndex((c) => c.id === text.casting);
  const prepStart = minuteOf(text.prepStart);
  const prepMinutes = minuteOf(text.prepEnd) - prepStart;
  const fillStart = minuteOf(text.fillStart);
  return {
    text,
    kept: {
      id: text.id,
      mould,
      casting,
      prepStart,
      prepMinutes,
      coated: text.oiled,
      fillStart,
      stripFirst: NONE,
      rackUntil: NONE,
      rackSpaces: 0,
    },
  };
};

/** What speaks against a firm batch as such: its times, its mass, its hours, the weather. */
const batchFault = (then: Then, batch: KeptBatch, text: PlanBatch): string | null => {
  const { problem } = then;
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
  if (shift === NONE || !fits(then, BATCH, batch.start, batch.minutes, mix.crew))
    return 'nobody is there to mix it then';
  if (end + mix.attendMinutes > problem.shifts.sessionEnd[shift]!) return 'nobody stays long enough after it';
  const first = problem.shifts.offset[shift]! + batch.start - problem.shifts.from[shift]!;
  for (let i = first; i < first + mix.mixMinutes; i++)
    if (then.mixing[i]! >= problem.mixers) return 'no mixer is free then';
  return weatherFault(problem, batch.mix, batch.start, end);
};

/** Name of a material that the batch needs and that is not there when it is mixed; null when all is. */
const shortOf = (then: Then, batch: KeptBatch): string | null => {
  const { problem, stock } = then;
  askForBatch(problem, stock, batch);
  const short = stock.shortBy(batch.start);
  return short ? problem.yard.materials[short.material]!.name : null;
};

/** Looks at one firm batch; takes its hours and moulds when nothing speaks against it. */
const keepOrDrop = (then: Then, batch: KeptBatch, text: PlanBatch, pours: Pour[]): string | null => {
  const { problem, people } = then;
  const [before, lyingBefore] = [people.slice(), then.lying.length];
  const undo = (reason: string) => {
    people.set(before);
    then.lying.length = lyingBefore;
    return reason;
  };
  const fault = batchFault(then, batch, text);
  if (fault) return fault;
  const mix = problem.mixes[batch.mix]!;
  take(then, batch.start, batch.minutes, mix.crew);
  const moulds = new Set<number>();
  for (const pour of pours) {
    if (moulds.has(pour.kept.mould)) return undo('one mould cannot take two of its pours');
    moulds.add(pour.kept.mould);
    const reason = pourFault(then, pour, batch.start);
    if (reason) return undo(reason);
    take(then, pour.kept.prepStart, pour.kept.prepMinutes, 1);
  }
  for (const pour of batch.pours) {
    const reason = stripFault(then, pour);
    if (reason) return undo(reason);
  }
  const short = shortOf(then, batch);
  if (short) return undo(`there is not enough ${short} by then`);
  then.stock.use(batch.start);
  const shift = shiftAt(problem, batch.start, batch.start + batch.minutes);
  const first = problem.shifts.offset[shift]! + batch.start - problem.shifts.from[shift]!;
  for (let i = first; i < first + mix.mixMinutes; i++) then.mixing[i] = then.mixing[i]! + 1;
  for (const { text, kept } of pours) settleMould(then, batch, kept, minuteOf(text.stripStart));
  return null;
};

/** A firm batch as the yard file has it, with its pours in order of filling, before anything speaks for or against it. */
const firmBatch = (problem: Problem, keep: Keep, text: PlanBatch): { batch: KeptBatch; pours: Pour[] } => {
  const mix = problem.yard.mixes.findIndex((m) => m.id === text.mix);
  const pours = keep.pours
    .filter((p) => p.batch === text.id)
    .map((p) => pourOf(problem, p))
    .sort((a, b) => a.kept.fillStart - b.kept.fillStart);
  const kg = pours.reduce((n, p) => n + problem.castings[p.kept.casting]!.kg, 0);
  const { mixMinutes, washMinutes } = problem.mixes[mix]!;
  const fill = pours.reduce((n, p) => n + problem.castings[p.kept.casting]!.fillMinutes, 0);
  const batch: KeptBatch = {
    id: text.id,
    mix,
    start: minuteOf(text.start),
    minutes: mixMinutes + fill + washMinutes,
    kg,
    bags: bagsFor(kg, problem.mixes[mix]!.yieldKgPerBag, problem.mixes[mix]!.bagStep),
    pours: pours.map((p) => p.kept),
  };
  return { batch, pours };
};

/**
 * Firm batches (R13) as far as the rules still allow them, each looked at in order of time with the ones before it in
 * place; the others with the reason why they are dropped. Worked out once for a problem: the search never moves them.
 */
export const keptOf = (problem: Problem): Kept => {
  const { keep } = problem.yard;
  const kept: Kept = { batches: [], dropped: [] };
  if (!keep) return kept;
  const { people } = problem.shifts;
  const then: Then = {
    problem,
    people: people.slice(),
    ahead: new Int32Array(people.length),
    mixing: new Uint16Array(people.length),
    moulds: mouldsAtStart(problem),
    lying: problem.finished.map((lot) => ({
      from: problem.now,
      until: lot.readyAt,
      spaces: problem.castings[lot.casting]!.rackSpaces * lot.count,
    })),
    stock: new Stock(problem.materials, new Int32Array(problem.materials.length)),
  };
  const inTime = [...keep.batches].sort((a, b) => minuteOf(a.start) - minuteOf(b.start));
  const all = inTime.map((text) => ({ text, ...firmBatch(problem, keep, text) }));
  for (const { batch } of all) lookAheadTo(then, batch, 1);
  for (const { text, batch, pours } of all) {
    lookAheadTo(then, batch, -1);
    const reason = keepOrDrop(then, batch, text, pours);
    if (reason) kept.dropped.push({ batch: text.id, reason });
    else kept.batches.push(batch);
  }
  return kept;
};
