import type { CastingSize } from '../../../db/stores/casting-size-store.ts';
import type { StoredMould } from '../../../db/stores/mould-store.ts';
import { type MouldPart, setOf } from '../../../shared/mould-part.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import { poursOfMould } from '../plan/pours-of-mould.ts';

/** The piece in a mould. */
interface PieceInMould {
  name: string;
  filledAt: string;
  /** Null: for stock. */
  customer: string | null;
  /** Null: by the plan it stays. */
  stripAt: string | null;
  /** Why it stays; null when it is stripped. */
  stays: string | null;
}

/** The next pour into a mould by the plan. */
interface NextPour {
  at: string;
  /** Null: for stock. */
  customer: string | null;
  /** Its time is over, and it is not recorded. */
  late: boolean;
}

/** One mould with what is in it and what is next. */
export interface MouldFacts {
  id: string;
  condition: StoredMould['condition'];
  /** Set up for its next pour. */
  prepped: boolean;
  /** Names of the pieces it can make, and of the one it is set for. */
  makes: readonly string[];
  setFor: string;
  /** How long the piece is that it is set for, in mm; null where nobody said. */
  lengthMm: number | null;
  /** Null: it is empty. */
  piece: PieceInMould | null;
  /** The day it should be mended; null when nobody said. */
  repairedOn: string | null;
  note: string | null;
  damageNote: string | null;
  /** The parts of its set that are worn or broken. */
  troubled: readonly MouldPart[];
  /** Turns left before it has to be sealed; null when it never is. */
  turnsToSealing: number | null;
  /** Turns from one sealing coat to the next; null when it is never sealed. */
  turnsBetweenCoats: number | null;
  /** Turns left before it is to be looked over, 0 and less once it is due; null where nobody said how often. */
  turnsToService: number | null;
  /** Its coat dries until then; null when it is dry. */
  dryFrom: string | null;
  nextPour: NextPour | null;
}

/** What is told of a mould is found in. */
export interface MouldsSeen {
  plan: PlanFile;
  calendar: Calendar;
  customers: ReadonlyMap<string, string>;
  castings: ReadonlyMap<string, string>;
  /** Lengths of pieces in mm, by casting, where they are known. */
  lengths: ReadonlyMap<string, number>;
  now: Minute;
  /** By mould, since it was looked over last. */
  turns: ReadonlyMap<string, number>;
}

/** Lengths by casting, of those that are known. */
export const lengthsOf = (sizes: readonly CastingSize[]): Map<string, number> =>
  new Map(sizes.map(({ casting, length }) => [casting, length.mm]));

const pieceIn = (
  { id, piece }: StoredMould,
  { plan, calendar, customers, castings }: MouldsSeen,
): PieceInMould | null => {
  if (!piece) return null;
  const strip = plan.strips.find(({ mould }) => mould === id);
  const order = strip?.order ?? piece.order;
  return {
    name: castings.get(piece.casting) ?? piece.casting,
    filledAt: calendar.instantText(minuteOf(piece.filledAt)),
    customer: order ? (customers.get(order) ?? null) : null,
    stripAt: strip?.stripStart ?? null,
    stays: plan.unstripped.find(({ mould }) => mould === id)?.reason ?? null,
  };
};

const nextPour = ({ id }: StoredMould, { plan, customers, now }: MouldsSeen): NextPour | null => {
  const [first] = poursOfMould(plan, id);
  if (!first) return null;
  const customer = first.order ? (customers.get(first.order) ?? null) : null;
  return { at: first.fillStart, customer, late: minuteOf(first.fillEnd) <= now };
};

/** One mould as the page shows it. */
export const mouldFacts = (mould: StoredMould, seen: MouldsSeen): MouldFacts => ({
  id: mould.id,
  condition: mould.condition,
  prepped: mould.prepped,
  makes: mould.makes.map(({ casting }) => seen.castings.get(casting) ?? casting),
  setFor: seen.castings.get(mould.setFor) ?? mould.setFor,
  lengthMm: seen.lengths.get(mould.setFor) ?? null,
  piece: pieceIn(mould, seen),
  repairedOn: mould.repairedOn,
  note: mould.note,
  damageNote: mould.damageNote,
  troubled: setOf(mould.parts ?? []).filter(({ condition }) => condition !== 'whole'),
  turnsToSealing: mould.oilEveryTurns === null ? null : Math.max(0, mould.oilEveryTurns - mould.turnsSinceOil),
  turnsBetweenCoats: mould.oilEveryTurns,
  turnsToService: mould.serviceEveryTurns === null ? null : mould.serviceEveryTurns - (seen.turns.get(mould.id) ?? 0),
  dryFrom: mould.dryFrom !== null && minuteOf(mould.dryFrom) > seen.now ? mould.dryFrom : null,
  nextPour: nextPour(mould, seen),
});
