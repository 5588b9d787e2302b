import { listText } from '../../shared/list-text.ts';
import type { KitFacts, KitPins } from '../../src/usecases/kits/kit-model.ts';
import { countWord } from '../parts/quantity-text.ts';

/** Small numbers as words, within a sentence. */
const word = (count: number): string => countWord(count).toLowerCase();

export const counted = (count: number, one: string): string => `${word(count)} ${count === 1 ? one : `${one}s`}`;

const SHAPES: Readonly<Record<KitFacts['shape'], string>> = { rectangle: '', L: 'An L of ', row: 'A row of ' };

/** "1235 mm by 635 mm takes eight panels and four pins." */
export const kitAnswer = ({ asked, shape, faces, panelCount, pins }: KitFacts): string => {
  const inside = faces === 'inside' && shape !== 'row' ? ' inside' : '';
  const pinText = pins.from === null ? '' : ` and ${counted(pins.count, 'pin')}`;
  return `${SHAPES[shape]}${asked}${inside} takes ${counted(panelCount, 'panel')}${pinText}.`;
};

/** Below the answer: how it comes out, and what it measures the other way. */
export const kitNote = ({ comesOut, outside, inside, height, courses }: KitFacts): string => {
  const exact = comesOut ? `It comes out at ${comesOut}. ` : '';
  const size = inside ? `Outside ${outside}, inside ${inside}` : `${outside} long`;
  return `${exact}${size}, ${height} high in ${counted(courses, 'course')}.`;
};

/** "one at each of four corners and one at each of two joints" */
export const pinsText = ({ corners, joints, ends }: KitPins): string =>
  listText([
    ...(corners > 0 ? [`${word(corners)} at the corners`] : []),
    ...(joints > 0 ? [`${word(joints)} at joints`] : []),
    ...(ends > 0 ? [`${word(ends)} at the ends`] : []),
  ]);

/** How the panels meet, in a sentence or two. */
export const meetingText = ({ shape, courses }: Pick<KitFacts, 'shape' | 'courses'>): string => {
  if (shape === 'row')
    return 'The joints of all courses stand above one another, and each panel is pinned at both ends.';
  if (courses === 1)
    return 'At each corner one side runs through and has the pin; the other butts against it without a pin of its own.';
  return 'At each corner one side runs through and the other butts against it, the other way round in the next course. A pin goes down through whichever panel runs through.';
};
