/** How much is tried, counted and never timed. */
export interface Effort {
  /** Looked through whole: pairs of a selection of pieces and a part of it, joins of blocks, ways to keep a rest. */
  parts: number;
  joins: number;
  restSteps: number;
  /** Of a table of what is left round a block: a larger one is made on a coarser grid. */
  sums: number;
  /** Joins of blocks for each sheet of the bound, for each sheet of a round, in all rounds; and rounds. */
  boundSteps: number;
  roundSteps: number;
  mostSteps: number;
  rounds: number;
}

/** For a page that waits, for an answer that may take seconds, and for comparison with what is published. */
export type MeshEffort = 'page' | 'usual' | 'thorough';

const LOOKED_THROUGH = { parts: 400_000, joins: 6_000_000, restSteps: 2_000_000, sums: 6_000_000 };

/** What each kind of effort comes to. */
export const EFFORTS: Readonly<Record<MeshEffort, Effort>> = {
  page: {
    ...{ parts: 12_000, joins: 40_000, restSteps: 8000, sums: 150_000 },
    ...{ boundSteps: 300, roundSteps: 150, mostSteps: 2000, rounds: 3 },
  },
  usual: { ...LOOKED_THROUGH, boundSteps: 20_000, roundSteps: 2000, mostSteps: 300_000, rounds: 20 },
  thorough: { ...LOOKED_THROUGH, boundSteps: 200_000, roundSteps: 6000, mostSteps: 3_000_000, rounds: 40 },
};
