import type { Minute } from '../../../shared/time.ts';
import { type DatedUse, hasDates, isFollowed, missingWith, whenThereByDates, withUse } from './dated-stock.ts';
import { cutFromRests, type OpenRests, restsLeft, type SheetCuts } from './open-sheets.ts';
import type { CompiledMaterial } from './problem.ts';
import { NEVER, NONE } from './problem.ts';

const EPSILON = 1e-9;
type Quantity = { material: number; quantity: number };
type Cuts = { material: number; lengthMm: number; count: number };

/** So much of a material is missing; `isPastDate`: it would be there if it kept. */
export interface Short {
  material: number;
  quantity: number;
  isPastDate?: boolean;
}

/** Sticks that are open: what is left of each, mm, and from when on it is there to be cut. */
interface OpenSticks {
  left: number[];
  from: number[];
}

const copyOf = ({ left, from }: OpenSticks): OpenSticks => ({ left: [...left], from: [...from] });

/** There all along: what happens from now on cannot tell when it was opened. */
const LONG_OPEN = Number.NEGATIVE_INFINITY;

/** What has been used of each material, in its own unit, and the sticks that are open; of what goes past its date also when. */
export interface StockState {
  used: Float64Array;
  dated: (readonly DatedUse[])[];
  open: OpenSticks[];
  rests: OpenRests[];
}

/** Index of the shortest stick that is open by a minute and long enough, the first of equals; NONE where none is. */
const shortestFor = ({ left, from }: OpenSticks, lengthMm: number, at: number): number => {
  let best = NONE;
  for (let k = 0; k < left.length; k++)
    if (from[k]! <= at && left[k]! + EPSILON >= lengthMm && (best === NONE || left[k]! < left[best]!)) best = k;
  return best;
};

/** Offcuts that may be cut once so many sticks are held back: the longest go first, when no whole stick is left to hold. */
const offcutsLeft = ({ offcuts, onHand, arrivals }: CompiledMaterial, heldBack: number): OpenSticks => {
  const sticks = arrivals.reduce((sum, x) => sum + x.quantity, onHand);
  const left = offcuts.slice(Math.max(0, Math.ceil(heldBack - sticks - EPSILON)));
  return { left, from: left.map(() => LONG_OPEN) };
};

/** The same of rests of sheets. */
const firstRests = ({ sheets, onHand, arrivals }: CompiledMaterial, heldBack: number): OpenRests =>
  sheets
    ? restsLeft(
        sheets,
        arrivals.reduce((sum, x) => sum + x.quantity, onHand),
        heldBack,
        LONG_OPEN,
      )
    : [];

/** First minute from one on at which so much of a material is there, `level` of it being left of what is on hand (R10). */
export const whenThere = (
  { arrivals, plentyFrom }: Pick<CompiledMaterial, 'arrivals' | 'plentyFrom'>,
  level: number,
  quantity: number,
  from: Minute,
): Minute => {
  if (from >= plentyFrom || quantity <= 0) return from;
  let left = level;
  let at = from;
  for (const arrival of arrivals) {
    if (left + EPSILON >= quantity) return at;
    if (arrival.at >= plentyFrom) break;
    left += arrival.quantity;
    at = Math.max(from, arrival.at);
  }
  return left + EPSILON >= quantity ? at : plentyFrom;
};

/**
 * Materials as if nothing went past its date: what is past it by some minute may have been used before, and what can be had is no more
 * than this.
 */
export const asIfKept = (materials: readonly CompiledMaterial[]): CompiledMaterial[] =>
  materials.map((one) => (one.dates ? { ...one, dates: null } : one));

/**
 * Materials that may run short: what is there until more can be bought, and what cannot be bought at all (R10). All that
 * has been used counts at once, whatever its time, so that placing tasks of one shift in any order never overdraws.
 *
 * One question at a time: `ask()`, then `add`, `addCuts` and `addSheets` what is needed together, then `earliest(from)`; `use(at)`
 * takes it.
 */
export class Stock {
  private readonly used: Float64Array;
  /** Of materials that go past their date; lists are replaced, never written to. */
  private dated: (readonly DatedUse[])[];
  /** Offcuts that are there at the start and may be cut. */
  private readonly first: OpenSticks[];
  /** Those and what is left of opened sticks, by material. */
  private readonly open: OpenSticks[];
  /** The same of sheets: there at the start, and by now. */
  private readonly firstRests: OpenRests[];
  private rests: OpenRests[];
  private readonly needed: Float64Array;
  private readonly asked: number[] = [];
  private readonly cuts: Cuts[] = [];
  private readonly sheets: SheetCuts[] = [];

