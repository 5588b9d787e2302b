import { type DayNumber, dateOfDay, dayNumber, weekdayOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import type { Dice } from './dice.ts';

type Work = YardFileInput['work'];
export type HoursPart = Pick<YardFileInput, 'work' | 'closed' | 'extra'>;

/** When and where a yard is: its clock changes within the horizon more often than not. */
export interface Place {
  timeZone: string;
  south: boolean;
  now: string;
  today: DayNumber;
}

const NORTH = ['Europe/Dublin', 'America/New_York', 'America/St_Johns', 'Asia/Kathmandu', 'Asia/Tokyo', 'UTC'];
const SOUTH = ['Pacific/Auckland', 'Australia/Lord_Howe', 'America/Santiago', 'Australia/Sydney'];
/** Months with a change of the clock in them or just after, in one half of the world or the other. */
const CHANGING_MONTHS = ['02', '03', '04', '09', '10', '11'];
const ANY_MONTHS = ['01', '05', '06', '07', '08', '12'];

export const placeOf = (dice: Dice): Place => {
  const south = dice.chance(0.4);
  const timeZone = dice.pick(south ? SOUTH : NORTH);
  const month = dice.pick(dice.chance(0.7) ? CHANGING_MONTHS : ANY_MONTHS);
  const today = dayNumber(`${dice.pick([2027, 2028])}-${month}-01`) + dice.whole(0, 27);
  const calendar = calendarOf(timeZone);
  const clock = dice.chance(0.15) ? 0 : dice.whole(6 * 60, 18 * 60);
  return { timeZone, south, today, now: calendar.instantText(calendar.minuteAt(today, clock)) };
};

const clockText = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
const hours = (start: number, end: number) => ({ start: clockText(start), end: clockText(end) });

/** A Saturday with a helper part of the time, and one evening: the yard of a maker with another job. */
const saturdayAndEvening = (dice: Dice, from: string, people: number): Work => {
  const start = dice.step(450, 540, 15);
  const end = start + dice.step(240, 420, 15);
  const work: Work = [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from, ...hours(start, end), crew: 1 }];
  if (people > 1) work.push({ rule: 'FREQ=WEEKLY;BYDAY=SA', from, ...hours(start + 60, end - 90), crew: people - 1 });
  if (dice.chance(0.7)) work.push({ rule: 'FREQ=WEEKLY;BYDAY=TU,TH', from, ...hours(18 * 60, 20 * 60 + 45), crew: 1 });
  return work;
};

/** Weekdays with a break or none: two windows that touch, the second with other people. */
const weekdays = (dice: Dice, from: string, people: number): Work => {
  const noon = dice.step(690, 780, 15);
  const second = dice.chance(0.5) ? noon : noon + 30;
  const rule = dice.pick(['FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR', 'FREQ=DAILY;BYDAY=MO,WE,FR', 'FREQ=DAILY;INTERVAL=2']);
  return [
    { rule, from, ...hours(480, noon), crew: people },
    { rule, from, ...hours(second, 990), crew: Math.max(1, people - dice.whole(0, 1)) },
  ];
};

/** A late shift up to 24:00 that goes on after midnight; one session over two dates. */
const night = (dice: Dice, from: string, people: number): Work => [
  { rule: 'FREQ=WEEKLY;BYDAY=FR,SA', from, ...hours(dice.step(1080, 1200, 15), 1440), crew: people },
  { rule: 'FREQ=WEEKLY;BYDAY=SA,SU', from, ...hours(0, dice.step(90, 210, 15)), crew: Math.max(1, people - 1) },
];

const aroundTheMonth = (dice: Dice, from: string, people: number): Work => [
  {
    rule: dice.pick(['FREQ=MONTHLY;BYDAY=1SA,3SA', 'FREQ=MONTHLY;BYDAY=-1SU,2SU']),
    from,
    ...hours(480, 900),
    crew: people,
  },
  {
    rule: dice.pick(['FREQ=MONTHLY;BYMONTHDAY=5,15,25', 'FREQ=MONTHLY;BYMONTHDAY=-1,10,20']),
    from,
    ...hours(510, 870),
  },
  { rule: 'FREQ=WEEKLY;INTERVAL=2;BYDAY=WE,TH;WKST=SU', from, ...hours(540, 780), crew: people },
];

/** Windows for some kinds of work only, over or beside the others. */
const partialHours = (dice: Dice, from: string): Work =>
  dice.some<Work[number]>(
    [
      { rule: 'FREQ=DAILY', from, ...hours(1005, 1025), allows: ['strip', 'pack'] },
      { rule: 'FREQ=WEEKLY;BYDAY=SA', from, ...hours(600, 720), crew: 1, allows: ['prep', 'strip'] },
      { rule: 'FREQ=WEEKLY;BYDAY=FR,SU', from, ...hours(1020, 1140), allows: ['prep', 'pack'] },
      { rule: 'FREQ=WEEKLY;BYDAY=MO,WE', from, ...hours(420, 480), allows: ['prep', 'strip', 'pack'] },
      { rule: 'FREQ=DAILY;COUNT=12', from, ...hours(1260, 1290), allows: ['strip'] },
    ],
    dice.whole(1, 2),
  );

/** Hours of a yard with up to `people` at once; `steady` yards work whole weekdays. */
export const hoursOf = (dice: Dice, place: Place, people: number, steady: boolean): HoursPart => {
  const from = dateOfDay(place.today - dice.whole(0, 200));
  const patterns = steady ? [weekdays] : [saturdayAndEvening, saturdayAndEvening, weekdays, night, aroundTheMonth];
  const work = dice.pick(patterns)(dice, from, people);
  if (dice.chance(0.4)) work.push(...partialHours(dice, from));
  if (dice.chance(0.15))
    work.push({ rule: 'FREQ=WEEKLY;BYDAY=SA', from, until: dateOfDay(place.today + 30), ...hours(840, 900), crew: 1 });
  const day = () => place.today + dice.whole(0, 60);
  const saturday = () => {
    let x = day();
    while (weekdayOf(x) !== 'SA') x++;
    return x;
  };
  const closed = Array.from({ length: dice.whole(0, 3) }, () => dateOfDay(dice.chance(0.5) ? saturday() : day()));
  const extra = Array.from({ length: dice.whole(0, 3) }, () => ({
    date: dateOfDay(day()),
    ...hours(
      ...dice.pick<[number, number]>([
        [540, 720],
        [480, 960],
        [1200, 1440],
        [0, 120],
        [810, 930],
      ]),
    ),
    crew: dice.whole(1, people),
  }));
  return { work, closed, extra };
};
