import { COST_KINDS, type CostKind } from '../../../shared/money.ts';

/** A figure that nobody said, so that a cost is more than what it comes to: of a material or a mould its `id`, else ''. */
export interface MissingFigure {
  what: 'price' | 'wage' | 'mould' | 'session' | 'rejects';
  id: string;
}

/** A cost in whole minor units by what it is made up of; `total` is the sum of the parts. What is missing counts for nothing. */
export interface Cost {
  parts: Readonly<Record<CostKind, number>>;
  total: number;
  missing: readonly MissingFigure[];
}

/** Adds a cost up, part by part. */
export class CostSum {
  readonly #parts: Record<CostKind, number>;
  readonly #missing = new Map<string, MissingFigure>();
  constructor() {
    this.#parts = Object.fromEntries(COST_KINDS.map((kind) => [kind, 0])) as Record<CostKind, number>;
  }

  add(kind: CostKind, minor: number): void {
    this.#parts[kind] += minor;
  }

  lacks(figure: MissingFigure): void {
    this.#missing.set(`${figure.what} ${figure.id}`, figure);
  }

  /** Adds another cost so many times over. */
  addCost({ parts, missing }: Pick<Cost, 'parts' | 'missing'>, times = 1): this {
    for (const kind of COST_KINDS) this.add(kind, parts[kind] * times);
    for (const figure of missing) this.lacks(figure);
    return this;
  }

  get cost(): Cost {
    const total = COST_KINDS.reduce((sum, kind) => sum + this.#parts[kind], 0);
    return { parts: { ...this.#parts }, total, missing: [...this.#missing.values()] };
  }
}