  constructor(
    private readonly materials: CompiledMaterial[],
    /** Sticks of each material held back because a cut plan could not do with fewer; where none is left, offcuts. */
    private readonly heldBack: ArrayLike<number>,
  ) {
    this.used = new Float64Array(materials.length);
    this.dated = materials.map(() => []);
    this.needed = new Float64Array(materials.length);
    this.first = materials.map((one, material) => offcutsLeft(one, heldBack[material]!));
    this.open = this.first.map(copyOf);
    this.firstRests = materials.map((one, material) => firstRests(one, heldBack[material]!));
    this.rests = [...this.firstRests];
  }

  reset(): void {
    this.used.fill(0);
    this.dated = this.materials.map(() => []);
    this.first.forEach((sticks, material) => {
      this.open[material] = copyOf(sticks);
    });
    this.rests = [...this.firstRests];
  }

  /** As it is, for what is placed at a minute or later. */
  save(minute: number): StockState {
    const open = this.open.map(({ left, from }) => ({
      left: [...left],
      from: from.map((at) => (at <= minute ? LONG_OPEN : at)),
    }));
    const rests = this.rests.map((list) =>
      list.map((rest) => (rest.from <= minute ? { ...rest, from: LONG_OPEN } : rest)),
    );
    return { used: this.used.slice(), dated: [...this.dated], open, rests };
  }

  restore(state: StockState): void {
    this.used.set(state.used);
    this.dated = [...state.dated];
    state.open.forEach((sticks, material) => {
      this.open[material] = copyOf(sticks);
    });
    this.rests = [...state.rests];
  }

  ask(): void {
    for (const material of this.asked) this.needed[material] = 0;
    this.asked.length = 0;
    this.cuts.length = 0;
    this.sheets.length = 0;
  }

  private want(material: number, quantity: number): void {
    if (!this.asked.includes(material)) this.asked.push(material);
    this.needed[material] = this.needed[material]! + quantity;
  }

  add(list: readonly Quantity[], times = 1): void {
    for (const x of list) this.want(x.material, x.quantity * times);
  }

  addCuts(list: readonly Cuts[]): void {
    for (const x of list) this.cuts.push(x);
  }

  addSheets(list: readonly SheetCuts[]): void {
    for (const x of list) this.sheets.push(x);
  }

  /** Earliest minute at or after `from` at which all that was asked for is there; NEVER when it will not be. */
  earliest(from: number): number {
    let at = this.eachFrom(from);
    // What was there may be past its date by the time that the last of it has come.
    while (at < NEVER && !this.isThere(at)) at = this.eachFrom(at);
    return at;
  }

  /** Whether what was there when it was looked from is so at a later minute: bags may be past their date by then. */
  isThere(at: number): boolean {
    return this.asked.every((material) => !this.materials[material]!.dates) || this.eachFrom(at) <= at;
  }

  private eachFrom(from: number): number {
    const opened = this.openAll(from, false);
    let at = from;
    for (const material of this.asked) {
      const sticks = opened.find((x) => x.material === material)?.quantity ?? 0;
      at = Math.max(at, this.earliestOf(material, this.needed[material]! + sticks, from));
    }
    for (const x of opened)
      if (!this.asked.includes(x.material)) at = Math.max(at, this.earliestOf(x.material, x.quantity, from));
    return at;
  }

  /** The first material asked for that will not all be there by a minute; null when all is. */
  shortBy(by: number): Short | null {
    const opened = this.openAll(by, false);
    for (const material of [...this.asked, ...opened.map((x) => x.material)]) {
      const sticks = opened.find((x) => x.material === material)?.quantity ?? 0;
      const wanted = this.needed[material]! + sticks;
      if (this.earliestOf(material, wanted, by) > by) return this.shortOf(material, wanted, by);
    }
    return null;
  }

  private shortOf(material: number, wanted: number, by: number): Short {
    const m = this.materials[material]!;
    const arrived = m.arrivals.reduce((n, x) => (x.at <= by ? n + x.quantity : n), m.onHand);
    const quantity = wanted - (arrived - this.used[material]! - this.heldBack[material]!);
    if (!hasDates(m)) return { material, quantity };
    const missing = missingWith(m, this.dated[material]!, wanted, by);
    return { material, quantity: missing, isPastDate: quantity <= EPSILON };
  }

