import { areaOf } from '../cut/mesh/block.ts';
import type { SheetCuts } from '../decoder/open-sheets.ts';
import { NEVER, NONE, PACK, type Problem } from '../decoder/problem.ts';
import { asIfKept, Stock } from '../decoder/stock.ts';
import { bagsFor } from '../pack/bags.ts';
import { batchAlone, earliestAlone, leastCleaning, outOf, soonestReady } from './slots.ts';

interface ToPour {
  casting: number;
  count: number;
}

/** Pieces of an order that are not there yet, set aside for others or not. */
const toPour = (problem: Problem, order: number): ToPour[] => {
  const isOwn = (set: number) => set === NONE || set === order;
  return problem.orders[order]!.pieces.map(({ casting, count }) => {
    const lots = problem.finished.filter((lot) => lot.casting === casting && isOwn(lot.order));
    const inMould = problem.inMould.filter((piece) => piece.casting === casting && isOwn(piece.order));
    const fixed = problem.fixed.batches.flatMap(({ pours }) => pours).filter((pour) => pour.casting === casting);
    const there = lots.reduce((sum, lot) => sum + lot.count, 0) + inMould.length + fixed.length;
    return { casting, count: Math.max(0, count - there) };
  }).filter(({ count }) => count > 0);
};

/** When a piece of the casting is ready whose batch cannot begin before a minute. */
const readyFrom = (problem: Problem, casting: number, from: number): number => {
  const batch = from >= NEVER ? NEVER : batchAlone(problem, casting, from);
  if (batch >= NEVER) return NEVER;
  const { mix, fillMinutes } = problem.castings[casting]!;
  return outOf(problem, casting, batch + problem.mixes[mix]!.mixMinutes + fillMinutes).readyAt;
};

interface Needs {
  quantities: { material: number; quantity: number }[];
  cuts: { material: number; lengthMm: number; count: number }[];
  sheets: SheetCuts[];
}

/**
 * Sticks that cuts take at the least, as if each left nothing over: every cut but a stick's last loses a kerf. All offcuts
 * are cut first.
 */
const leastSticks = (problem: Problem, cuts: Needs['cuts']): Needs['quantities'] => {
  const lengths = new Map<number, number>();
  for (const { material, lengthMm, count } of cuts) {
    const { kerfMm } = problem.materials[material]!;
    lengths.set(material, (lengths.get(material) ?? 0) + count * (lengthMm + kerfMm));
  }
  return [...lengths].map(([material, length]) => {
    const { stickMm, kerfMm, offcuts } = problem.materials[material]!;
    const left = length - offcuts.reduce((sum, offcut) => sum + offcut + kerfMm, 0);
    return { material, quantity: Math.max(0, Math.ceil(left / (stickMm + kerfMm) - 1e-9)) };
  });
};

/** Sheets that pieces take at the least, as if each left nothing over; all rests are cut first. In openings. */
const leastSheets = (problem: Problem, pieces: readonly SheetCuts[]): Needs['quantities'] =>
  [...new Set(pieces.map(({ material }) => material))].flatMap((material) => {
    const { sheets } = problem.materials[material]!;
    if (!sheets) return [];
    const own = pieces.filter((one) => one.material === material);
    const all = own.reduce((sum, { piece, count }) => sum + count * areaOf(piece.ways[0]!), 0);
    const left = sheets.rests.reduce((sum, rest) => sum - areaOf(rest), all);
    return [{ material, quantity: Math.max(0, Math.ceil(left / areaOf(sheets.sheet) - 1e-9)) }];
  });

/** When all of it is there, at or after a minute, if nothing else takes any; NEVER when it will not be. */
const thereFrom = (problem: Problem, needs: Needs, from: number): number => {
  const stock = new Stock(asIfKept(problem.materials), new Int32Array(problem.materials.length));
  stock.ask();
  stock.add([...needs.quantities, ...leastSticks(problem, needs.cuts), ...leastSheets(problem, needs.sheets)]);
  return stock.earliest(from);
};

/** Bags for so many pieces at the least: whole steps, and one a batch, of which each fills a mould once. */
const leastBags = (problem: Problem, casting: number, count: number): number => {
  const { mix, kg, moulds } = problem.castings[casting]!;
  const { yieldKgPerBag, bagStep } = problem.mixes[mix]!;
  const batches = Math.ceil(count / Math.max(1, moulds.length));
  return Math.max(batches * bagStep, bagsFor(count * kg, yieldKgPerBag, bagStep));
};

const cutsFor = (problem: Problem, { casting, count }: ToPour): Needs['cuts'] =>
  problem.castings[casting]!.cuts.map((cut) => ({ ...cut, count: cut.count * count }));

const sheetsFor = (problem: Problem, { casting, count }: ToPour): SheetCuts[] =>
  problem.castings[casting]!.sheets.map((cut) => ({ ...cut, count: cut.count * count }));

/** What so many pieces of a casting take at the least. */
const needsOf = (problem: Problem, casting: number, count: number): Needs => {
  const { mix, perPiece } = problem.castings[casting]!;
  const bags = leastBags(problem, casting, count);
  return {
    quantities: [
      ...problem.mixes[mix]!.perBag.map(({ material, quantity }) => ({ material, quantity: quantity * bags })),
      ...perPiece.map(({ material, quantity }) => ({ material, quantity: quantity * count })),
    ],
    cuts: cutsFor(problem, { casting, count }),
    sheets: sheetsFor(problem, { casting, count }),
  };
};

