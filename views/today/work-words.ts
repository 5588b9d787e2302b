import { listText } from '../../shared/list-text.ts';
import type { BatchSlip, BatchStep, IngredientFacts, PrepStep } from '../../src/usecases/today/session-step.ts';
import { isBag, ofText } from './slip-text.ts';
import { amountOfText, cutText } from './today-text.ts';

/*
 * How the work is done, in order, where the hand is. Common practice, no source: what the pack of a product says comes first.
 */

/** Fibre balls up where it is worked for long. Its name is all there is to know it by. */
const isFibre = ({ name }: IngredientFacts): boolean => /fib(re|er)/i.test(name);

const waterLine = ({ water, waterNote }: BatchSlip): string[] => {
  if (water) return [`${water} of water first`];
  return waterNote ? [`Water first, as noted for a bag: ${waterNote}`] : ['Water first'];
};

/** What goes into the mixer in which order: water, what is measured into it, the bags in parts, fibre last. */
export const addingLines = (slip: BatchSlip): string[] => {
  const { ingredients } = slip;
  const bags = ingredients.filter((one) => isBag(one));
  const fibre = ingredients.filter((one) => isFibre(one) && !isBag(one));
  const measured = ingredients.filter((one) => !bags.includes(one) && !fibre.includes(one));
  return [
    ...waterLine(slip),
    ...(measured.length > 0 ? [`${listText(measured.map(ofText))}, stirred into it`] : []),
    ...(bags.length > 0 ? [`${listText(bags.map(ofText))}, in parts while it turns`] : []),
    ...(fibre.length > 0 ? [`${listText(fibre.map(ofText))}, last and not for long`] : []),
  ];
};

/** What is done once it is mixed: fill, level, vibrate, lay in what is laid in, mark. */
export const fillingText = ({ fittings }: Pick<BatchStep, 'fittings'>): string =>
  [
    'Fill, level, and vibrate until no more air comes up.',
    ...(fittings.length > 0 ? [`Lay in ${listText(fittings.map(amountOfText))} once it thickens.`] : []),
    'Scratch in the day and the mould, and cover it.',
  ].join(' ');

/** What a mould asks for while it is set up, in order, with what is cut for it and from what. */
export const setUpLines = ({ clean, changeFrom, piece, sealed, cuts, fittings }: PrepStep): string[] => [
  ...(clean ? ['Clean it'] : []),
  ...(changeFrom === null ? [] : [`Change it over from ${changeFrom}`]),
  `Boards and ends of its own set, by their numbers, pinned and square, for ${piece}`,
  `Release oil, thin and wiped off${sealed ? ', now that its coat is dry' : ''}; none on steel`,
  ...(cuts.length > 0 ? [`Cut ${listText(cuts.map(cutText))}; put in, closed and straight`] : []),
  ...(fittings.length > 0 ? [`Lay ready ${listText(fittings.map(amountOfText))}`] : []),
];

/** Wherever a time stands at which a piece may come out. */
export const PLANNING_ONLY = 'Planning time only: check the piece.';

/** What is looked at when a piece comes out. */
export const STRIP_CHECK = `${PLANNING_ONLY} Look at the corners, whether a pin goes through each sleeve, blowholes, and the thickness.`;
