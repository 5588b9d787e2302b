import { LinearModel } from './exact/linear-model.ts';
import { solve } from './exact/solve.ts';

/** Sticks of one length, offcuts on hand, and what is to be cut from them all at once; mm. */
export interface SticksCase {
  stickMm: number;
  kerfMm: number;
  offcuts: number[];
  cuts: { lengthMm: number; count: number }[];
}

/**
 * The fewest whole sticks beside the offcuts, as a mixed-integer program in HiGHS: how many cuts of each length on each
 * stick. `most` sticks are enough. Null where the processor time did not suffice.
 */
export const sticksByHighs = async (
  { stickMm, kerfMm, offcuts, cuts }: SticksCase,
  most: number,
  seconds = 10,
): Promise<number | null> => {
  const model = new LinearModel();
  const room = [...offcuts, ...new Array<number>(most).fill(stickMm)].map((x) => x + kerfMm);
  const isOpen = room.map((_, i) => model.count(1, i < offcuts.length ? 0 : 1));
  const on = room.map(() => cuts.map((x) => model.count(x.count)));
  cuts.forEach((x, kind) => {
    model.exactly(
      room.map((_, i) => [on[i]![kind]!, 1] as const),
      x.count,
    );
  });
  room.forEach((space, i) => {
    model.atMost([...cuts.map((x, k) => [on[i]![k]!, x.lengthMm + kerfMm] as const), [isOpen[i]!, -space]], 0);
  });
  for (let i = offcuts.length + 1; i < room.length; i++)
    model.atMost(
      [
        [isOpen[i]!, 1],
        [isOpen[i - 1]!, -1],
      ],
      0,
    );
  const solved = await solve(model, { seconds });
  return solved.status === 'optimal' ? Math.round(solved.objective) : null;
};

const LENGTHS_MM = [190, 240, 300, 333, 480, 550, 760, 890, 1150, 1180];

/** Cases that look random and are the same every time: up to fifty cuts of up to eight lengths, up to nine offcuts. */
export const sticksCases = (count: number): SticksCase[] => {
  let state = 77;
  const below = (limit: number): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state % limit;
  };
  return Array.from({ length: count }, () => {
    const stickMm = [2000, 3000, 6000][below(3)]!;
    const lengths = new Set(Array.from({ length: 3 + below(6) }, () => LENGTHS_MM[below(LENGTHS_MM.length)]!));
    return {
      stickMm,
      kerfMm: [0, 2, 3][below(3)]!,
      cuts: [...lengths].map((lengthMm) => ({ lengthMm, count: 1 + below(6) })),
      offcuts: Array.from({ length: below(10) }, () => 200 + below(stickMm - 200)),
    };
  });
};
