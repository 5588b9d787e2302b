import { describe, expect, test } from 'vitest';
import type { SeasonOptions } from './season/options.ts';
import { runSeason } from './season/run-season.ts';
import { detailLines } from './season/season-table.ts';
import { SEASON_YARDS } from './season/season-yards.ts';
import type { SeasonTally } from './season/tally.ts';

/** A month in closed loop takes longer than a test usually may. */
const PATIENCE_MS = 900_000;

const lived = async (name: string, search: SeasonOptions['search']): Promise<SeasonTally> => {
  const yard = SEASON_YARDS.find((one) => one.name === name)!;
  const { tally } = await runSeason(yard, { days: 30, seed: 2, search, disturbed: false, keep: null, stop: null });
  console.log(detailLines({ program: tally, byHand: [] }).join('\n'));
  return tally;
};

describe('A month lived through by the pages', () => {
  test.each([
    ['saturdays', 'full'],
    ['US', 'none'],
  ] as const)(
    'of the yard "%s": orders are taken and fall due, every act is accepted, and every evening the plan stands the audit',
    async (name, search) => {
      const tally = await lived(name, search);
      expect(tally.orders).toBeGreaterThan(3);
      expect(tally.due).toBeGreaterThan(0);
      expect(tally.refused).toEqual([]);
      expect(tally.audits).toBe(30);
      expect(tally.auditWords).toEqual({});
    },
    PATIENCE_MS,
  );
});
