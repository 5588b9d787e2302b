import type { Casting } from '../../../shared/casting.ts';
import type { Kit } from '../../../shared/kit.ts';
import type { Cut, SheetCut } from '../../../shared/material.ts';
import { COST_KINDS } from '../../../shared/money.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { usableMm } from '../book/offcuts.ts';
import { areaOf } from '../cut/mesh/block.ts';
import { cutSheets } from '../cut/mesh/cut-sheets.ts';
import { type SheetStock, sheetStockOf } from '../cut/mesh/sheet-stock.ts';
import { type BatchToCharge, chargeAllGoods, chargeBatch } from './charge-batch.ts';
import { type Bearer, Charges } from './charges.ts';
import { type Cost, CostSum } from './cost.ts';
import { chargeCuts, lostMm } from './cuts-of-plan.ts';
import { type CostFigures, takingGoods } from './figures.ts';
import { halfEven } from './minor-units.ts';
import { usualBatch } from './usual-batch.ts';

/** What an estimate is reckoned from; `perMinute` is what a minute of work bears of a session's own cost (`sessionShare`). */
export interface EstimateGround {
  yard: YardFile;
  figures: CostFigures;
  perMinute: number;
}

/** The one who bears all of an estimate. */
const OWN: Bearer[] = [{ owner: 'own', weight: 1 }];

/** Charges cuts as they come out of whole sticks of nothing else: what is left of a stick is shared by its pieces. */
const chargeEstimatedCuts = (
  charges: Charges,
  cuts: readonly Cut[],
  times: number,
  { yard, figures }: EstimateGround,
) => {
  const take = takingGoods(figures);
  for (const { material: id, lengthMm, count } of cuts) {
    const material = yard.materials.find((one) => one.id === id);
    if (material?.stickMm === undefined || count === 0) continue;
    const fit = Math.max(1, Math.floor((material.stickMm + material.kerfMm) / (lengthMm + material.kerfMm)));
    const lost = lostMm(material.stickMm, material, [{ lengthMm, count: fit }], usableMm(yard, id));
    const pieces = (count * times) / material.stickMm;
    chargeCuts(charges, take, { material: id, inPieces: pieces * lengthMm, inAll: (pieces * lost) / fit }, OWN);
  }
};

/** Of one piece, as many of it being cut from a sheet as go on it; in sheets. */
const sheetShare = (stock: SheetStock, cut: SheetCut): { inPieces: number; inAll: number } => {
  const { sheet } = stock;
  const piece = stock.pieceOf(cut);
  const most = Math.max(1, Math.floor((sheet.across * sheet.along) / areaOf(piece.ways[0]!)));
  const [first] = cutSheets({ ...stock, rests: [] }, [{ at: 0, for: '', pieces: [{ piece, count: most }] }])!;
  const mm2 = (one: { widthMm: number; lengthMm: number }) => one.widthMm * one.lengthMm;
  const kept = first!.kept.reduce((sum, one) => sum + mm2(one), 0);
  const inAll = (mm2(sheet.size) - kept) / first!.pieces.length / mm2(sheet.size);
  return { inPieces: mm2(cut) / mm2(sheet.size), inAll };
};

/** The same of pieces of sheets. */
const chargeEstimatedSheets = (
  charges: Charges,
  cuts: readonly SheetCut[],
  times: number,
  { yard, figures }: EstimateGround,
) => {
  const take = takingGoods(figures);
  for (const cut of cuts) {
    const material = yard.materials.find((one) => one.id === cut.material);
    const stock = material && sheetStockOf(material, yard.castings);
    if (!stock || cut.count === 0) continue;
    const { inPieces, inAll } = sheetShare(stock, cut);
    const pieces = cut.count * times;
    chargeCuts(charges, take, { material: cut.material, inPieces: pieces * inPieces, inAll: pieces * inAll }, OWN);
  }
};

/** Minutes of work at the wage, with what they bear of a session. */
const addMinutes = (sum: CostSum, minutes: number, common: number, { figures, perMinute }: EstimateGround): void => {
  const wage = (figures.wageHour ?? 0) / 60;
  sum.add('work', halfEven(wage * minutes));
  sum.add('session', halfEven(wage * common + perMinute * minutes));
  if (minutes > 0 && figures.wageHour === null) sum.lacks({ what: 'wage', id: '' });
  if (minutes > 0 && figures.sessionFixed === null) sum.lacks({ what: 'session', id: '' });
};

