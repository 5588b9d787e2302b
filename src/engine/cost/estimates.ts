import type { Kit } from '../../../shared/kit.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { type Cost, CostSum } from './cost.ts';
import { type EstimateGround, estimateGoods, estimateKit, estimatePiece } from './estimate.ts';

const times = (cost: Cost, quantity: number): Cost => new CostSum().addCost(cost, quantity).cost;

/** Estimates of what a yard makes and sells. */
export interface Estimates {
  ofCasting(id: string): Cost;
  ofKit(id: string): Cost;
  /** Of one line of an order, all of its quantity. */
  ofLine(line: OrderLine): Cost;
  /** What is packed with the pieces of a line, all of its quantity: parts, pins, and packing it. */
  ofPacking(line: OrderLine): Cost;
  /** Of that the work alone, without what is packed. */
  ofPackingWork(line: OrderLine): Cost;
}

const remembered = (reckon: (id: string) => Cost): ((id: string) => Cost) => {
  const known = new Map<string, Cost>();
  return (id) => {
    const cost = known.get(id) ?? reckon(id);
    known.set(id, cost);
    return cost;
  };
};

const NOTHING = new CostSum().cost;

/** What a yard makes, estimated; what it does not have any more costs nothing. Each thing is reckoned once. */
export const estimatesOf = (ground: EstimateGround): Estimates => {
  const { castings, kits } = ground.yard;
  const ofCasting = remembered((id) => {
    const casting = castings.find((one) => one.id === id);
    return casting ? estimatePiece(casting, ground) : NOTHING;
  });
  const ofKit = remembered((id) => {
    const kit = kits.find((one) => one.id === id);
    return kit ? estimateKit(kit, ofCasting, ground) : NOTHING;
  });
  const ofLine = ({ kit, casting, material, quantity }: OrderLine): Cost => {
    if (kit !== undefined) return times(ofKit(kit), quantity);
    if (casting !== undefined) return times(ofCasting(casting), quantity);
    return material === undefined ? NOTHING : estimateGoods(material, quantity, ground);
  };
  const packed = (kit: Kit, quantity: number): Cost =>
    times(
      estimateKit(kit, () => NOTHING, ground),
      quantity,
    );
  const kitOf = ({ kit: id }: OrderLine) => kits.find((one) => one.id === id);
  const ofPacking = (line: OrderLine): Cost => {
    const { material, quantity } = line;
    const kit = kitOf(line);
    if (kit) return packed(kit, quantity);
    return material === undefined ? NOTHING : estimateGoods(material, quantity, ground);
  };
  const ofPackingWork = (line: OrderLine): Cost => {
    const kit = kitOf(line);
    return kit ? packed({ ...kit, parts: [], cuts: [] }, line.quantity) : NOTHING;
  };
  return { ofCasting, ofKit, ofLine, ofPacking, ofPackingWork };
};
