import { dayWords } from '../../../shared/day-words.ts';
import type { Material } from '../../../shared/material.ts';
import type { Order } from '../../../shared/order.ts';
import { clockMinutes, type DayNumber, dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { comingDaysOf } from '../buy/coming-days.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { sessionsOf } from '../calendar/sessions.ts';

/** The kinds of thing that can hold a date. Less cure, earlier stripping, a skipped coat, heat or night work never are. */
type LimitKind = 'mould' | 'mended' | 'session' | 'hands' | 'evening' | 'material' | 'rack' | 'mixer';

/** The yard with one thing relaxed, and how a maker would say it. */
export interface Relaxation {
  limit: LimitKind;
  what?: string;
  change: string;
  yard: YardFile;
}

/** A new mould is built and given two sealing coats, each dry overnight, before its first turn (common practice, no source). */
const BUILD_DAYS = 3;
/** How far ahead an evening half hour is offered, and at what time: not late at night. */
const EVENINGS = 28;
const EVENING_START = 19 * 60;
const EVENING_WORK_MINUTES = 30;
const MORE_RACK_SPACES = 10;
const WEEK = 7;

const clockText = (minutes: number): string =>
  minutes >= 1440
    ? '24:00'
    : `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** "08:00" is "8:00" in a sentence. */
const spoken = (clock: string): string => clock.replace(/^0/, '');

const todayOf = (yard: YardFile): DayNumber => calendarOf(yard.yard.timeZone).dayOf(minuteOf(yard.yard.now));

/** Castings that an order asks for, in the order of the yard file. */
export const castingsOf = (yard: YardFile, order: Order): YardFile['castings'] => {
  const asked = new Set<string>();
  for (const line of order.lines) {
    if (line.casting !== undefined) asked.add(line.casting);
    for (const piece of yard.kits.find((k) => k.id === line.kit)?.pieces ?? []) asked.add(piece.casting);
  }
  return yard.castings.filter((c) => asked.has(c.id));
};

/** The yard with one more mould of a casting, built from now on; null when there is none to build it after. */
export const withMould = (yard: YardFile, casting: string): YardFile | null => {
  const like = yard.moulds.find((m) => m.makes.some((x) => x.casting === casting));
  if (!like) return null;
  const taken = new Set(yard.moulds.map((m) => m.id));
  let id = `new ${casting}`;
  while (taken.has(id)) id += '+';
  const mould: YardFile['moulds'][number] = {
    ...like,
    id,
    makes: [{ casting, changeMinutes: 0 }],
    setFor: casting,
    condition: 'damaged',
    prepped: false,
    repairedOn: dateOfDay(todayOf(yard) + BUILD_DAYS),
    turnsSinceOil: 0,
  };
  return { ...yard, moulds: [...yard.moulds, mould] };
};

const shortName = (name: string): string => name.replace(/^panel /i, '');

const moreMoulds = (yard: YardFile, order: Order): Relaxation[] =>
  castingsOf(yard, order).flatMap((casting) => {
    const more = withMould(yard, casting.id);
    return more
      ? [{ limit: 'mould' as const, what: casting.id, change: `One more ${shortName(casting.name)} mould`, yard: more }]
      : [];
  });

const mended = (yard: YardFile, order: Order): Relaxation[] => {
  const asked = new Set(castingsOf(yard, order).map((c) => c.id));
  return yard.moulds
    .filter((m) => m.condition === 'damaged' && m.makes.some((x) => asked.has(x.casting)))
    .map((m) => ({
      limit: 'mended',
      what: m.id,
      change: `${m.id} mended now`,
      yard: {
        ...yard,
        moulds: yard.moulds.map((x) => (x === m ? { ...m, condition: 'ready', repairedOn: undefined } : x)),
      },
    }));
};

/** Nobody is asked to work on a day off. */
const daysOff = ({ closed }: YardFile): Set<DayNumber> => new Set(closed.map(dayNumber));

/** Hours like the yard's own longest for batches, on the first day of the coming week on which nothing is poured, and that is no day off. */
const oneMoreSession = (yard: YardFile): Relaxation[] => {
  const pouring = [...yard.work, ...yard.extra].filter((w) => w.allows.includes('batch'));
  const longest = pouring.reduce<(typeof pouring)[number] | null>(
    (best, w) =>
      best && clockMinutes(best.end) - clockMinutes(best.start) >= clockMinutes(w.end) - clockMinutes(w.start)
        ? best
        : w,
    null,
  );
  if (!longest) return [];
  const today = todayOf(yard);
  const busy = daysOff(yard);
  for (const s of sessionsOf(yard, calendarOf(yard.yard.timeZone)))
    if (s.windows.some((w) => w.allows.includes('batch'))) busy.add(s.day);
  for (let day = today + 1; day <= today + WEEK; day++) {
    if (busy.has(day)) continue;
    const extra = {
      date: dateOfDay(day),
      start: longest.start,
      end: longest.end,
      crew: longest.crew,
      allows: longest.allows,
    };
    const change = `One more session on ${dayWords(dateOfDay(day))}, ${spoken(longest.start)} to ${spoken(longest.end)}`;
    return [{ limit: 'session', what: extra.date, change, yard: { ...yard, extra: [...yard.extra, extra] } }];
  }
  return [];
};

const moreHands = (yard: YardFile): Relaxation[] => {
  const more = <T extends { crew: number }>(windows: T[]) => windows.map((w) => ({ ...w, crew: w.crew + 1 }));
  return [
    {
      limit: 'hands',
      change: 'One more pair of hands',
      yard: { ...yard, work: more(yard.work), extra: more(yard.extra) },
    },
  ];
};

const eveningHalfHour = (yard: YardFile): Relaxation[] => {
  const minutes = yard.yard.setUpMinutes + EVENING_WORK_MINUTES + yard.yard.clearUpMinutes;
  const [start, end] = [clockText(EVENING_START), clockText(Math.min(1440, EVENING_START + minutes))];
  const [today, off] = [todayOf(yard), daysOff(yard)];
  const evenings = Array.from({ length: EVENINGS }, (_, i) => ({
    date: dateOfDay(today + i),
    start,
    end,
    crew: 1,
    allows: ['strip' as const],
  })).filter(({ date }) => dayNumber(date) <= today + yard.yard.horizonDays && !off.has(dayNumber(date)));
  return [
    {
      limit: 'evening',
      change: 'Half an hour in the evening to strip',
      yard: { ...yard, extra: [...yard.extra, ...evenings] },
    },
  ];
};

/** A material that somebody has today, whoever sells it. */
const hadToday = ({ supplier: _supplier, ...material }: Material): Material => ({
  ...material,
  leadDays: 0,
  minimum: Math.min(material.minimum, material.onHand),
});

/** What arrives later, takes days to come or is of a shop that is closed, as if it were fetched today. */
const fetchedToday = (yard: YardFile): Relaxation[] => {
  const today = dateOfDay(todayOf(yard));
  return yard.materials.flatMap((m): Relaxation[] => {
    const coming = yard.incoming.some((x) => x.material === m.id && x.on > today);
    const isAwaited = (comingDaysOf(yard, m)?.soonest ?? 0) > todayOf(yard);
    if (!coming && !isAwaited) return [];
    const materials = yard.materials.map((x) => (x === m && isAwaited ? hadToday(m) : x));
    const incoming = yard.incoming.map((x) => (x.material === m.id && x.on > today ? { ...x, on: today } : x));
    return [
      { limit: 'material', what: m.id, change: `${m.name} fetched today`, yard: { ...yard, materials, incoming } },
    ];
  });
};

const moreRack = (yard: YardFile): Relaxation[] => {
  const spaces = yard.yard.rackSpaces;
  if (spaces === undefined) return [];
  const more = { ...yard, yard: { ...yard.yard, rackSpaces: spaces + MORE_RACK_SPACES } };
  return [{ limit: 'rack', change: 'Ten more spaces to cure in', yard: more }];
};

const largerMixer = (yard: YardFile, order: Order): Relaxation[] => {
  const asked = new Set(castingsOf(yard, order).map((c) => c.mix));
  if (asked.size === 0) return [];
  const mixes = yard.mixes.map((m) => (asked.has(m.id) ? { ...m, maxBags: m.maxBags * 2 } : m));
  return [{ limit: 'mixer', change: 'A mixer that takes twice as much', yard: { ...yard, mixes } }];
};

/** Everything that could be relaxed, one at a time, for an order that is asked about. */
export const relaxationsFor = (yard: YardFile, order: Order): Relaxation[] => [
  ...moreMoulds(yard, order),
  ...mended(yard, order),
  ...oneMoreSession(yard),
  ...moreHands(yard),
  ...eveningHalfHour(yard),
  ...fetchedToday(yard),
  ...moreRack(yard),
  ...largerMixer(yard, order),
];
