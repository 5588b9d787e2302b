import { countText } from '../../shared/plural.ts';
import type { TemperatureLine, TemperaturesModel } from '../../src/usecases/yard/show-temperatures.ts';
import type { WeatherModel } from '../../src/usecases/yard/show-weather.ts';
import { dayText } from '../parts/day-text.ts';

export const MONTH_NAMES = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
];

/** "6 °C from Mon 12 Apr to Sun 18 Apr." */
export const lineText = ({ from, to, text }: Pick<TemperatureLine, 'from' | 'to' | 'text'>, today: string): string =>
  `${text} from ${dayText(from, today)} ${to === null ? 'on' : `to ${dayText(to, today)}`}.`;

/** "9 °C is expected today." */
export const temperaturesAnswer = ({ now }: Pick<TemperaturesModel, 'now'>): string =>
  now === null ? 'No temperature is expected yet.' : `${now} is expected today.`;

/** "3 of the coming 7 days are planned by the hour." */
export const weatherAnswer = ({ days }: Pick<WeatherModel, 'days'>): string => {
  const known = days.filter(({ low }) => low !== '').length;
  return known === 0
    ? 'What will the coming days be like?'
    : `${known === days.length ? 'All' : known} of the coming ${days.length} days are planned by the hour.`;
};

/** "3 days are filled in. Nothing has been saved yet: look, then save." */
export const filledInText = (days: number): string =>
  `${countText(days, 'day is', 'days are')} filled in. Nothing has been saved yet: look, then save.`;

/** "They are known until May 2028; later months count as that one. Save them again to go on." */
export const endsText = (last: string): string =>
  `The months are known until ${MONTH_NAMES[Number(last.slice(5, 7)) - 1]} ${last.slice(0, 4)}; all after it count like that one. Save them once more to go on.`;
