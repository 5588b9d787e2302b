import type { PlanBatch, PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { BATCH, NEVER, NONE, PREP, type Problem, STRIP } from './problem.ts';
import { Rack } from './rack.ts';
import { Stock } from './stock.ts';

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

export interface Kept {
  batches: KeptBatch[];
  dropped: PlanFile['dropped'];
}

/** What is known of a mould while firm batches are looked at one after another. */
interface MouldThen {
  freeAt: number;
  held: number;
  outAt: number;
  curedAt: number;
  setFor: number;
  dirty: boolean;
  prepped: boolean;
  turnsSinceOil: number;
}

interface Then {
  problem: Problem;
  people: Uint16Array;
  mixing: Uint16Array;
  moulds: MouldThen[];
  rack: Rack;
  stock: Stock;
}

const shiftAt = (problem: Problem, start: number, end: number): number => {
  const { shifts } = problem;
  for (let s = 0; s < shifts.count; s++) if (start >= shifts.from[s]! && end <= shifts.to[s]!) return s;
  return NONE;
};

const fits = (then: Then, kind: number, start: number, minutes: number, people: number): boolean => {
  const { shifts } = then.problem;
  const shift = shiftAt(then.problem, start, start + minutes);
  if (shift === NONE) return false;
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++)
    if (then.people[i]! < people || (shifts.allow[i]! & kind) === 0) return false;
  return true;
};

const take = (then: Then, start: number, minutes: number, people: number): void => {
  const { shifts } = then.problem;
  const shift = shiftAt(then.problem, start, start + minutes);
  const first = shifts.offset[shift]! + start - shifts.from[shift]!;
  for (let i = first; i < first + minutes; i++) then.people[i] = then.people[i]! - people;
};

/** Earliest strip of what a mould holds that ends by a minute; NONE when there is none. */
const stripBefore = (then: Then, mould: MouldThen, by: number): number => {
  const { stripMinutes, stripCrew } = then.problem.castings[mould.held]!;
  for (let start = Math.max(mould.outAt, then.problem.now); start + stripMinutes <= by; start++)
    if (fits(then, STRIP, start, stripMinutes, stripCrew)) return start;
  return NONE;
};

const mouldsAtStart = (problem: Problem): MouldThen[] => {
  const moulds = problem.moulds.map((m) => ({
    freeAt: m.usableFrom,
    held: NONE,
    outAt: NEVER,
    curedAt: NEVER,
    setFor: m.setFor,
    dirty: m.dirty,
    prepped: m.prepped,
    turnsSinceOil: m.turnsSinceOil,
  }));
  for (const piece of problem.inMould) {
    const { ageing, demouldMinutes, cureMinutes } = problem.mixes[problem.castings[piece.casting]!.mix]!;
    Object.assign(moulds[piece.mould]!, {
      held: piece.casting,
      outAt: ageing.whenAged(piece.filledAt, demouldMinutes),
      curedAt: ageing.whenAged(piece.filledAt, cureMinutes),
      prepped: false,
    });
  }
  return moulds;
};

type Pour = { text: PlanPour; kept: KeptPour };

