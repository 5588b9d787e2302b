import fc from 'fast-check';
import { dateOfDay, WEEKDAYS } from '../../shared/time.ts';
import { TASK_KINDS } from '../../shared/work.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../shared/yard-file.ts';

type Hours = Pick<YardFileInput, 'work' | 'closed' | 'extra' | 'temperatures'> & YardFileInput['yard'];

/** A yard with hours and weather and nothing else. Throws where the file has a fault: then the test is wrong. */
export const hoursYard = ({ work, closed, extra, temperatures, ...yard }: Partial<Hours>): YardFile => {
  const read = readYardFile({
    format: 'mould-rota/yard',
    version: 1,
    yard: { name: 'Hours', timeZone: 'Europe/Dublin', now: '2027-01-01T00:00:00Z', horizonDays: 30, ...yard },
    work: work ?? [],
    closed: closed ?? [],
    extra: extra ?? [],
    temperatures: temperatures ?? [],
    materials: [],
    incoming: [],
    mixes: [],
    castings: [],
    moulds: [],
    kits: [],
    finished: [],
    inMould: [],
    orders: [],
  });
  if (!read.ok) throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join('\n'));
  return read.yard;
};

/** Zones whose clocks do awkward things: half-hour shifts, midnights skipped or met twice, a pause for a month, none. */
export const AWKWARD_ZONES = [
  'Europe/Dublin',
  'America/New_York',
  'Australia/Lord_Howe',
  'America/Santiago',
  'Africa/Cairo',
  'Asia/Beirut',
  'America/Havana',
  'Africa/Casablanca',
  'Pacific/Chatham',
  'America/St_Johns',
  'Asia/Kathmandu',
  'UTC',
];

const day = (from: string, to: string): fc.Arbitrary<string> => {
  const number = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;
  return fc.integer({ min: number(from), max: number(to) }).map(dateOfDay);
};
export const dateBetween = day;

const maybe = <T>(part: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(part, { nil: undefined });
const some = <T>(items: readonly T[]) => fc.subarray([...items], { minLength: 1 });
const nthDay = fc
  .tuple(fc.constantFrom('', '1', '+2', '3', '4', '5', '-1', '-2', '-5'), fc.constantFrom(...WEEKDAYS))
  .map((x) => x.join(''));
const monthDay = fc.oneof(fc.integer({ min: 1, max: 31 }), fc.integer({ min: -31, max: -1 })).map(String);

const which = fc.oneof(
  maybe(some(WEEKDAYS)).map((days) => ['FREQ=DAILY', days && `BYDAY=${days}`]),
  maybe(some(WEEKDAYS)).map((days) => ['FREQ=WEEKLY', days && `BYDAY=${days}`]),
  fc.uniqueArray(nthDay, { minLength: 1, maxLength: 4 }).map((days) => ['FREQ=MONTHLY', `BYDAY=${days}`]),
  fc.uniqueArray(monthDay, { minLength: 1, maxLength: 4 }).map((days) => ['FREQ=MONTHLY', `BYMONTHDAY=${days}`]),
);
const until = fc
  .tuple(day('2027-01-01', '2029-01-01'), fc.constantFrom('', 'T000000', 'T093000Z', 'T235900'))
  .map(([date, time]) => `UNTIL=${date.replaceAll('-', '')}${time}`);
const howLong = fc.oneof(
  fc.constant(undefined),
  fc.integer({ min: 1, max: 60 }).map((n) => `COUNT=${n}`),
  until,
);

/** Every form of recurrence rule a yard file may have. */
export const anyRule: fc.Arbitrary<string> = fc
  .tuple(
    which,
    maybe(fc.integer({ min: 1, max: 15 }).map((n) => `INTERVAL=${n}`)),
    howLong,
    maybe(fc.constantFrom(...WEEKDAYS).map((d) => `WKST=${d}`)),
  )
  .map(([parts, ...rest]) => [...parts, ...rest].filter((part) => part !== undefined).join(';'));

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** A start and an end on one date, on the quarter hour, so that windows often touch; 24:00 among the ends. */
const hours = fc
  .tuple(fc.integer({ min: 0, max: 95 }), fc.integer({ min: 1, max: 40 }))
  .map(([start, length]) => ({ start: clock(start * 15), end: clock(Math.min(96, start + length) * 15) }));

const people = { crew: fc.integer({ min: 0, max: 4 }), allows: fc.subarray([...TASK_KINDS]) };

/** A repeating window whose rule began up to three years before 2027. */
const anyWorkWindow = fc
  .tuple(
    fc.record({ rule: anyRule, from: day('2024-01-01', '2027-12-31'), ...people }),
    maybe(day('2027-01-01', '2028-12-31')),
    hours,
  )
  .map(([window, last, time]) => ({ ...window, ...time, ...(last ? { until: last } : {}) }));

const anyExtraWindow = fc
  .tuple(fc.record({ date: day('2027-01-01', '2028-12-31'), ...people }), hours)
  .map(([window, time]) => ({ ...window, ...time }));

/** Yards of nothing but hours, a year or less ahead, in awkward zones. */
export const anyHoursYard: fc.Arbitrary<YardFile> = fc
  .record({
    timeZone: fc.constantFrom(...AWKWARD_ZONES),
    now: fc
      .tuple(day('2027-01-01', '2028-06-01'), fc.integer({ min: 0, max: 1439 }))
      .map(([date, minute]) => `${date}T${clock(minute)}:00Z`),
    horizonDays: fc.integer({ min: 1, max: 400 }),
    setUpMinutes: fc.integer({ min: 0, max: 30 }),
    clearUpMinutes: fc.integer({ min: 0, max: 30 }),
    work: fc.array(anyWorkWindow, { maxLength: 6 }),
    closed: fc.array(day('2027-01-01', '2028-12-31'), { maxLength: 20 }),
    extra: fc.array(anyExtraWindow, { maxLength: 6 }),
  })
  .map(hoursYard);