const materialsFor = (problem: Problem, casting: number, count: number): number =>
  thereFrom(problem, needsOf(problem, casting, count), problem.now);

/** The last piece of one casting: no sooner than its moulds allow, and than what all of them need is there. */
const castingReady = (problem: Problem, order: number, casting: number, count: number, poured: number): number => {
  if (poured === 0) return soonestReady(problem, casting, count, order)[count - 1] ?? NEVER;
  const moulds = soonestReady(problem, casting, count, order, materialsFor(problem, casting, 1))[count - 1] ?? NEVER;
  return Math.max(moulds, readyFrom(problem, casting, materialsFor(problem, casting, poured)));
};

/** Person-minutes that must have been worked before the last fill ends: mixing and filling all, setting up and stripping what cannot be avoided. */
const labourBefore = (problem: Problem, pours: readonly ToPour[]): number => {
  let minutes = 0;
  const kgOf = new Map<number, number>();
  for (const { casting, count } of pours) {
    const { mix, kg, fillMinutes, prepMinutes, stripMinutes, stripCrew, moulds } = problem.castings[casting]!;
    const cleanMinutes = moulds.reduce((n, k) => Math.min(n, leastCleaning(problem, k)), NEVER);
    kgOf.set(mix, (kgOf.get(mix) ?? 0) + count * kg);
    const prepped = moulds.filter((k) => problem.moulds[k]!.prepped && problem.moulds[k]!.setFor === casting).length;
    const again = Math.max(0, count - moulds.length);
    minutes += count * fillMinutes * problem.mixes[mix]!.crew + Math.max(0, count - prepped) * prepMinutes;
    minutes += again * (cleanMinutes + stripMinutes * stripCrew);
  }
  for (const [mix, kg] of kgOf) {
    const { mixMinutes, crew, mostKg } = problem.mixes[mix]!;
    minutes += Math.ceil(kg / mostKg - 1e-9) * mixMinutes * crew;
  }
  return minutes;
};

/** First minute by which so many minutes can have been packed from one on, in however many spells; NEVER where there are fewer. */
const packedBy = ({ shifts }: Problem, minutes: number, from: number): number => {
  let left = minutes;
  for (let s = 0; s < shifts.count; s++)
    for (let t = Math.max(from, shifts.from[s]!); t < shifts.to[s]!; t++) {
      const i = shifts.offset[s]! + t - shifts.from[s]!;
      if (shifts.people[i]! > 0 && (shifts.allow[i]! & PACK) !== 0) left -= 1;
      if (left <= 0) return t + 1;
    }
  return NEVER;
};

/** First minute by which so many person-minutes can have been worked; NEVER where the horizon has not as many. */
const workedBy = ({ shifts }: Problem, wanted: number): number => {
  let left = wanted;
  if (left <= 0) return shifts.from[0] ?? NEVER;
  for (let s = 0; s < shifts.count; s++)
    for (let i = shifts.offset[s]!; i < shifts.offset[s + 1]!; i++) {
      if (shifts.allow[i] !== 0) left -= shifts.people[i]!;
      if (left <= 0) return shifts.from[s]! + i - shifts.offset[s]! + 1;
    }
  return NEVER;
};

/** Some piece is filled last of all, when all that labour is done. */
const labourReady = (problem: Problem, pours: readonly ToPour[]): number => {
  if (pours.length === 0) return problem.now;
  const filled = workedBy(problem, labourBefore(problem, pours));
  if (filled >= NEVER) return NEVER;
  return Math.min(...pours.map(({ casting }) => outOf(problem, casting, filled).readyAt));
};

/**
 * A minute before which no plan completes an order, whatever else is made or left: its pieces by moulds, weather,
 * sealing coats that are due, materials and hours worked, each as if nothing else were in the way, then its parts and
 * its packing. NEVER where it cannot be complete within the horizon. A lower bound: no plan of the decoder is sooner.
 *
 * Example: one panel to pour, ready by the morning of the 13th, and ten minutes of packing in the session of the 14th:
 * `compile(yard).calendar.instantText(soonestComplete(compile(yard), 2))` is "2027-04-14T18:20:00+01:00".
 */
export const soonestComplete = (problem: Problem, order: number): number => {
  const { pieces, parts, cuts, packMinutes } = problem.orders[order]!;
  const pours = toPour(problem, order);
  const ready = pieces.map(({ casting, count }) => {
    const poured = pours.find((one) => one.casting === casting)?.count ?? 0;
    return castingReady(problem, order, casting, count, poured);
  });
  const made = Math.max(problem.now, labourReady(problem, pours), ...ready);
  if (made >= NEVER) return NEVER;
  const all = {
    quantities: parts,
    cuts: [...cuts, ...pours.flatMap((pour) => cutsFor(problem, pour))],
    sheets: pours.flatMap((pour) => sheetsFor(problem, pour)),
  };
  const there = thereFrom(problem, all, made);
  if (packMinutes === 0 || there >= NEVER) return there;
  if (problem.orders[order]!.mostSpells > 0) return packedBy(problem, packMinutes, there);
  const packed = earliestAlone(problem, PACK, packMinutes, 1, there);
  return packed >= NEVER ? NEVER : packed + packMinutes;
};