/** What speaks against a firm pour in its mould, or null; the strip it needs first is written into `kept.stripFirst`. */
const pourFault = (then: Then, { text, kept }: Pour, batchStart: number): string | null => {
  const { problem } = then;
  const mould = then.moulds[kept.mould]!;
  const of = problem.moulds[kept.mould]!;
  const name = problem.yard.moulds[kept.mould]!.id;
  const change = of.change[kept.casting]!;
  if (mould.freeAt >= NEVER) return `mould ${name} is out of use`;
  if (change === NONE) return `mould ${name} no longer makes it`;
  if (kept.prepStart < problem.now) return 'its set-up would have begun already';
  if (mould.held !== NONE) kept.stripFirst = stripBefore(then, mould, kept.prepStart);
  if (mould.held !== NONE && kept.stripFirst === NONE) return `mould ${name} is not empty by then`;
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

const bagsOf = (problem: Problem, mix: number, kg: number): number => {
  const { yieldKgPerBag, bagStep } = problem.mixes[mix]!;
  return Math.max(0, Math.ceil(kg / yieldKgPerBag / bagStep - 1e-9)) * bagStep;
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

const weatherFault = (problem: Problem, mixIndex: number, start: number, lastFill: number): string | null => {
  const { minCelsius, maxCelsius, protectMinutes } = problem.mixes[mixIndex]!;
  const { climate, calendar } = problem;
  const day = calendar.dayOf(start);
  const celsius = climate.celsiusOn(day);
  if (celsius === null) return null;
  if (celsius > maxCelsius) return 'it will be too hot';
  const cold = climate.nextDayColderThan(minCelsius, day) <= calendar.dayOf(Math.floor(lastFill + protectMinutes));
  return cold ? 'it will be too cold' : null;
};

const settleMould = (then: Then, batch: KeptBatch, pour: KeptPour): void => {
  const { problem } = then;
  const casting = problem.castings[pour.casting]!;
  const { ageing, demouldMinutes, cureMinutes } = problem.mixes[batch.mix]!;
  const filled = pour.fillStart + casting.fillMinutes;
  const mould = then.moulds[pour.mould]!;
  Object.assign(mould, {
    held: pour.casting,
    outAt: ageing.whenAged(filled, demouldMinutes),
    curedAt: ageing.whenAged(filled, cureMinutes),
    setFor: pour.casting,
    dirty: true,
    prepped: false,
    turnsSinceOil: (pour.coated ? 0 : mould.turnsSinceOil) + 1,
  });
};

/** Puts the piece stripped for a pour on the rack where it still has to cure; false when the rack is full. */
const rackTakes = (then: Then, kept: KeptPour): boolean => {
  const mould = then.moulds[kept.mould]!;
  const { stripMinutes, rackSpaces } = then.problem.castings[mould.held]!;
  const end = kept.stripFirst + stripMinutes;
  if (end >= mould.curedAt) return true;
  if (then.rack.roomFrom(end, mould.curedAt, rackSpaces) > end) return false;
  then.rack.put(mould.curedAt, rackSpaces);
  Object.assign(kept, { rackUntil: mould.curedAt, rackSpaces });
  return true;
};

/** Name of a material that the batch needs and that is not there when it is mixed; null when all is. */
const shortOf = (then: Then, batch: KeptBatch): string | null => {
  const { problem, stock } = then;
  stock.ask();
  stock.add(problem.mixes[batch.mix]!.perBag, batch.bags);
  for (const { casting } of batch.pours) {
    stock.add(problem.castings[casting]!.perPiece);
    stock.addCuts(problem.castings[casting]!.cuts);
  }
  const short = stock.shortBy(batch.start);
  return short ? problem.yard.materials[short.material]!.name : null;
};

/** Looks at one firm batch; takes its hours and moulds when nothing speaks against it. */
const keepOrDrop = (then: Then, batch: KeptBatch, text: PlanBatch, pours: Pour[]): string | null => {
  const { problem, people } = then;
  const [before, rackBefore] = [people.slice(), then.rack.save()];
  const undo = (reason: string) => {
    people.set(before);
    then.rack.restore(rackBefore);
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
    if (pour.kept.stripFirst === NONE) continue;
    const held = problem.castings[then.moulds[pour.kept.mould]!.held]!;
    if (!fits(then, STRIP, pour.kept.stripFirst, held.stripMinutes, held.stripCrew))
      return undo('nobody is free to strip its mould');
    take(then, pour.kept.stripFirst, held.stripMinutes, held.stripCrew);
    if (!rackTakes(then, pour.kept)) return undo('the rack is full then');
  }
  const short = shortOf(then, batch);
  if (short) return undo(`there is not enough ${short} by then`);
  then.stock.use(batch.start);
  const shift = shiftAt(problem, batch.start, batch.start + batch.minutes);
  const first = problem.shifts.offset[shift]! + batch.start - problem.shifts.from[shift]!;
  for (let i = first; i < first + mix.mixMinutes; i++) then.mixing[i] = then.mixing[i]! + 1;
  for (const pour of batch.pours) settleMould(then, batch, pour);
  return null;
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
  const firm = keep.pours.length + problem.finished.length;
  const then: Then = {
    problem,
    people: people.slice(),
    mixing: new Uint16Array(people.length),
    moulds: mouldsAtStart(problem),
    rack: new Rack(problem.rackSpaces, firm),
    stock: new Stock(problem.materials, new Int32Array(problem.materials.length)),
  };
  for (const lot of problem.finished)
    if (lot.readyAt > problem.now) then.rack.put(lot.readyAt, problem.castings[lot.casting]!.rackSpaces * lot.count);
  for (const text of [...keep.batches].sort((a, b) => minuteOf(a.start) - minuteOf(b.start))) {
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
      bags: bagsOf(problem, mix, kg),
      pours: pours.map((p) => p.kept),
    };
    const reason = keepOrDrop(then, batch, text, pours);
    if (reason) kept.dropped.push({ batch: text.id, reason });
    else kept.batches.push(batch);
  }
  return kept;
};
