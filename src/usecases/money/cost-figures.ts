import type { Tx } from '../../../db/open.ts';
import {
  type BoughtGoods,
  boughtGoods,
  costsOfMoulds,
  costsOfYard,
  type MouldCostRow,
} from '../../../db/stores/money-store.ts';
import { materialBuyingsById } from '../../../db/stores/supplier-store.ts';
import type { YardCosts } from '../../../shared/money.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { CostFigures } from '../../engine/cost/figures.ts';
import { minorDigits, toMinor } from '../../engine/cost/minor-units.ts';
import { type MaterialPrices, pricedLots } from '../../engine/cost/priced-lots.ts';
import { type ScrapShare, scrapOnRecord } from './scrap-on-record.ts';

/** What is on record about money, in the yard's currency. */
export interface MoneyOnRecord {
  currency: string;
  costs: YardCosts;
  moulds: readonly MouldCostRow[];
  bought: readonly BoughtGoods[];
  scrap: ScrapShare | null;
  /** What is used up without a recipe. */
  usedUp: CostFigures['usedUp'];
}

/** Reads all that costs are reckoned by. */
export const moneyOnRecord = async (tx: Tx, currency: string): Promise<MoneyOnRecord> => ({
  currency,
  costs: await costsOfYard(tx),
  moulds: await costsOfMoulds(tx),
  bought: await boughtGoods(tx),
  scrap: await scrapOnRecord(tx),
  usedUp: [...(await materialBuyingsById(tx))].flatMap(([material, { perTurn = 0, perBatch = 0 }]) =>
    perTurn + perBatch > 0 ? [{ material, perTurn, perBatch }] : [],
  ),
});

const inMinor = (amount: number | null | undefined, currency: string): number | null =>
  amount === null || amount === undefined ? null : toMinor(amount, currency);

/** All there is of a material in its own unit: of sticks the offcuts count by their length, of sheets the rests by their area. */
const inYard = (material: YardFile['materials'][number]): number => {
  const { onHand, stickMm, offcuts = [], inSheets, sheetWidthMm = 0, sheetLengthMm = 0, rests = [] } = material;
  if (inSheets) {
    const mm2 = rests.reduce((sum, one) => sum + one.widthMm * one.lengthMm * one.count, 0);
    return onHand + mm2 / (sheetWidthMm * sheetLengthMm);
  }
  return stickMm === undefined
    ? onHand
    : onHand + offcuts.reduce((sum, one) => sum + (one.lengthMm * one.count) / stickMm, 0);
};

const pricesOf = (material: YardFile['materials'][number], { bought, currency }: MoneyOnRecord): MaterialPrices => {
  const own = bought.filter((one) => one.material === material.id);
  const priced = (goods: BoughtGoods, on: string) => ({
    ...{ quantity: goods.quantity, on, price: inMinor(goods.price, currency), useBy: goods.useBy },
  });
  const arrived = own.flatMap((goods) => (goods.arrivedOn === null ? [] : [priced(goods, goods.arrivedOn)]));
  const coming = own.flatMap((goods) => (goods.arrivedOn === null ? [priced(goods, goods.on)] : []));
  const unitPrice = material.unitPrice === undefined ? null : material.unitPrice * 10 ** minorDigits(currency);
  return { lots: pricedLots(inYard(material), arrived, coming, material.lots), unitPrice };
};

const mouldCosts = ({ moulds, costs, currency }: MoneyOnRecord): CostFigures['moulds'] =>
  new Map(
    moulds.flatMap(({ id, cost, costTurns }) => {
      const own = inMinor(cost ?? costs.mouldCost, currency);
      const turns = costTurns ?? costs.mouldTurns;
      return own === null || turns === undefined ? [] : [[id, { cost: own, turns }] as const];
    }),
  );

/** What is typed counts; else the yard's own record, where there is enough of it. */
const rejectsOf = ({ costs, scrap }: MoneyOnRecord): number | null =>
  costs.rejectPercent !== undefined ? costs.rejectPercent / 100 : scrap && Math.min(0.95, scrap.scrapped / scrap.of);

/** What a yard's costs are reckoned by, in minor units. */
export const costFigures = (yard: Pick<YardFile, 'materials'>, money: MoneyOnRecord): CostFigures => ({
  wageHour: inMinor(money.costs.wageHour, money.currency),
  sessionFixed: inMinor(money.costs.sessionFixed, money.currency),
  rejects: rejectsOf(money),
  moulds: mouldCosts(money),
  usedUp: money.usedUp.filter(({ material }) => yard.materials.some(({ id }) => id === material)),
  materials: new Map(yard.materials.map((material) => [material.id, pricesOf(material, money)])),
});
