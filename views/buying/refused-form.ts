import type { FieldErrors } from '../parts/field.tsx';

/** Whom goods are for: customers (null for stock), or how much they bring back to what is always kept. */
export interface Purpose {
  customers: readonly (string | null)[];
  keep: number | null;
}

/** How an amount stands in its field, and exactly what that is, in the unit the material is kept in. */
interface AmountInField {
  field: string;
  was: number;
}

/** So much of a supply that has no use for as long as it keeps. */
interface UnusedFacts {
  quantity: number;
  unit: string;
  days: number;
  until: string;
}

/** Of a material that goes off: deliveries kept too long, used too late, and how much came on nobody knows which day. */
interface KeepingFacts {
  days: number;
  past: readonly { quantity: number; cameOn: string }[];
  late: readonly { quantity: number; until: string }[];
  undated: number;
}

export interface BuyLineFacts extends AmountInField {
  /** Tells the fields of this line from those of the others. */
  key: string;
  material: string;
  name: string;
  unit: string;
  quantity: number;
  pack: number;
  /** It is sold one by one: nothing to say about packs. */
  packIsOne: boolean;
  orderBy: string;
  /** When it comes if it is bought today. */
  on: string;
  price: number | null;
  for: Purpose;
  unused: UnusedFacts | null;
}

export interface BuyWeek {
  week: string;
  suppliers: readonly { name: string; lines: readonly BuyLineFacts[] }[];
}

export interface ComingFacts extends AmountInField {
  id: number;
  name: string;
  unit: string;
  quantity: number;
  on: string;
  boughtOn: string | null;
  /** What was typed for it, with its unit; null where that says no more than the amount. */
  asTyped: string | null;
  price: number | null;
  for: Purpose;
  unused: UnusedFacts | null;
}

export interface StockFacts {
  key: string;
  material: string;
  name: string;
  unit: string;
  minimum: number;
  canBeBought: boolean;
  inYard: number;
  /** What was typed when it was counted, while it still is so; null where that says no more than the amount. */
  asTyped: string | null;
  /** Beside the whole lengths there is a piece of one. */
  offcut: boolean;
  spokenFor: number;
  /** What nothing in the plan will use, with what is always kept. */
  spare: number;
  coming: readonly { quantity: number; on: string }[];
  note: string | null;
  /** Null where it does not go off. */
  keeping: KeepingFacts | null;
}

export interface BuyingModel {
  today: string;
  currency: string;
  thisWeek: string;
  weeks: readonly BuyWeek[];
  onTheWay: readonly ComingFacts[];
  stock: readonly StockFacts[];
  materials: readonly { id: string; name: string; unit: string }[];
}

/** A form that was sent back: which one, what was wrong, and what was typed into it. */
export interface RefusedForm {
  form: string;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
}
