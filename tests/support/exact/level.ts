import type { LinearModel, Term } from './linear-model.ts';

/** A stock over the points of a grid: what is there after each point's arrivals and departures, never below nothing. */
export class Level {
  private readonly moves: Term[][];
  private readonly supply: number[];

  constructor(private readonly points: number) {
    this.moves = Array.from({ length: points }, () => []);
    this.supply = new Array(points).fill(0);
  }

  /** So many more from a point on for each one of a column; what comes after the last point never comes. */
  add(point: number, column: number, factor: number): void {
    if (point < this.points) this.moves[point]!.push([column, factor]);
  }

  addNumber(point: number, quantity: number): void {
    if (point < this.points) this.supply[point]! += quantity;
  }

  /** Writes the rows; the column of the stock after each point. */
  write(lp: LinearModel): number[] {
    const columns: number[] = [];
    for (let p = 0; p < this.points; p++) {
      const column = lp.amount();
      const before: Term[] = p > 0 ? [[columns[p - 1]!, -1]] : [];
      const moves = this.moves[p]!.map(([c, factor]): Term => [c, -factor]);
      lp.exactly([[column, 1], ...before, ...moves], this.supply[p]!);
      columns.push(column);
    }
    return columns;
  }
}
