import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendar } from '../../contract/audit-plan.mjs';

/** So much of a material of one date and one opening; both absent where nobody knows. */
export interface LoggedLot {
  quantity: number;
  useBy?: string | undefined;
  openedAt?: string | undefined;
}

/** What of a material decides which bags are taken. */
export interface LoggedMaterial {
  id: string;
  opensBy?: number | undefined;
  openedDays?: number | undefined;
}

/** So much more of a material, or less: of some bags, or of offcuts of a length. */
export type Moves = ReadonlyMap<string, number>;

const LITTLE = 1e-9;
const NEVER = Number.POSITIVE_INFINITY;

export const bagsKey = (material: string, { useBy = '', openedAt = '' }: Omit<LoggedLot, 'quantity'>): string =>
  `${material} | ${useBy} | ${openedAt && new Date(openedAt).toISOString()}`;
export const restKey = (material: string, widthMm: number, lengthMm: number): string =>
  `${material} | offcut ${widthMm} by ${lengthMm}`;
export const offcutKey = (material: string, lengthMm: number): string => `${material} | offcut ${lengthMm}`;

/**
 * What is in the yard, reckoned from what was done and from nothing that the program says is there. The rule of which bags a
 * use takes is written down a second time here, from the text of the contract (R10).
 */
export class StockLog {
  readonly amounts = new Map<string, number>();
  private readonly dayOf: (instant: string) => number;

  constructor(timeZone: string) {
    const { dateOf } = calendar(timeZone);
    this.dayOf = (instant) => dayNumber(dateOf(Date.parse(instant) / 60_000));
  }

  /** What is there when the log begins. */
  startFrom({ materials }: Pick<YardFile, 'materials'>): void {
    this.amounts.clear();
    for (const { id, onHand, lots = [], offcuts = [], rests = [] } of materials) {
      this.add(
        bagsKey(id, {}),
        lots.reduce((left, { quantity }) => left - quantity, onHand),
      );
      for (const lot of lots) this.add(bagsKey(id, lot), lot.quantity);
      for (const { lengthMm, count } of offcuts) this.add(offcutKey(id, lengthMm), count);
      for (const { widthMm, lengthMm, count } of rests) this.add(restKey(id, widthMm, lengthMm), count);
    }
  }

  add(key: string, quantity: number): void {
    const after = (this.amounts.get(key) ?? 0) + quantity;
    if (Math.abs(after) < LITTLE) this.amounts.delete(key);
    else this.amounts.set(key, after);
  }

  lotsOf(material: string): LoggedLot[] {
    return [...this.amounts].flatMap(([key, quantity]) => {
      const [id, useBy = '', openedAt = ''] = key.split(' | ');
      if (id !== material || useBy.startsWith('offcut')) return [];
      return [{ quantity, ...(useBy ? { useBy } : {}), ...(openedAt ? { openedAt } : {}) }];
    });
  }

  private lastDay({ useBy, openedAt }: LoggedLot, { openedDays }: LoggedMaterial): number {
    const byDate = useBy === undefined ? NEVER : dayNumber(useBy);
    const byOpening = openedAt === undefined || openedDays === undefined ? NEVER : this.dayOf(openedAt) + openedDays;
    return Math.min(byDate, byOpening);
  }

  /** First what is opened, by its last day; then what has no date; then by date; of equals the smaller. Never what is past it. */
  private inTurn(material: LoggedMaterial, day: number): LoggedLot[] {
    const rank = (lot: LoggedLot): number[] => {
      if (lot.openedAt !== undefined) return [0, this.lastDay(lot, material), lot.quantity];
      return lot.useBy === undefined ? [1, 0, lot.quantity] : [2, this.lastDay(lot, material), lot.quantity];
    };
    return this.lotsOf(material.id)
      .filter((lot) => this.lastDay(lot, material) >= day)
      .sort((a, b) => {
        const [left, right] = [rank(a), rank(b)];
        const place = left.findIndex((one, at) => one !== right[at]);
        return place < 0 ? 0 : left[place]! - right[place]!;
      });
  }

  /** A use at an instant. What is not to be had by its date is taken all the same, and what is not there at all is not. */
  use(material: LoggedMaterial, quantity: number, at: string): void {
    const { id, openedDays, opensBy = 1 } = material;
    let wanted = quantity;
    for (const lot of this.inTurn(material, this.dayOf(at))) {
      if (wanted <= LITTLE) return;
      const part = Math.min(lot.quantity, wanted);
      wanted -= part;
      this.add(bagsKey(id, lot), -part);
      if (openedDays === undefined || lot.openedAt !== undefined) continue;
      const opened = Math.min(lot.quantity, Math.ceil(part / opensBy - LITTLE) * opensBy) - part;
      this.add(bagsKey(id, lot), -opened);
      this.add(bagsKey(id, { ...lot, openedAt: at }), opened);
    }
    if (wanted > LITTLE) this.lose(id, wanted);
  }

  /** So much is gone and nobody says of which bags: of no known date first, then opened ones, then by their dates. */
  lose(material: string, quantity: number): void {
    const rank = ({ useBy = '', openedAt }: LoggedLot) =>
      `${useBy || openedAt ? 1 : 0} ${openedAt ? new Date(openedAt).toISOString() : '~'} ${useBy}`;
    let left = quantity;
    for (const lot of this.lotsOf(material).sort((a, b) => (rank(a) < rank(b) ? -1 : 1))) {
      const part = Math.min(left, lot.quantity);
      left -= part;
      this.add(bagsKey(material, lot), -part);
    }
  }

  /** It was counted: what is missing is lost, what is more is of no known date. */
  count(material: string, quantity: number): void {
    const more = quantity - this.lotsOf(material).reduce((sum, lot) => sum + lot.quantity, 0);
    if (more < 0) this.lose(material, -more);
    else this.add(bagsKey(material, {}), more);
  }

  /** What some acts changed, to be taken back when they are undone. */
  during(acts: () => void): Moves {
    const before = new Map(this.amounts);
    acts();
    const keys = new Set([...before.keys(), ...this.amounts.keys()]);
    return new Map([...keys].map((key) => [key, (this.amounts.get(key) ?? 0) - (before.get(key) ?? 0)]));
  }

  /** Takes changes back, or does them once more. */
  again(moves: Moves, times: 1 | -1): void {
    for (const [key, quantity] of moves) this.add(key, times * quantity);
  }
}
