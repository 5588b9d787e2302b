import type { DroppedTask, KeptPack } from '../../../shared/plan.ts';
import type { FixedWork } from './fixed-batch.ts';
import { type FixedGround, fits, take } from './fixed-ground.ts';
import { goesInOneGo, sessionAt } from './in-one-go.ts';
import { NONE, PACK } from './problem.ts';
import { LEAST_SPELL } from './spells.ts';

/** A packing that is fixed, or a spell of one, with indices and minutes. */
export interface PackToKeep {
  text: KeptPack;
  order: number;
  start: number;
  minutes: number;
}

/** How far an order that is packed in spells has come with those looked at. */
interface SpellsSoFar {
  minutes: number;
  end: number;
  /** Of spells one after another none stays after one that does not: the others would be the first. */
  isCutShort: boolean;
}

type AllSpells = Map<number, SpellsSoFar>;

/** What is under way comes first. */
const spellsBegun = ({ problem }: FixedGround): AllSpells =>
  new Map(
    problem.begun.packs.map(({ order, start, end }) => [order, { minutes: end - start, end, isCutShort: false }]),
  );

const soFar = (spells: AllSpells, order: number): SpellsSoFar =>
  spells.get(order) ?? { minutes: 0, end: NONE, isCutShort: false };

/** What speaks against the length or the place of a spell among those of its order; or null. */
const spellFault = (
  { problem }: FixedGround,
  { order, start, minutes }: PackToKeep,
  spells: AllSpells,
): string | null => {
  const before = soFar(spells, order);
  const left = problem.orders[order]!.packMinutes - before.minutes;
  if (before.isCutShort || start < before.end) return 'what comes before it is not packed by then';
  const isShort = minutes < LEAST_SPELL && minutes !== left;
  if (minutes <= 0 || minutes > left || isShort) return 'it takes another time now';
  const isBegun = spells.has(order) || problem.yard.orders[order]!.packedMinutes !== undefined;
  const { packing } = problem;
  const fits = !isBegun && minutes < left && goesInOneGo(packing, sessionAt(packing, start), left);
  return fits ? 'a session is long enough for all of it now' : null;
};

/** What a packing takes that the first spell of its order has not taken yet. */
const askFor = ({ problem, stock }: FixedGround, order: number, isFirst: boolean): void => {
  const { parts, cuts } = problem.orders[order]!;
  stock.ask();
  if (!isFirst) return;
  stock.add(parts);
  stock.addCuts(cuts);
};

/** What speaks against packing an order then; or null. */
const packFault = (ground: FixedGround, pack: PackToKeep, spells: AllSpells): string | null => {
  const { problem, stock } = ground;
  const { order, start, minutes } = pack;
  if (order === NONE) return 'the order is no longer there';
  const { packMinutes, mostSpells } = problem.orders[order]!;
  if (mostSpells === 0 && (packMinutes === 0 || minutes !== packMinutes)) return 'it takes another time now';
  if (start < problem.now) return 'its time has passed';
  const fault = mostSpells === 0 ? null : spellFault(ground, pack, spells);
  if (fault !== null) return fault;
  if (!fits(ground, PACK, start, minutes, 1)) return 'nobody is free then';
  askFor(ground, order, mostSpells === 0 || !spells.has(order));
  const short = stock.shortBy(start);
  return short === NONE ? null : `there is not enough ${problem.yard.materials[short]!.name} by then`;
};

/** Packings as they were, as far as they still can be, in order of time; of one in spells the first ones. */
export const keepPacks = (ground: FixedGround, packs: readonly PackToKeep[]) => {
  const kept: FixedWork['packs'] = [];
  const dropped: DroppedTask[] = [];
  const spells = spellsBegun(ground);
  for (const pack of packs) {
    const { text, order, start, minutes } = pack;
    const fault = packFault(ground, pack, spells);
    const before = soFar(spells, order);
    if (fault !== null) {
      dropped.push({ pack: text.order, at: text.packStart, reason: fault });
      spells.set(order, { ...before, isCutShort: true });
      continue;
    }
    ground.stock.use(start);
    take(ground, start, minutes, 1);
    spells.set(order, { minutes: before.minutes + minutes, end: start + minutes, isCutShort: false });
    kept.push({ order, start, minutes });
  }
  return { packs: kept, dropped };
};
