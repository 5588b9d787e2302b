import type { PageHead } from '../core/page-parts.ts';
import type { PieceToPack } from '../orders/pieces-to-pack.ts';
import type { ToMendFacts } from '../orders/to-mend-facts.ts';
import type { WetCureFacts } from '../pieces/wet-cures.ts';
import type { HoursChanged } from '../plan/hours-changed.ts';
import type { LeftForLater } from '../plan/save-edit.ts';
import type { SparePoured } from '../plan/spares-of-plan.ts';
import type { LeftField } from '../typed/left-typed.ts';
import type { StripFacts } from '../yard/strip-facts.ts';
import type { EveningFacts } from './evening-facts.ts';
import type { FixedFacts } from './fixed-facts.ts';
import type { SessionHours } from './hours-facts.ts';
import type { RecipeFacts, SessionStep } from './session-step.ts';
import type { RainFacts, WarmthFacts } from './weather-now.ts';

/** A step with a name of its own, by which it is said what became of it: late, or under way. */
export interface LateLine {
  name: string;
  step: SessionStep;
}

/** One person of a session: when that one is there, and by name what of its steps is theirs. */
export interface PersonFacts {
  start: string;
  end: string;
  steps: readonly string[];
  /** When that one keeps wet what is out of its mould, where the plan has minutes for it and they are this one's. */
  wet: { start: string; end: string } | null;
}

/** A mould with a piece in it that none of the steps strips. */
export interface FullMould {
  mould: string;
  piece: string;
  /** Null: for stock. */
  customer: string | null;
  filledAt: string;
  mayFrom: string;
  /** When it is stripped by the plan; null: it stays. */
  planned: string | null;
  /** The name of the piece, by which its strip is found again. */
  pieceKey: string;
}

/** A piece that sets in its mould, with what is still to come of it. */
export interface SettingFacts {
  mould: string;
  piece: string;
  /** Somebody keeps it wet until then; null: nobody has to, or not any more. */
  wetUntil: string | null;
  /** Null: it may be stripped now. */
  mayFrom: string | null;
  /** The name of the piece, by which it is said that it is covered. */
  pieceKey: string;
  /** Covered and wet since then; null: nobody has said so. */
  coveredAt: string | null;
}

/** A mould that a pour may go into just now, with what it can make. */
export interface EmptyMould {
  mould: string;
  setFor: string;
  makes: readonly { casting: string; piece: string }[];
}

/** A mould that is recorded as full at an instant still to come: the clock was wrong then, or is now. */
export interface ToComeFacts {
  mould: string;
  filledAt: string;
}

/** A material of which more was taken than the stock book had; in the unit that is shown. */
export interface ToCountFacts {
  material: string;
  name: string;
  unit: string;
  shortBy: number;
  /** Of what is cut, what the book has of opened ones, as it stands in a field, and how that may be typed; else null. */
  offcuts: LeftField | null;
  /** What the stock book has of it, for a count to be sent along with. */
  book: string;
}

/** A mould that was to be mended by a day that has come. */
export interface ToBeMendedFacts {
  mould: string;
  by: string;
  note: string | null;
}

/** Goods on their way that were expected by a day that has gone by. */
export interface NotArrivedFacts {
  goods: number;
  name: string;
  quantity: number;
  unit: string;
  by: string;
  /** The time of today by which the plan takes it to come; null: not today any more. */
  countedBy: string | null;
}

/** The last minute to begin a batch of a mix, as an instant. */
export interface LastMix {
  mix: string;
  at: string;
}

interface OrderNamed {
  order: string;
  customer: string;
}

/** An order of whose packing so many minutes are done. */
interface PartPacked extends OrderNamed {
  minutes: number;
  inAll: number;
}

/** Work of today that is written down, by the change that wrote it. */
export interface DoneFacts {
  change: number;
  at: string;
  words: string;
  /** The name chosen on the device it was done on, if any. */
  by: string | null;
}

/** Which part of which long list of the page is asked for: the lists begin with their first part. */
export interface PartAsked {
  /** "rest", "late"; '' for none. */
  list: string;
  /** How many of it come before. */
  from: number;
}

/** What is not recorded yet of one session that is over. */
export interface LateFacts {
  /** Names the session. */
  session: string;
  date: string;
  /** Instants; null where its hours are no longer there. */
  hours: { start: string; end: string } | null;
  lines: readonly LateLine[];
}

/** A step that can be begun or recorded once those before it are, all of which are over. */
export interface WaitingFacts {
  /** Its name. */
  step: string;
  before: readonly SessionStep[];
}

/** The session under way or the next one, what was done today, and what else can be written down. */
export interface TodayModel extends PageHead {
  /** As an instant, to the minute. */
  now: string;
  /** The server's clock to the second: clocks on the page run by it. */
  clock: string;
  part: PartAsked;
  /** Counts the changes: a form that is sent twice from one page is known by it. */
  revision: number;
  /** Null: none has anything to do. */
  session: SessionHours | null;
  underWay: boolean;
  fixed: FixedFacts;
  /** Hours of today in which nothing is planned. */
  idle: SessionHours | null;
  steps: readonly SessionStep[];
  people: readonly PersonFacts[];
  /** Pieces of the session that no order asked for, in case one of an order is not good. */
  spares: readonly SparePoured[];
  /** Of each mix that is mixed. */
  recipes: readonly RecipeFacts[];
  /** What is got ready before the next session with mixes; null where that is today, or still some days off. */
  evening: EveningFacts | null;
  /** Names of steps that are over and not recorded: each can be said not to have been done. Set-ups of a batch go with it. */
  overdue: readonly string[];
  /** What of `steps` has begun and is not over, and after them what has begun and stands in no hours any more. */
  begun: readonly LateLine[];
  /** Planned for sessions that are over, and not recorded: it counts as done as planned until somebody says so or not. */
  late: readonly LateFacts[];
  waiting: readonly WaitingFacts[];
  /** Null where nothing is mixed today any more. */
  warmth: WarmthFacts | null;
  /** On the day of the session, where something is mixed in it. */
  rain: RainFacts | null;
  lastMix: readonly LastMix[];
  otherFull: readonly FullMould[];
  setting: readonly SettingFacts[];
  /** They count as filled just now. */
  toCome: readonly ToComeFacts[];
  emptyMoulds: readonly EmptyMould[];
  toCount: readonly ToCountFacts[];
  toBeMended: readonly ToBeMendedFacts[];
  notArrived: readonly NotArrivedFacts[];
  orders: readonly OrderNamed[];
  /** What is still to be poured in the session, by order: any of it can be left for another day. */
  toLeave: readonly LeftForLater[];
  /** They wait to be handed over. */
  packed: readonly OrderNamed[];
  /** Some of each is packed, and more of its packing is left. */
  packedInPart: readonly PartPacked[];
  /** By order that is to be packed, the pieces that may go into it; none where they are not all known. */
  toPack: Readonly<Record<string, readonly PieceToPack[]>>;
  /** Stripped, not good, and kept aside. */
  toMend: readonly ToMendFacts[];
  /** Pieces that their mix wants kept wet out of their moulds. */
  wetCures: readonly WetCureFacts[];
  /** Mixes of which strips say that they take another time than their figures have. */
  hardOtherwise: readonly StripFacts[];
  done: readonly DoneFacts[];
  hoursChanged: readonly HoursChanged[];
}
