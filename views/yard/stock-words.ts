import type { YardMaterial, YardStockModel } from '../../src/usecases/show-yard-stock.ts';
import { countText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';
import { quantityText } from '../parts/quantity-text.ts';

const amountText = ({ quantity, unit }: { quantity: number; unit: string }): string => quantityText(quantity, unit);

/** "18 bags in the yard, always keep 4 bags." */
export const heldText = ({ inYard, keep }: Pick<YardMaterial, 'inYard' | 'keep'>): string =>
  `${amountText(inYard)} in the yard${keep.quantity > 0 ? `, always keep ${amountText(keep)}` : ''}.`;

const comesText = (days: number | undefined): string => {
  if (days === undefined) return 'Cannot be bought.';
  return days === 0 ? 'Had on the day.' : `Comes in ${countText(days, 'day')}.`;
};

type Bought = Pick<YardMaterial, 'leadDays' | 'packOf' | 'unitPrice' | 'unit'>;

/** "Comes in 3 days. Sold in packs of 5 bags. €9.40 for one bag." */
export const boughtText = ({ leadDays, packOf, unitPrice, unit }: Bought, currency: string): string => {
  const packs = packOf.quantity === 1 ? '' : ` Sold in packs of ${amountText(packOf)}.`;
  const price = unitPrice === undefined ? '' : ` ${moneyText(unitPrice, currency)} for one ${unit}.`;
  return `${comesText(leadDays)}${leadDays === undefined ? '' : packs}${price}`;
};

/** "14 materials in the stock book. There is no Mesh, and it cannot be bought." */
export const stockAnswer = ({ materials }: Pick<YardStockModel, 'materials'>): string => {
  if (materials.length === 0) return 'Nothing is in the stock book yet.';
  const out = materials.filter(({ onHand, leadDays }) => onHand === 0 && leadDays === undefined);
  const none = out.length === 0 ? '' : ` There is no ${out[0]!.name}, and it cannot be bought.`;
  return `${countText(materials.length, 'material')} in the stock book.${none}`;
};
