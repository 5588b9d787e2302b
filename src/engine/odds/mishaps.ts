import type { Problem } from '../decoder/problem.ts';
import { type Random, randomFrom } from '../search/random.ts';
import type { Beliefs } from './beliefs.ts';
import { type Belief, shareDrawn } from './beta.ts';

/** What can hold a date up: pieces out of a mould, days of work lost, deliveries of a supplier; by index of the yard file. */
export interface Cause {
  kind: 'pieces' | 'sessions' | 'deliveries';
  /** The mould's id, or the supplier's name; empty for sessions and for goods of nobody in particular. */
  what: string;
}

/** What goes wrong in one course of things, asked as it comes up. */
export interface Mishaps {
  isLost(day: number): boolean;
  isSpoiled(mould: number, casting: number): boolean;
  /** Days by which what a material's supplier was to bring comes late; asked once for each delivery. */
  daysLate(material: number): number;
  /** How often each cause came up so far. */
  counts: Map<string, { cause: Cause; count: number }>;
}

/** Streams of one draw apart, so that a day lost more changes nothing of which pieces are good. */
const STREAMS = 3;

/**
 * One course of things by what is believed: shares are drawn first, since nobody knows them exactly, and then what comes of them.
 * The same seed gives the same course, as long as it is asked the same. `most` pieces are not good at most.
 */
export const mishapsDrawn = (
  { yard }: Problem,
  beliefs: Beliefs,
  { seed, draw, most }: { seed: number; draw: number; most: number },
): Mishaps => {
  const stream = (n: number): Random => randomFrom((seed * 1_000_003 + draw) * STREAMS + n);
  const [days, pieces, deliveries] = [stream(0), stream(1), stream(2)];
  const counts: Mishaps['counts'] = new Map();
  const note = (kind: Cause['kind'], what: string, count: number): void => {
    const key = `${kind} ${what}`;
    const known = counts.get(key);
    if (known) known.count += count;
    else counts.set(key, { cause: { kind, what }, count });
  };
  const shares = new Map<string, number>();
  const shareFor = (key: string, random: Random, belief: () => Belief): number => {
    const known = shares.get(key);
    if (known !== undefined) return known;
    const share = shareDrawn(random, belief());
    shares.set(key, share);
    return share;
  };
  const lost = shareFor('sessions', days, () => beliefs.sessions);
  let spoiled = 0;
  return {
    counts,
    isLost: () => {
      const isLost = days() < lost;
      if (isLost) note('sessions', '', 1);
      return isLost;
    },
    isSpoiled: (mould, casting) => {
      const [from, of] = [yard.moulds[mould]!.id, yard.castings[casting]!.id];
      const share = shareFor(`${mould} ${casting}`, pieces, () => beliefs.piecesFrom(from, of));
      if (pieces() >= share || spoiled >= most) return false;
      spoiled++;
      note('pieces', from, 1);
      return true;
    },
    daysLate: (material) => {
      const supplier = yard.materials[material]!.supplier ?? null;
      const share = shareFor(`from ${supplier}`, deliveries, () => beliefs.deliveriesOf(supplier));
      if (deliveries() >= share) return 0;
      const late = beliefs.daysLate[Math.floor(deliveries() * beliefs.daysLate.length)]!;
      note('deliveries', supplier ?? '', late);
      return late;
    },
  };
};