/** The mean turn of the moulds that it may be poured in. */
const addMould = (sum: CostSum, casting: Casting, { yard, figures }: EstimateGround): number => {
  const own = yard.moulds.filter(
    (one) => one.condition !== 'retired' && one.makes.some((make) => make.casting === casting.id),
  );
  const known = own.flatMap(({ id }) => figures.moulds.get(id) ?? []);
  const mean = known.reduce((all, { cost, turns }) => all + cost / turns, 0) / Math.max(1, known.length);
  sum.add('mould', halfEven(mean));
  for (const { id } of own) if (!figures.moulds.has(id)) sum.lacks({ what: 'mould', id });
  const coats = own.reduce((all, { oilMinutes, oilEveryTurns }) => all + oilMinutes / (oilEveryTurns ?? Infinity), 0);
  return coats / Math.max(1, own.length);
};

/** A good piece also pays for those that come out as scrap: of every hundred made at 5 %, 95 are sold. */
const addRejects = (sum: CostSum, { rejects }: CostFigures): void => {
  if (rejects === null) sum.lacks({ what: 'rejects', id: '' });
  else sum.add('rejects', halfEven((sum.cost.total * rejects) / (1 - rejects)));
};

const asEach = (cost: Cost, pieces: number): CostSum => {
  const each = new CostSum();
  for (const kind of COST_KINDS) each.add(kind, halfEven(cost.parts[kind] / pieces));
  for (const figure of cost.missing) each.lacks(figure);
  return each;
};

/** The share that one piece has of what a batch takes in all: by weight, as the mix is. */
const shareOfOne = (casting: Casting, { pieces }: Pick<BatchToCharge, 'pieces'>): number => {
  const kg = pieces.reduce((sum, one) => sum + one.casting.kg, 0);
  return kg > 0 ? casting.kg / kg : 1 / pieces.length;
};

/**
 * What one good piece costs, made as it is usually mixed for (`usualBatch`), of the bags that are used next. Each part is
 * rounded half-even by itself, so that the parts come to the total.
 */
export const estimatePiece = (casting: Casting, ground: EstimateGround): Cost => {
  const mix = ground.yard.mixes.find(({ id }) => id === casting.mix)!;
  const { pieces, others, bags } = usualBatch(casting, ground.yard);
  const charges = new Charges();
  const own = Array.from({ length: pieces }, () => ({ owner: 'own', casting }));
  const batch = { mix, bags, pieces: [...own, ...others.map((one) => ({ owner: 'others', casting: one }))] };
  chargeBatch(charges, batch, takingGoods(ground.figures), ground.figures);
  chargeEstimatedCuts(charges, casting.cuts, pieces, ground);
  chargeEstimatedSheets(charges, casting.sheets ?? [], pieces, ground);
  const sum = asEach(charges.of('own').cost, pieces);
  const coat = addMould(sum, casting, ground);
  const ofBatch = ((mix.mixMinutes + mix.washMinutes) * shareOfOne(casting, batch) + casting.fillMinutes) * mix.crew;
  const alone = casting.cleanMinutes + casting.prepMinutes + casting.stripMinutes * casting.stripCrew;
  addMinutes(sum, ofBatch + alone, coat, ground);
  addRejects(sum, ground.figures);
  return sum.cost;
};

/** What a kit costs: its pieces, its parts, what is cut for it, and packing it. */
export const estimateKit = (kit: Kit, pieceCost: (casting: string) => Cost, ground: EstimateGround): Cost => {
  const charges = new Charges();
  const parts = kit.parts.filter(({ quantity }) => quantity > 0);
  const goods = new Map(parts.map(({ material, quantity }) => [material, [{ owner: 'own', weight: quantity }]]));
  chargeAllGoods(charges, takingGoods(ground.figures), goods);
  chargeEstimatedCuts(charges, kit.cuts, 1, ground);
  const sum = charges.of('own');
  addMinutes(sum, kit.packMinutes, 0, ground);
  for (const { casting, count } of kit.pieces) if (count > 0) sum.addCost(pieceCost(casting), count);
  return sum.cost;
};

/** What a quantity of a material costs that is sold as it is. */
export const estimateGoods = (material: string, quantity: number, ground: EstimateGround): Cost => {
  const charges = new Charges();
  if (quantity > 0)
    chargeAllGoods(charges, takingGoods(ground.figures), new Map([[material, [{ owner: 'own', weight: quantity }]]]));
  return charges.of('own').cost;
};
