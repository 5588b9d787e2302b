import type { Problem } from '../decoder/problem.ts';
import type { Piece, Work } from './work.ts';

/** First days of orders that have come by the beginning of a batch, as a number: pieces of equal ones serve the same orders. */
const sortOf = (firstDays: readonly number[], { casting, aside, begunAt, usedBy }: Omit<Piece, 'readyAt'>): number =>
  ((casting * 512 + aside + 1) * 64 + firstDays.filter((day) => day <= begunAt).length) * 2 + (usedBy >= 0 ? 1 : 0);

/** What there is, without its minutes; and its minutes, in the same order for all that is alike. */
interface Shape {
  shape: string;
  minutes: number[];
}

const shapeOf = (firstDays: readonly number[], work: Work): Shape => {
  const { at, moulds, pieces, used, left, packedAt } = work;
  const minutes = [at];
  const shape: (number | string)[] = [used.join(), left.join()];
  for (const packed of packedAt) {
    shape.push(packed >= 0 ? 1 : 0);
    minutes.push(packed);
  }
  for (const { setFor, isDirty, prepped, asIs, freeFrom, turns, held } of moulds) {
    shape.push(
      setFor,
      isDirty ? 1 : 0,
      prepped,
      asIs ? 1 : 0,
      turns,
      held ? sortOf(firstDays, { ...held, usedBy: -1 }) : -1,
    );
    minutes.push(freeFrom);
    if (held) minutes.push(held.outAt, held.curedAt);
  }
  const sorts = pieces.map((piece) => ({ sort: sortOf(firstDays, piece), readyAt: piece.readyAt }));
  sorts.sort((a, b) => a.sort - b.sort || a.readyAt - b.readyAt);
  for (const { sort, readyAt } of sorts) {
    shape.push(sort);
    minutes.push(readyAt);
  }
  return { shape: shape.join(' '), minutes };
};

const isAsSoon = (a: readonly number[], b: readonly number[]): boolean => {
  for (let i = 0; i < a.length; i++) if (a[i]! > b[i]!) return false;
  return true;
};

/** Work seen before: what is alike and in nothing sooner leads to nothing better. */
export class Seen {
  private readonly shapes = new Map<string, number[][]>();
  private readonly firstDays: readonly number[];

  constructor({ orders }: Problem) {
    this.firstDays = [...new Set(orders.map(({ from }) => from))];
  }

  /** Whether nothing was seen that is as good; it is then remembered. */
  isNew(work: Work): boolean {
    const { shape, minutes } = shapeOf(this.firstDays, work);
    const before = this.shapes.get(shape);
    if (before?.some((other) => isAsSoon(other, minutes))) return false;
    this.shapes.set(shape, [...(before ?? []).filter((other) => !isAsSoon(minutes, other)), minutes]);
    return true;
  }
}
