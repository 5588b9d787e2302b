import type { HeaviestPiece } from '../../src/usecases/typed/heavy-piece.ts';

const LIFTING: Readonly<Record<HeaviestPiece['lifting'], string>> = {
  one: 'That is within the lower lifting filter, 16 kg (35 lb), held close and between elbow and knuckle.',
  'one with care':
    'That is over the lower lifting filter, 16 kg (35 lb), and within the upper, 25 kg (55 lb): a second person or a trolley for many.',
  two: 'That is over the lifting filter for one person, 25 kg (55 lb): lift it with two.',
  more: 'That is more than two people should lift by hand, 33 kg (73 lb): a trolley, a tilt frame or more people.',
};

/** What the weight of the heaviest piece means for whoever lifts it. */
export const liftingText = ({ name, mass, lifting }: HeaviestPiece): string =>
  `The heaviest piece is ${name} at ${mass}. ${LIFTING[lifting]}`;

/** The same of one piece, where the hand is, with whose filters these are. */
export const pieceLiftText = ({ name, mass, lifting }: HeaviestPiece): string =>
  `${name} weighs ${mass}. ${LIFTING[lifting]} (HSE INDG143.)`;

/** Of a bag, whose weight nobody typed: what is sold is 25 kg and more. By the same filters, as `liftingOf` has them. */
export const BAG_LIFTING =
  'By the lifting filters a bag of 25 kg (55 lb) is the most for one, held close; 27.5 kg (60 lb) is for two, and 36 kg (80 lb) is too much for two as well: opened where it lies (HSE INDG143).';

/** The filters themselves, where no piece is named. */
export const LIFTING_FILTERS =
  'Up to 16 kg (35 lb) one lifts, held close; over that a second person helps with many, over 25 kg (55 lb) with each, and over 33 kg (73 lb) a trolley does. These are the lifting filters of HSE INDG143, and no legal limits.';
