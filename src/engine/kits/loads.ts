import { fewestSticks } from '../cut/fewest-sticks.ts';

/** So many pieces of a casting, each of so many kg. */
export interface Weighed {
  casting: string;
  count: number;
  kg: number;
}

/** Loads that are alike: what each carries, what it weighs, and how many of them there are. */
export interface Load {
  times: number;
  kg: number;
  pieces: { casting: string; count: number }[];
}

const GRAMS_PER_KG = 1000;
const gramsOf = (kg: number): number => Math.round(kg * GRAMS_PER_KG);

/**
 * How pieces go on as few pallets or cars as they can, none carrying more than its payload; the heaviest loads first.
 * Null when one piece alone is too heavy. To fill loads is to cut sticks: the payload is the stick, each piece's mass
 * a length cut from it, without a kerf, so the same search does it. Masses in kg, to the gram.
 *
 * Example: six of 18 kg at 60 kg go in two loads of 54 kg: `loadsAt([{ casting: 'a', count: 6, kg: 18 }], 60)` is `[{
 * times: 2, kg: 54, pieces: [{ casting: 'a', count: 3 }] }]`.
 */
export const loadsAt = (pieces: readonly Weighed[], payloadKg: number): Load[] | null => {
  const asked = [...pieces].filter(({ count }) => count > 0).sort((a, b) => b.kg - a.kg);
  const [grams, payload] = [asked.map(({ kg }) => gramsOf(kg)), gramsOf(payloadKg)];
  if (grams.some((each) => each > payload)) return null;
  if (asked.length === 0) return [];
  const counts = asked.map(({ count }) => count);
  return fewestSticks(grams, counts, payload)
    .patterns.map((pattern) => ({
      times: pattern.times,
      kg: pattern.counts.reduce((sum, count, kind) => sum + count * grams[kind]!, 0) / GRAMS_PER_KG,
      pieces: pattern.counts.flatMap((count, kind) => (count > 0 ? [{ casting: asked[kind]!.casting, count }] : [])),
    }))
    .sort((a, b) => b.kg - a.kg || b.times - a.times);
};
