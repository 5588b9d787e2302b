import { type CutDemand, cutPlan } from '../cut/cut-plan.ts';
import { cutSheets } from '../cut/mesh/cut-sheets.ts';
import type { SheetCuts } from './open-sheets.ts';
import { type CompiledMaterial, NONE } from './problem.ts';
import { Stock } from './stock.ts';

type Quantity = { material: number; quantity: number };
type Cuts = { material: number; lengthMm: number; count: number };

/** What one fixed task takes, and when. */
interface Taken {
  at: number;
  goods: Quantity[];
  cuts: Cuts[];
  sheets: SheetCuts[];
}

/** Sticks there are by a minute for what is cut from them, once what is used uncut by then is taken. */
const sticksBy =
  ({ onHand, arrivals, plentyFrom }: CompiledMaterial, used: readonly { at: number; quantity: number }[]) =>
  (minute: number): number => {
    if (minute >= plentyFrom) return Number.POSITIVE_INFINITY;
    const there = arrivals.reduce((sum, x) => (x.at <= minute ? sum + x.quantity : sum), onHand);
    return used.reduce((sum, x) => (x.at <= minute ? sum - x.quantity : sum), there);
  };

/**
 * The stock while fixed tasks are looked at one after another. It asks as `Stock` does, where taking cuts as they come is
 * enough; where it is not, all cuts of the fixed tasks are cut anew, as the plan they are from will have done it.
 */
export class FixedStock {
  private readonly stock: Stock;
  private readonly taken: Taken[] = [];
  private asked: Omit<Taken, 'at'> = { goods: [], cuts: [], sheets: [] };

  constructor(private readonly materials: CompiledMaterial[]) {
    this.stock = new Stock(materials, new Int32Array(materials.length));
  }

  ask(): void {
    this.asked = { goods: [], cuts: [], sheets: [] };
  }

  add(list: readonly Quantity[], times = 1): void {
    for (const { material, quantity } of list) this.asked.goods.push({ material, quantity: quantity * times });
  }

  addCuts(list: readonly Cuts[]): void {
    this.asked.cuts.push(...list);
  }

  addSheets(list: readonly SheetCuts[]): void {
    this.asked.sheets.push(...list);
  }

  private askBut(proven: ReadonlySet<number>): void {
    this.stock.ask();
    this.stock.add(this.asked.goods.filter(({ material }) => !proven.has(material)));
    this.stock.addCuts(this.asked.cuts.filter(({ material }) => !proven.has(material)));
    this.stock.addSheets(this.asked.sheets.filter(({ material }) => !proven.has(material)));
  }

  /** Whether all that was taken and is asked for can be cut from what is there, in some other way. */
  private canBeCut(material: number, at: number): boolean {
    const all = [...this.taken, { at, ...this.asked }];
    const own = <T extends { material: number }>(list: readonly T[]) => list.filter((x) => x.material === material);
    const used = all.flatMap((task) => own(task.goods).map(({ quantity }) => ({ at: task.at, quantity })));
    const cuts = all.flatMap((task): CutDemand[] =>
      own(task.cuts).map(({ lengthMm, count }) => ({ lengthMm, count, at: task.at, for: String(task.at) })),
    );
    const pieces = all.map((task) => ({ at: task.at, for: String(task.at), pieces: own(task.sheets) }));
    const there = sticksBy(this.materials[material]!, used);
    if (used.some((x) => there(x.at) < 0)) return false;
    const { sheets } = this.materials[material]!;
    if (sheets && pieces.some((task) => task.pieces.length > 0)) return cutSheets(sheets, pieces, there) !== null;
    if (cuts.length === 0) return false;
    return cutPlan(this.materials[material]!, cuts, there) !== null;
  }

  /** The first material asked for that will not all be there by a minute; NONE when all is. */
  shortBy(at: number): number {
    const proven = new Set<number>();
    for (;;) {
      this.askBut(proven);
      const short = this.stock.shortBy(at);
      if (!short) return NONE;
      if (!this.canBeCut(short.material, at)) return short.material;
      proven.add(short.material);
    }
  }

  /** Takes what was asked for. */
  use(at: number): void {
    this.askBut(new Set());
    this.stock.use(at);
    this.taken.push({ at, ...this.asked });
    this.ask();
  }
}
