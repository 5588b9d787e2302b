import type { CostKind } from '../../../shared/money.ts';
import { CostSum, type MissingFigure } from './cost.ts';
import { shareOut } from './share-out.ts';

/** Who bears a share of something, and how large it is beside the others'. */
export interface Bearer {
  owner: string;
  weight: number;
}

/** What is charged to whom. All that is charged is borne by somebody, to the minor unit. */
export class Charges {
  readonly owners = new Map<string, CostSum>();
  /** All that was charged, in minor units. */
  charged = 0;

  of(owner: string): CostSum {
    const sum = this.owners.get(owner) ?? new CostSum();
    this.owners.set(owner, sum);
    return sum;
  }

  /** Charges an amount to several, each a share by weight. Throws where an amount has nobody to bear it. */
  share(kind: CostKind, minor: number, bearers: readonly Bearer[]): void {
    if (bearers.length === 0 && minor !== 0) throw new Error(`Nobody bears ${minor} of ${kind}.`);
    const shares = shareOut(
      minor,
      bearers.map(({ weight }) => weight),
    );
    for (const [place, { owner }] of bearers.entries()) this.of(owner).add(kind, shares[place]!);
    this.charged += minor;
  }

  /** A figure is missing in what all of these cost. */
  lack(figure: MissingFigure, bearers: readonly Pick<Bearer, 'owner'>[]): void {
    for (const { owner } of bearers) this.of(owner).lacks(figure);
  }
}
