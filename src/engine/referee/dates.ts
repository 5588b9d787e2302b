import { isCutUp, type Material } from '../../../shared/material.ts';
import { dayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import { TOLERANCE } from './finding.ts';
import type { Ground } from './ground.ts';

/** Bags of one date, or an opened one; `until` is the minute from which on it is past its date. */
interface Bags {
  quantity: number;
  until: Minute;
  isOpen: boolean;
  isDated: boolean;
}

const FOREVER = Number.POSITIVE_INFINITY;

/** Whether some of a material goes past a date, or would once it is opened. */
export const goesPast = ({ lots = [], shelfLifeDays, openedDays, ...of }: Material): boolean =>
  !isCutUp(of) && [shelfLifeDays, openedDays, ...lots.map(({ useBy }) => useBy)].some((x) => x !== undefined);

/** What is there of a material that goes past its date, used and added to as time goes on (R10). */
export class Shelf {
  private bags: Bags[] = [];

  constructor(
    private readonly ground: Ground,
    private readonly material: Material,
  ) {
    const { lots = [], onHand } = material;
    let undated = onHand;
    for (const { quantity, useBy, openedAt } of lots) {
      undated -= quantity;
      const date = useBy === undefined ? FOREVER : this.endOf(dayNumber(useBy));
      const opened = openedAt === undefined ? FOREVER : this.openUntil(minuteOf(openedAt));
      const until = Math.min(date, opened);
      this.bags.push({ quantity, until, isOpen: openedAt !== undefined, isDated: useBy !== undefined });
    }
    if (undated > 0) this.bags.push({ quantity: undated, until: FOREVER, isOpen: false, isDated: false });
  }

  private endOf(day: number): Minute {
    return this.ground.calendar.midnightOf(day + 1);
  }

  private openUntil(at: Minute): Minute {
    const { openedDays } = this.material;
    return openedDays === undefined ? FOREVER : this.endOf(this.ground.calendar.dayOf(at) + openedDays);
  }

  /** Comes on a day; what keeps has no date. */
  add(quantity: number, cameOn: number): void {
    const { shelfLifeDays } = this.material;
    const isDated = shelfLifeDays !== undefined;
    const until = isDated ? this.endOf(cameOn + Math.max(1, shelfLifeDays)) : FOREVER;
    if (quantity > 0) this.bags.push({ quantity, until, isOpen: false, isDated });
  }

  /** Which of what may be used goes first. */
  private next(at: Minute): Bags | undefined {
    const rank = ({ isOpen, isDated }: Bags): number => (isOpen ? 0 : isDated ? 2 : 1);
    const isBefore = (a: Bags, b: Bags): boolean =>
      rank(a) !== rank(b) ? rank(a) < rank(b) : a.until !== b.until ? a.until < b.until : a.quantity < b.quantity;
    let best: Bags | undefined;
    for (const one of this.bags) {
      if (one.until <= at || one.quantity <= 0) continue;
      if (!best || isBefore(one, best)) best = one;
    }
    return best;
  }

  private leaveOpen(from: Bags, used: number, at: Minute): void {
    const { openedDays, opensBy = 1 } = this.material;
    if (openedDays === undefined || from.isOpen) return;
    const over = Math.min(from.quantity, Math.ceil((used - TOLERANCE) / opensBy) * opensBy - used);
    if (over <= TOLERANCE) return;
    from.quantity -= over;
    this.bags.push({ ...from, quantity: over, until: Math.min(from.until, this.openUntil(at)), isOpen: true });
  }

  /** Uses so much at a minute; how much of it there is not. */
  use(quantity: number, at: Minute): number {
    let left = quantity;
    for (let from = this.next(at); from && left > TOLERANCE; from = this.next(at)) {
      const used = Math.min(left, from.quantity);
      from.quantity -= used;
      left -= used;
      this.leaveOpen(from, used, at);
      if (from.quantity <= TOLERANCE) this.bags = this.bags.filter((one) => one !== from);
    }
    return left > TOLERANCE ? left : 0;
  }

  /** How much may be used at a minute. */
  level(at: Minute): number {
    return this.bags.reduce((sum, { quantity, until }) => (until > at ? sum + quantity : sum), 0);
  }
}