  private earliestOf(material: number, quantity: number, from: number): number {
    const m = this.materials[material]!;
    if (hasDates(m)) return whenThereByDates(m, this.dated[material]!, quantity, from);
    return whenThere(m, m.onHand - this.used[material]! - this.heldBack[material]!, quantity, from);
  }

  /** Takes what was asked for. */
  use(at: number): void {
    for (const x of this.openAll(at, true)) this.want(x.material, x.quantity);
    for (const material of this.asked) {
      const one = this.materials[material]!;
      const quantity = this.needed[material]!;
      if (at < one.plentyFrom) this.used[material] = this.used[material]! + quantity;
      if (hasDates(one) && isFollowed(one, at))
        this.dated[material] = withUse(one, this.dated[material]!, { at, quantity });
    }
    this.ask();
  }

  /** New sticks and sheets that what is cut opens, by material. */
  private openAll(at: number, commit: boolean): Quantity[] {
    const opened = this.openSticks(at, commit);
    return this.sheets.length === 0 ? opened : [...opened, ...this.openSheets(at, commit)];
  }

  private openSheets(at: number, commit: boolean): Quantity[] {
    return [...new Set(this.sheets.map(({ material }) => material))].flatMap((material) => {
      const { sheets, plentyFrom } = this.materials[material]!;
      if (!sheets || at >= plentyFrom) return [];
      const pieces = this.sheets.filter((one) => one.material === material);
      const thereFrom = (sheet: number) => this.thereFrom(material, sheet);
      const { rests, opened } = cutFromRests(sheets, this.rests[material]!, pieces, at, thereFrom);
      if (commit) this.rests[material] = rests;
      return [{ material, quantity: opened }];
    });
  }

  /**
   * New sticks that the cuts open, by material; each cut goes on the shortest offcut that is long enough. What is placed
   * may be for a time before what was placed already: what is left of a stick that comes after it is not there for it.
   */
  private openSticks(at: number, commit: boolean): Quantity[] {
    const opened: Quantity[] = [];
    const copies: OpenSticks[] = [];
    for (const x of this.cuts) {
      if (at >= this.materials[x.material]!.plentyFrom) continue;
      if (!commit && copies[x.material] === undefined) copies[x.material] = copyOf(this.open[x.material]!);
      const sticks = commit ? this.open[x.material]! : copies[x.material]!;
      const before = opened.find((o) => o.material === x.material)?.quantity ?? 0;
      const quantity = this.cutFrom(sticks, x, at, before);
      const sum = opened.find((o) => o.material === x.material);
      if (sum) sum.quantity += quantity;
      else opened.push({ material: x.material, quantity });
    }
    return opened;
  }

  /**
   * Cuts each piece from the shortest stick that is long enough, and opens another where none is; how many were opened,
   * with `before` of the same question opened already.
   * A stick just cut stays the shortest while it is long enough, and once none is, no older one will be.
   */
  private cutFrom(sticks: OpenSticks, { material, lengthMm, count }: Cuts, at: number, before: number): number {
    const { stickMm, kerfMm, usableMm } = this.materials[material]!;
    const { left, from } = sticks;
    let opened = 0;
    let stick = NONE;
    for (let i = 0; i < count; i++) {
      if (stick === NONE || left[stick]! + EPSILON < lengthMm)
        stick = opened > 0 ? NONE : shortestFor(sticks, lengthMm, at);
      if (stick === NONE) {
        opened++;
        stick = left.push(stickMm) - 1;
        from.push(Math.min(at, this.thereFrom(material, before + opened)));
      }
      // A kerf is lost between two cuts; at the end of a stick there may be too little left for one.
      left[stick] = left[stick]! - lengthMm - kerfMm;
      if (left[stick]! + EPSILON >= usableMm) continue;
      // Nothing can be cut from it any more: kept, it would be looked at with every cut to come.
      left.splice(stick, 1);
      from.splice(stick, 1);
      stick = NONE;
    }
    return opened;
  }

  /** From when on so many more than were used and are asked for are there, whenever those were used. */
  private thereFrom(material: number, more: number): number {
    const { onHand, arrivals } = this.materials[material]!;
    const all = this.used[material]! + this.needed[material]! + this.heldBack[material]! + more;
    let level = onHand;
    if (level + EPSILON >= all) return LONG_OPEN;
    for (const arrival of arrivals) {
      level += arrival.quantity;
      if (level + EPSILON >= all) return arrival.at;
    }
    return NEVER;
  }
}
