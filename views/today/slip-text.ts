import type { BatchSlip, IngredientFacts, LeftOver, LeftOverWhy } from '../../src/usecases/today/session-step.ts';
import { quantityText } from '../parts/quantity-text.ts';
import { amountOfText } from './today-text.ts';

/** Whether it is counted in bags. */
export const isBag = ({ unit }: IngredientFacts): boolean => unit === 'bag';

/** "115 g of Citric acid", "2 bags of Fast-setting mortar" */
export const ofText = (one: IngredientFacts): string =>
  one.measured ? `${one.measured} of ${one.name}` : amountOfText(one);

/** What goes into a batch, a line each, the bags and the water first: "2 bags of Fast-setting mortar", "9.4 l of water". */
export const slipLines = ({ ingredients, water, waterNote }: BatchSlip): string[] => [
  ...ingredients.filter(isBag).map(ofText),
  ...(water ? [`${water} of water`] : []),
  ...(waterNote ? [`Water, as noted for a bag: ${waterNote}`] : []),
  ...ingredients.filter((one) => !isBag(one)).map(ofText),
];

const shortText = ({ measured, quantity, unit, name }: IngredientFacts): string =>
  `${measured ?? quantityText(quantity, unit)} ${name}`;

/** The same in one line: "2 bags, 9.4 l water, 114 g Citric acid". The bags that the batch is counted in need no name. */
export const slipText = ({ bags, ingredients, water, waterNote }: BatchSlip): string => {
  const counted = ingredients.find((one) => isBag(one) && one.quantity === bags);
  const parts = [
    quantityText(bags, 'bag'),
    ...ingredients.filter((one) => isBag(one) && one !== counted).map(shortText),
    ...(water ? [`${water} water`] : []),
    ...(waterNote ? [`water: ${waterNote}`] : []),
    ...ingredients.filter((one) => !isBag(one)).map(shortText),
  ];
  return parts.join(parts.some((part) => part.includes(',')) ? '; ' : ', ');
};

const whyText = (why: LeftOverWhy): string => {
  if (why.kind === 'nothing so light') return 'no piece of this mix is so light';
  if (why.kind === 'nothing to pour') return 'no other piece of this mix is wanted, or has a mould free, just then';
  const { fills, minutes, alike, workingMinutes } = why;
  const which = alike ? `${fills} fills of ${minutes} min do` : `one more fill, of ${minutes} min, does`;
  return `${which} not fit ${workingMinutes} min of working time`;
};

/** "0.5 of a bag is left over: 2 fills of 8 min do not fit 15 min of working time." */
export const leftOverText = ({ bags, why }: LeftOver): string => {
  const much = bags < 0.95 ? `${bags.toFixed(1)} of a bag is` : `${quantityText(Number(bags.toFixed(1)), 'bag')} are`;
  return `${much} left over: ${whyText(why)}.`;
};
