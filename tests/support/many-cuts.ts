import type { CutDemand } from '../../src/engine/cut/cut-plan.ts';

const LENGTHS_MM = [190, 240, 300, 480, 550, 760];

/** 3,000 cuts, 500 of each of six lengths, needed over 500 instants: about what a thousand orders ask for. */
export const manyCuts = (): CutDemand[] =>
  Array.from({ length: 750 }, (_, i) => ({
    lengthMm: LENGTHS_MM[i % LENGTHS_MM.length]!,
    count: 4,
    at: Math.floor(i / 1.5),
    for: `o${i}`,
  }));
