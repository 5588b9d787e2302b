import { LinearModel, type Term } from './exact/linear-model.ts';
import { solve } from './exact/solve.ts';

/** A kind of piece in whole openings, and how many are wanted. */
export interface SmallPiece {
  across: number;
  along: number;
  mayTurn: boolean;
  count: number;
}

/**
 * All numbers of pieces of each kind that some cutting of a sheet yields, and the largest rest beside them, by trying every
 * cut at every opening, from the sheet down. Written for tests alone: it shares nothing with the engine, which builds up.
 */
const patternsOf = (pieces: SmallPiece[], isUsable: (across: number, along: number) => boolean) => {
  const known = new Map<string, Map<string, number>>();
  const at = (across: number, along: number): Map<string, number> => {
    const key = `${across} ${along}`;
    const found = known.get(key);
    if (found) return found;
    const all = new Map<string, number>();
    const keep = (counts: number[], rest: number) => {
      const name = counts.join();
      if (counts.every((n, i) => n <= pieces[i]!.count)) all.set(name, Math.max(rest, all.get(name) ?? 0));
    };
    const none = pieces.map(() => 0);
    keep(none, isUsable(across, along) ? across * along : 0);
    pieces.forEach((piece, i) => {
      const fits = (a: number, b: number) => piece.across === a && piece.along === b;
      if (fits(across, along) || (piece.mayTurn && fits(along, across)))
        keep(
          none.map((_, k) => (k === i ? 1 : 0)),
          0,
        );
    });
    const join = (one: Map<string, number>, other: Map<string, number>) => {
      for (const [a, restA] of one)
        for (const [b, restB] of other) {
          const [x, y] = [a.split(',').map(Number), b.split(',').map(Number)];
          keep(
            x.map((n, i) => n + y[i]!),
            Math.max(restA, restB),
          );
        }
    };
    for (let x = 1; 2 * x <= across; x++) join(at(x, along), at(across - x, along));
    for (let y = 1; 2 * y <= along; y++) join(at(across, y), at(across, along - y));
    known.set(key, all);
    return all;
  };
  return at;
};

interface SmallStock {
  sheet: [number, number];
  rests: [number, number][];
  isUsable: (across: number, along: number) => boolean;
}

/**
 * Fewest sheets, and of those ways the least that is thrown away (area of rests on hand that are opened, less the largest
 * rest that is left in one piece), as a mixed-integer program in HiGHS over all patterns there are.
 */
export const sheetsByHighs = async (
  pieces: SmallPiece[],
  { sheet, rests, isUsable }: SmallStock,
): Promise<{ sheets: number; lost: number }> => {
  const at = patternsOf(pieces, isUsable);
  const columns: { counts: number[]; cost: number; stock: number; isKept: boolean }[] = [];
  [sheet, ...rests].forEach(([across, along], stock) => {
    for (const [name, rest] of at(across, along)) {
      const counts = name.split(',').map(Number);
      if (counts.every((n) => n === 0)) continue;
      const cost = stock === 0 ? 10_000 : across * along;
      columns.push({ counts, cost, stock, isKept: false });
      if (rest > 0) columns.push({ counts, cost: cost - rest, stock, isKept: true });
    }
  });
  const model = new LinearModel();
  const column = columns.map((x) => model.count(x.stock === 0 ? 50 : 1, x.cost));
  const termsOf = (factor: (x: (typeof columns)[number]) => number): Term[] =>
    columns.flatMap((x, i) => (factor(x) === 0 ? [] : [[column[i]!, factor(x)] as const]));
  pieces.forEach((piece, i) => {
    model.exactly(
      termsOf((x) => x.counts[i]!),
      piece.count,
    );
  });
  rests.forEach((_, i) => {
    model.atMost(
      termsOf((x) => (x.stock === i + 1 ? 1 : 0)),
      1,
    );
  });
  model.atMost(
    termsOf((x) => (x.isKept ? 1 : 0)),
    1,
  );
  const solved = await solve(model, { seconds: 20 });
  if (solved.status !== 'optimal') throw new Error(`not solved: ${solved.status}`);
  const sheets = columns.reduce((sum, x, i) => sum + (x.stock === 0 ? Math.round(solved.values![i]!) : 0), 0);
  return { sheets, lost: Math.round(solved.objective) - 10_000 * sheets };
};
