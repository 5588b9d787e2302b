/** A column and its factor in a row. */
export type Term = readonly [column: number, factor: number];

interface Row {
  lower: number;
  upper: number;
  terms: Term[];
}

/** A mixed-integer program to be minimised, put together column by column and row by row. */
export class LinearModel {
  readonly cost: number[] = [];
  readonly lower: number[] = [];
  readonly upper: number[] = [];
  readonly isWhole: boolean[] = [];
  readonly rows: Row[] = [];

  /** A quantity from 0 to `upper` that may be a fraction. */
  amount(upper = Number.POSITIVE_INFINITY): number {
    return this.column(upper, false, 0);
  }

  /** A whole number from 0 to `upper`; each one costs `cost`. */
  count(upper: number, cost = 0): number {
    return this.column(upper, true, cost);
  }

  private column(upper: number, isWhole: boolean, cost: number): number {
    this.cost.push(cost);
    this.lower.push(0);
    this.upper.push(upper);
    this.isWhole.push(isWhole);
    return this.cost.length - 1;
  }

  atMost(terms: Term[], upper: number): void {
    this.rows.push({ lower: Number.NEGATIVE_INFINITY, upper, terms });
  }

  exactly(terms: Term[], value: number): void {
    this.rows.push({ lower: value, upper: value, terms });
  }
}
