import type { Database } from '../../../db/open.ts';
import type { PhotoFolder } from '../../../db/photo-folder.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { ForecastAnswer, ForecastPlace } from '../../../shared/forecast.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import type { Compute } from './computations.ts';

/** What goes on beside the requests, in threads of its own. Without it everything is worked out at once, on the spot. */
export interface Background {
  /** A plan was made in a hurry: look for a better one when there is time. */
  planMade(): void;
  /** A better plan is being looked for just now. */
  improving(): boolean;
  /** Works something out that takes longer than a request may hold up the others. */
  compute: Compute;
  /** The same for what a request itself waits for; nothing that takes seconds stands before it. */
  computeForRequest: Compute;
  /** The same for what nobody waits for, behind the better plans; given up where the plan changes. Without it nothing of the kind is thought about. */
  ponder?: Compute;
}

/** Asks a service for the forecast of a place; null where it does not answer, or with something else. */
export type AskForecast = (place: ForecastPlace) => Promise<ForecastAnswer | null>;

/** What every use case gets: the data, and the one instant that counts as now. */
export interface UseCaseContext {
  database: Database;
  /** An instant in whole minutes, with any offset. */
  now: string;
  background?: Background;
  /** Where photos of pieces are kept; without it none can be. */
  photos?: PhotoFolder;
  /** Where forecasts are asked for; without it none can be. */
  forecast?: AskForecast;
  /** A key that the browser made for what is asked of it just now, to know it by when it is sent again. */
  act?: string;
  /** Who asks it, by the name chosen on that device. */
  by?: string;
}

/** What came of it, or why it was refused, each reason with the name of the form field it belongs to. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

export const done = <T>(value: T): Outcome<T> => ({ ok: true, value });

export const refuse = (path: string, message: string): Outcome<never> => ({ ok: false, faults: [{ path, message }] });

/** The date an instant falls on in the yard. `today('Europe/Dublin', '2027-04-05T23:30:00Z')` is '2027-04-06'. */
export const today = (timeZone: string, now: string): string => todayIn({ yard: { timeZone, now } });
