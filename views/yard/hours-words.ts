import { DAY_NAMES } from '../../shared/day-names.ts';
import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import { WEEKDAYS } from '../../shared/time.ts';
import type {
  DayHours,
  DaySpan,
  RepeatingHours,
  TooShort,
  YardHoursModel,
} from '../../src/usecases/yard/show-yard-hours.ts';
import { hoursText } from '../parts/clock-text.ts';
import { dayText, onDayText } from '../parts/day-text.ts';

type Clocked = Pick<DayHours, 'start' | 'end'>;

/** "08:00" is "8:00". */
const clock = (time: string): string => time.replace(/^0/, '');
const fromTo = ({ start, end }: Clocked): string => `${clock(start)} to ${clock(end)}`;

/** "Saturdays and Wednesdays", "Every second Saturday", "Every day" */
const daysText = ({ rhythm, rule }: Pick<RepeatingHours, 'rhythm' | 'rule'>): string => {
  if (!rhythm) return `By the rule ${rule}`;
  const { days, everyWeeks } = rhythm;
  if (days.length === WEEKDAYS.length) return everyWeeks === 1 ? 'Every day' : 'Every day of every second week';
  const names = days.map((day) => DAY_NAMES[day]);
  return everyWeeks === 1 ? listText(names.map((name) => `${name}s`)) : `Every second ${listText(names)}`;
};

const MAY_TEXT = { all: '', strip: ', only stripping and packing', kept: ', not every kind of work' };

/** Between which dates, where that says something: hours that began are simply so. */
const spanText = ({ from, until, rhythm }: RepeatingHours, today: string): string => {
  const starts = from > today || rhythm?.everyWeeks === 2 ? [`from ${dayText(from, today)}`] : [];
  const ends = until ? [`until ${dayText(until, today)}`] : [];
  return [...starts, ...ends].map((part) => `, ${part}`).join('');
};

/** "Saturdays 8:00 to 13:30, 1 person." "Every second Saturday 8:00 to 12:00, 2 people, from Sat 10 Apr." */
export const repeatingText = (hours: RepeatingHours, today: string): string =>
  `${daysText(hours)} ${fromTo(hours)}, ${countText(hours.crew, 'person', 'people')}${MAY_TEXT[hours.may]}${spanText(hours, today)}.`;

/** "20 minutes: setting up and clearing up take 25. Nothing can be done in them." */
export const tooShortText = ({ minutes, needed }: TooShort): string =>
  `${countText(minutes, 'minute')}: setting up and clearing up take ${needed}. Nothing can be done in them.`;

/** "Sat 10 Apr, Sat 17 Apr and Sat 24 Apr" */
export const datesText = (dates: readonly string[], today: string): string =>
  listText(dates.map((date) => dayText(date, today)));

/** "Fri 11 Jun 9:00 to 12:00, 1 person, instead of the usual hours." */
export const singleDayText = (hours: DayHours, today: string): string =>
  `${dayText(hours.date, today)} ${fromTo(hours)}, ${countText(hours.crew, 'person', 'people')}${MAY_TEXT[hours.may]}${hours.instead ? ', instead of the usual hours' : ''}.`;

/** "Mon 2 Aug to Sun 15 Aug." */
export const offText = ({ from, to }: DaySpan, today: string): string =>
  from === to ? `${dayText(from, today)}.` : `${dayText(from, today)} to ${dayText(to, today)}.`;

/** "The next session is on Saturday, 8:00 to 13:30." */
export const hoursAnswer = ({ next, today }: Pick<YardHoursModel, 'next' | 'today'>): string => {
  if (!next) return 'Nobody works in the days that are planned.';
  return `The next session is ${onDayText(next.start.slice(0, 10), today)}, ${hoursText(next)}.`;
};

/** What the drawing of the hours shows. */
export const WEEK_TITLE = 'Who is there in the next seven days';

/** "Sat 10 Apr: 8:00 to 13:30, 1 person; 9:00 to 12:30, 1 person." */
export const hoursOfDayText = ({ date, hours }: YardHoursModel['week'][number], today: string): string => {
  const all = hours.map((one) => `${fromTo(one)}, ${countText(one.crew, 'person', 'people')}${MAY_TEXT[one.may]}`);
  return `${dayText(date, today)}: ${all.length === 0 ? 'nobody' : all.join('; ')}.`;
};
