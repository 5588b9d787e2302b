import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { YardMix, YardMixesModel } from '../../src/usecases/yard/show-yard-mixes.ts';
import { quantityText } from '../parts/quantity-text.ts';

/** "27.2 kg: 2 of Panel 900, or 3 of Panel 600" */
export const yieldText = ({ yieldText: mass, fills }: Pick<YardMix, 'yieldText' | 'fills'>): string => {
  const each = fills.map(({ name, count }) => `${count} of ${name}`);
  return `${mass}${each.length > 0 ? `: ${each.join(', or ')}` : ''}`;
};

/** "1 bag of Fast-setting mortar, 57 g of Citric acid and 4.7 l of water" */
export const contentsText = ({
  contents,
  texts,
  waterNote,
}: Pick<YardMix, 'contents' | 'texts' | 'waterNote'>): string => {
  const water = texts.water && waterNote === null ? `${texts.water} of water` : '';
  const noted = waterNote === null ? '' : `. Water, as noted: ${waterNote}`;
  if (contents.length === 0) return `not recorded${water ? `, only ${water}` : ''}${noted}`;
  const all = contents.map(({ name, quantity, unit }) => `${quantityText(quantity, unit)} of ${name}`);
  return `${listText(water ? [...all, water] : all)}${noted}`;
};

/** "10 minutes, up to 2 bags at once, by 1 person" */
export const mixedText = ({ maxBags, crew, mixMinutes }: Pick<YardMix, 'maxBags' | 'crew' | 'mixMinutes'>): string =>
  `${countText(mixMinutes, 'minute')}, up to ${countText(maxBags, 'bag')} at once, by ${countText(crew, 'person', 'people')}`;

/** "after 15 minutes" */
export const stiffensText = ({ workingMinutes }: Pick<YardMix, 'workingMinutes'>): string =>
  `after ${countText(workingMinutes, 'minute')}`;

const LONG_MINUTES = 240;
const LONG_HOURS = 48;
const DAY_HOURS = 24;

/** Whole days as days: "72 hours" is "3 days". */
const hoursText = (hours: number): string =>
  hours >= LONG_HOURS && hours % DAY_HOURS === 0 ? countText(hours / DAY_HOURS, 'day') : countText(hours, 'hour');

/** Never shown too short: "140 minutes" for 137, "39 hours" for 38.8. */
const waitText = (minutes: number): string =>
  minutes < LONG_MINUTES ? countText(Math.ceil(minutes / 5) * 5, 'minute') : hoursText(Math.ceil(minutes / 30) / 2);

/** "after 180 minutes at 10 °C" */
export const stripText = ({ at, minutes }: YardMix['strips'][number]): string => `after ${waitText(minutes)} at ${at}`;

/** "after 3 days at 20 °C", "once it is stripped" */
export const fitText = ({ cureHours, reference }: Pick<YardMix, 'cureHours' | 'reference'>): string =>
  cureHours === 0 ? 'once it is stripped' : `after ${hoursText(cureHours)} at ${reference}`;

/** "2 mixes: Thin panel mix and Coping mix." */
export const mixesAnswer = ({ mixes }: Pick<YardMixesModel, 'mixes'>): string =>
  mixes.length === 0
    ? 'No mix is there yet.'
    : `${countText(mixes.length, 'mix', 'mixes')}: ${listText(mixes.map(({ name }) => name))}.`;

export const PRESET_NAMES = { rapid: 'a fast-setting mix', ordinary: 'an ordinary mix' } as const;
