import { costsOfYard } from '../../../db/stores/money-store.ts';
import type { YardHabits } from '../../../shared/habits.ts';
import type { YardCosts } from '../../../shared/money.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { MissingForDate } from '../../engine/begin/missing-for-date.ts';
import { mouldKind, mouldsFor } from '../../engine/book/mould-kind.ts';
import { isRetired } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { sessionsOf } from '../../engine/calendar/sessions.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import { computeForRequest } from '../core/compute-for-request.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { guessGroups } from './show-guesses.ts';
import { monthsEndBefore } from './show-temperatures.ts';
import { showYardFrame, type YardFrame } from './show-yard-frame.ts';

const WEEKS_LOOKED_AT = 4;

/** Moulds in use, by kind, and how many are scrapped. */
interface MouldsThere {
  count: number;
  kinds: readonly { kind: string; count: number }[];
  scrapped: number;
}

/** The sessions of some weeks, and how long they are. */
interface HoursThere {
  sessions: number;
  minutesAWeek: number;
  weeks: number;
}

interface MaterialsThere {
  count: number;
  suppliers: number;
  /** Names of those that can't be bought. */
  notBought: readonly string[];
}

/** The yard section by section: what is there, and what is missing in it. */
export interface YardModel extends PageHead {
  /** What is missing for a first date. */
  missing: readonly MissingForDate[];
  /** How many figures are guesses, those of several things counted once. */
  guesses: number;
  about: YardHabits & { timeZone: string; system: UnitSystem };
  panels: { names: readonly string[]; withoutMould: readonly string[] };
  moulds: MouldsThere;
  mixes: { names: readonly string[]; withoutBags: readonly string[] };
  kits: readonly string[];
  hours: HoursThere;
  stock: MaterialsThere;
  /** What costs are reckoned by; what nobody said is left out. */
  costs: YardCosts;
  /** Of today, and the last day of the months where that is too soon; null where nothing is expected. */
  temperature: { now: string; endsBefore: string | null } | null;
  /** Of the coming days, how many have a weather of their own. */
  weatherDays: number;
}

const mouldsOf = (yard: YardFile): MouldsThere => {
  const kinds = new Map<string, number>();
  const inUse = yard.moulds.filter((mould) => !isRetired(mould));
  for (const { id } of inUse) kinds.set(mouldKind(id), (kinds.get(mouldKind(id)) ?? 0) + 1);
  return {
    count: inUse.length,
    kinds: [...kinds].map(([kind, count]) => ({ kind, count })),
    scrapped: yard.moulds.length - inUse.length,
  };
};

/** The sessions of the next four weeks, and the first of all. */
const hoursOf = (yard: YardFile, today: string): HoursThere => {
  const sessions = sessionsOf(yard, calendarOf(yard.yard.timeZone));
  const until = dayNumber(today) + 7 * WEEKS_LOOKED_AT;
  const soon = sessions.filter(({ day }) => day < until);
  const minutes = soon.reduce((sum, { start, end }) => sum + end - start, 0);
  return { sessions: soon.length, minutesAWeek: minutes / WEEKS_LOOKED_AT, weeks: WEEKS_LOOKED_AT };
};

const temperatureOf = ({ yard, system, today }: YardFrame): YardModel['temperature'] => {
  const { celsiusOn } = climateOf(yard, calendarOf(yard.yard.timeZone));
  const celsius = celsiusOn(dayNumber(today));
  return celsius === null ? null : { now: temperatureSaid(celsius, system), endsBefore: monthsEndBefore(yard, today) };
};

const materialsOf = ({ materials }: YardFile): MaterialsThere => ({
  count: materials.length,
  suppliers: new Set(materials.flatMap(({ supplier }) => supplier ?? [])).size,
  notBought: materials.filter(({ leadDays }) => leadDays === undefined).map(({ name }) => name),
});

/** The yard section by section: what is there, what is missing in it, and what is missing for a first date. */
export const showYard = async (context: UseCaseContext): Promise<YardModel> => {
  const frame = await showYardFrame(context);
  const { yard, today, system, habits, guesses } = frame;
  const missing = await computeForRequest(context.background, 'missing for a date', { yard });
  return {
    ...{ yardName: yard.yard.name, today, missing, guesses: guessGroups(guesses, yard, system).length },
    about: { timeZone: yard.yard.timeZone, system, ...habits },
    panels: {
      names: yard.castings.map(({ name }) => name),
      withoutMould: yard.castings.filter(({ id }) => mouldsFor(yard, id).length === 0).map(({ name }) => name),
    },
    moulds: mouldsOf(yard),
    mixes: {
      names: yard.mixes.map(({ name }) => name),
      withoutBags: yard.mixes.filter(({ perBag }) => perBag.length === 0).map(({ name }) => name),
    },
    kits: yard.kits.map(({ name }) => name),
    hours: hoursOf(yard, today),
    stock: materialsOf(yard),
    costs: await context.database.read(costsOfYard),
    temperature: temperatureOf(frame),
    weatherDays: yard.weather?.days.filter(({ date }) => date >= today).length ?? 0,
  };
};
