import { minuteOf, type Tiny } from './tiny.ts';

/** A piece that is out of its mould, or was finished before. */
export interface Piece {
  casting: number;
  readyAt: number;
  /** When it came out of its mould, and was seen to be good; the beginning of the plan where it was out before. */
  strippedAt: number;
  /** Place of the order it is set aside for, -1 for one that is not planned, null for nobody. */
  aside: number | null;
  /** Nothing was done for the piece before this minute: an order whose first day is later may not have it. */
  from: number;
  /** The order that was packed with it, -1 for none. */
  usedBy: number;
  source: { lot: number } | { mould: number } | { pour: number };
}

interface Held {
  casting: number;
  outAt: number;
  curedAt: number;
  from: number;
  /** Place of its pour among all pours, -1 for what was in the mould before. */
  pour: number;
}

export interface MouldState {
  setFor: number;
  isDirty: boolean;
  /** The casting it is set up for, -1 for none. */
  prepped: number;
  /** Set up before the plan begins. */
  isPreppedBefore: boolean;
  prepStart: number;
  prepEnd: number;
  /** Its coat is dry. */
  dryFrom: number;
  turns: number;
  held: Held | null;
}

/** One task with its start and end, and all those before it. */
export interface Done {
  before: Done | null;
  task:
    | { kind: 'coat'; mould: number; start: number; end: number }
    | { kind: 'batch'; start: number; end: number; mixEnd: number; fills: Fill[] }
    | { kind: 'strip'; mould: number; pour: number; start: number; end: number; readyAt: number }
    | { kind: 'pack'; order: number; start: number; end: number };
}

export interface Fill {
  mould: number;
  casting: number;
  prepStart: number;
  prepEnd: number;
  fillStart: number;
  fillEnd: number;
}

/** All that one person has done so far, in turn, and what comes of it. Never changed: each step makes another. */
export interface WorkState {
  /** The person is free from then on. */
  at: number;
  moulds: readonly MouldState[];
  pieces: readonly Piece[];
  bags: number;
  pours: number;
  /** By casting: moulds that may still be set up for it. */
  left: readonly number[];
  /** By order: when it was packed, -1 before. */
  packedAt: readonly number[];
  done: Done | null;
}

const minutesAt = ({ yard }: Tiny, filledAt: number): { outAt: number; curedAt: number } => {
  const { demouldMinutes, cureHours } = yard.mixes[0]!;
  return { outAt: filledAt + demouldMinutes, curedAt: filledAt + cureHours * 60 };
};

/** What a mould holds after a fill that ends at a minute; no temperatures, so that age goes by the clock (R7, R8). */
export const heldFrom = (tiny: Tiny, casting: number, filledAt: number, pour: number, from: number): Held => ({
  casting,
  ...minutesAt(tiny, filledAt),
  pour,
  from,
});

const mouldsNow = (tiny: Tiny): MouldState[] =>
  tiny.yard.moulds.map((mould) => {
    const place = (id: string) => tiny.yard.castings.findIndex((c) => c.id === id);
    const inIt = tiny.yard.inMould.find((piece) => piece.mould === mould.id);
    const held = inIt ? heldFrom(tiny, place(inIt.casting), minuteOf(inIt.filledAt), -1, Infinity) : null;
    return {
      setFor: held?.casting ?? place(mould.setFor),
      isDirty: held !== null || mould.condition === 'dirty',
      prepped: mould.prepped && !held ? place(mould.setFor) : -1,
      isPreppedBefore: mould.prepped && !held,
      ...{ prepStart: 0, prepEnd: 0, dryFrom: 0 },
      turns: mould.turnsSinceOil,
      held,
    };
  });

/**
 * How the yard is at the beginning. Of a casting no more are poured than all orders together ask for, less the pieces that
 * are there at once for whoever wants them: a pour never serves better than one of those.
 */
export const workBegins = (tiny: Tiny): WorkState => {
  const { yard, now, orders } = tiny;
  const place = (id: string) => yard.castings.findIndex((c) => c.id === id);
  const pieces = yard.finished.flatMap((lot, i) =>
    Array.from(
      { length: lot.count },
      (): Piece => ({
        casting: place(lot.casting),
        readyAt: lot.readyAt === undefined ? now : Math.max(now, minuteOf(lot.readyAt)),
        strippedAt: now,
        aside: lot.order === undefined ? null : orders.findIndex(({ id }) => id === lot.order),
        from: Infinity,
        usedBy: -1,
        source: { lot: i },
      }),
    ),
  );
  return {
    at: now,
    moulds: mouldsNow(tiny),
    pieces,
    bags: 0,
    pours: 0,
    left: yard.castings.map((_, c) => {
      const there = pieces.filter((p) => p.casting === c && p.aside === null && p.readyAt <= now).length;
      return Math.max(0, orders.reduce((n, { needs }) => n + needs[c]!, 0) - there);
    }),
    packedAt: orders.map(() => -1),
    done: null,
  };
};
