import type { Minute } from '../../../shared/time.ts';

/** A strip under way. */
interface BegunStrip {
  mould: number;
  start: Minute;
}

/** An order being packed; NONE for one that is not asked for here. */
interface BegunPack {
  order: number;
  start: Minute;
  end: Minute;
  /** More of its packing comes in later spells. */
  isPart: boolean;
  lots: { finished: number; count: number }[];
}

/** A mould being set up. */
interface BegunPrep {
  mould: number;
  casting: number;
  start: Minute;
  end: Minute;
}

/** A mould being coated. */
interface BegunCoat {
  mould: number;
  start: Minute;
  end: Minute;
}

/** Work under way at `now`, batches apart, with indices for ids and minutes for instants. */
export interface BegunWork {
  strips: BegunStrip[];
  packs: BegunPack[];
  preps: BegunPrep[];
  coats: BegunCoat[];
}
