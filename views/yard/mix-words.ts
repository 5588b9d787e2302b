import type { YardMix, YardMixesModel } from '../../src/usecases/yard/show-yard-mixes.ts';
import { countText } from '../parts/day-text.ts';
import { listText, quantityText } from '../parts/quantity-text.ts';

/** "One bag makes 27.2 kg: 2 of Panel 900, or 3 of Panel 600." */
export const yieldLine = ({ yieldText, fills }: Pick<YardMix, 'yieldText' | 'fills'>): string => {
  const each = fills.map(({ name, count }) => `${count} of ${name}`);
  return `One bag makes ${yieldText}${each.length > 0 ? `: ${each.join(', or ')}` : ''}.`;
};

/** "For one bag: 1 bag of Fast-setting mortar, 57 g of Citric acid and 4.7 l of water." */
export const contentsLine = ({
  contents,
  texts,
  waterNote,
}: Pick<YardMix, 'contents' | 'texts' | 'waterNote'>): string => {
  const water = texts.water && waterNote === null ? `${texts.water} of water` : '';
  const noted = waterNote === null ? '' : ` Water, as noted: ${waterNote}.`;
  if (contents.length === 0)
    return `Which materials go into it is not recorded${water ? `, only ${water}` : ''}.${noted}`;
  const all = contents.map(({ name, quantity, unit }) => `${quantityText(quantity, unit)} of ${name}`);
  return `For one bag: ${listText(water ? [...all, water] : all)}.${noted}`;
};

type Worked = Pick<YardMix, 'maxBags' | 'crew' | 'mixMinutes' | 'workingMinutes'>;

/** "Up to 2 bags at once, mixed by 1 person in 10 minutes. It stiffens after 15 minutes." */
export const workLine = ({ maxBags, crew, mixMinutes, workingMinutes }: Worked): string =>
  `Up to ${countText(maxBags, 'bag')} at once, mixed by ${countText(crew, 'person', 'people')} in ${countText(mixMinutes, 'minute')}. It stiffens after ${countText(workingMinutes, 'minute')}.`;

const LONG_MINUTES = 240;
const LONG_HOURS = 48;
const DAY_HOURS = 24;

/** Whole days as days: "72 hours" is "3 days". */
const hoursText = (hours: number): string =>
  hours >= LONG_HOURS && hours % DAY_HOURS === 0 ? countText(hours / DAY_HOURS, 'day') : countText(hours, 'hour');

/** Never shown too short: "140 minutes" for 137, "39 hours" for 38.8. */
const waitText = (minutes: number): string =>
  minutes < LONG_MINUTES ? countText(Math.ceil(minutes / 5) * 5, 'minute') : hoursText(Math.ceil(minutes / 30) / 2);

type Hardens = Pick<YardMix, 'strips' | 'cureHours' | 'reference'>;

/** "Can be stripped after 180 minutes at 10 °C and 90 minutes at 20 °C. Fit to go out, by plan, after 3 days at 20 °C." */
export const hardensLine = ({ strips, cureHours, reference }: Hardens): string => {
  const each = strips.map(({ at, minutes }) => `${waitText(minutes)} at ${at}`);
  const out = cureHours === 0 ? 'once it is stripped' : `after ${hoursText(cureHours)} at ${reference}`;
  return `Can be stripped after ${listText(each)}. Fit to go out, by plan, ${out}.`;
};

/** "2 mixes: Thin panel mix and Coping mix." */
export const mixesAnswer = ({ mixes }: Pick<YardMixesModel, 'mixes'>): string =>
  mixes.length === 0
    ? 'No mix is there yet.'
    : `${countText(mixes.length, 'mix', 'mixes')}: ${listText(mixes.map(({ name }) => name))}.`;

export const PRESET_NAMES = { rapid: 'a fast-setting mix', ordinary: 'an ordinary mix' } as const;
