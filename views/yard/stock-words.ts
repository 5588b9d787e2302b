import { countText } from '../../shared/plural.ts';
import type { YardMaterial, YardStockModel } from '../../src/usecases/yard/show-yard-stock.ts';
import { moneyText } from '../parts/money-text.ts';
import { amountText } from '../parts/quantity-text.ts';

/** "18 bags in the yard, always keep 4 bags." "2 sticks in the yard, offcuts 2232 mm." */
export const heldText = ({
  inYard,
  keep,
  texts,
  inSheets,
}: Pick<YardMaterial, 'inYard' | 'keep' | 'texts' | 'inSheets'>): string =>
  `${amountText(inYard.quantity, inYard.unit)} in the yard${texts.offcuts ? `, offcuts ${texts.offcuts}` : ''}${inSheets && texts.rests ? `, rests ${texts.rests}` : ''}${keep.quantity > 0 ? `, always keep ${amountText(keep.quantity, keep.unit)}` : ''}.`;

const comesText = (days: number | undefined): string => {
  if (days === undefined) return 'Cannot be bought.';
  return days === 0 ? 'Had on the day.' : `Comes in ${countText(days, 'day')}.`;
};

type Bought = Pick<YardMaterial, 'leadDays' | 'pack' | 'packOf' | 'unitPrice'>;

/** "Comes in 3 days. Sold in packs of 5 bags for €47.00." "Comes in 3 days. €9.40 each." */
export const boughtText = ({ leadDays, pack, packOf, unitPrice }: Bought, currency: string): string => {
  const price = unitPrice === undefined ? null : moneyText(unitPrice * pack, currency);
  if (pack === 1) return `${comesText(leadDays)}${price ? ` ${price} each.` : ''}`;
  return `${comesText(leadDays)} Sold in packs of ${amountText(packOf.quantity, packOf.unit)}${price ? ` for ${price}` : ''}.`;
};

/** "14 materials in the stock book. There is no Mesh, and it cannot be bought." */
export const stockAnswer = ({ materials }: Pick<YardStockModel, 'materials'>): string => {
  if (materials.length === 0) return 'Nothing is in the stock book yet.';
  const out = materials.filter(({ onHand, leadDays }) => onHand === 0 && leadDays === undefined);
  const none = out.length === 0 ? '' : ` There is no ${out[0]!.name}, and it cannot be bought.`;
  return `${countText(materials.length, 'material')} in the stock book.${none}`;
};
