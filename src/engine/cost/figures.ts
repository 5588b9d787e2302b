import type { MissingFigure } from './cost.ts';
import { type MaterialPrices, type TakenPrice, takingFrom } from './priced-lots.ts';

/** What a mould cost, and how many turns that is spread over. */
interface MouldCost {
  /** In minor units. */
  cost: number;
  turns: number;
}

/** What a yard's costs are reckoned by, in minor units of its money; null or not there: nobody said. */
export interface CostFigures {
  /** An hour of one person's work. */
  wageHour: number | null;
  /** What each session costs, whatever is made in it: rent, fuel, the way there. */
  sessionFixed: number | null;
  /** The share of pieces that come out as scrap: 0.05 is one in twenty; below 1. */
  rejects: number | null;
  /** By mould. */
  moulds: ReadonlyMap<string, MouldCost>;
  /** What is used up without a recipe: so much for each piece, and for each batch. In the unit of the material. */
  usedUp: readonly { material: string; perTurn: number; perBatch: number }[];
  /** By material. */
  materials: ReadonlyMap<string, MaterialPrices>;
}

/** Takes so much of a material, in its own unit, and says what it costs. */
export type TakeGoods = (material: string, quantity: number) => TakenPrice;

const NO_PRICES: MaterialPrices = { lots: [], unitPrice: null };

/** Takes materials from the lots they are of, each from where the last take left off. */
export const takingGoods = ({ materials }: Pick<CostFigures, 'materials'>): TakeGoods => {
  const queues = new Map<string, (quantity: number) => TakenPrice>();
  return (material, quantity) => {
    const queue = queues.get(material) ?? takingFrom(materials.get(material) ?? NO_PRICES);
    queues.set(material, queue);
    return queue(quantity);
  };
};

/** The price of a material that nobody said. */
export const noPrice = (material: string): MissingFigure => ({ what: 'price', id: material });
