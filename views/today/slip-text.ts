import type { BatchSlip, IngredientFacts } from '../../src/usecases/today/session-step.ts';
import { quantityText } from '../parts/quantity-text.ts';
import { amountOfText } from './today-text.ts';

const isBag = ({ unit }: IngredientFacts): boolean => unit === 'bag';
const ofText = (one: IngredientFacts): string => (one.measured ? `${one.measured} of ${one.name}` : amountOfText(one));

/** What goes into a batch, a line each, the bags and the water first: "2 bags of Rapid mortar", "9.4 l of water". */
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
