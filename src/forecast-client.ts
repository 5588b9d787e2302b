import { type ForecastAnswer, forecastAnswer } from '../shared/forecast.ts';
import type { AskForecast } from './usecases/core/context.ts';

/** The service of MET Norway: free for all, its data under CC BY 4.0. */
export const FORECAST_ADDRESS = 'https://api.met.no/weatherapi/locationforecast/2.0/complete';

interface Kept {
  answer: ForecastAnswer;
  /** In milliseconds since 1970: until then nobody asks again. */
  until: number;
  modified: string | null;
}

/** Nobody waits longer for it. */
const WAIT_MS = 8_000;
/** Where the service does not say how long its answer holds. */
const KEPT_MS = 30 * 60_000;
/** As its terms ask for: no finer than four decimals. Two are about a kilometre, which no forecast is finer than. */
const DECIMALS = 2;

const heldUntil = (response: Response, now: number): number => {
  const said = Date.parse(response.headers.get('expires') ?? '');
  return Number.isNaN(said) ? now + KEPT_MS : Math.max(said, now);
};

/**
 * Asks a service that answers as MET Norway's Locationforecast 2.0 does, at `address`. It is told the program and how to reach whoever
 * runs it (its terms ask for both), and no more than the place. An answer is kept as long as it holds by its own word, and asked for with
 * the date of the last one after that. Nothing here throws: a service that is away leaves the months as they are.
 */
export const forecastClient = (address: string, clock: () => number = Date.now): AskForecast => {
  const kept = new Map<string, Kept>();
  return async ({ latitude, longitude, contact }) => {
    const where = `lat=${latitude.toFixed(DECIMALS)}&lon=${longitude.toFixed(DECIMALS)}`;
    const before = kept.get(where);
    if (before && before.until > clock()) return before.answer;
    const headers = {
      'user-agent': `mould-rota (${contact})`,
      ...(before?.modified ? { 'if-modified-since': before.modified } : {}),
    };
    try {
      const response = await fetch(`${address}?${where}`, { headers, signal: AbortSignal.timeout(WAIT_MS) });
      const until = heldUntil(response, clock());
      if (response.status === 304 && before) {
        kept.set(where, { ...before, until });
        return before.answer;
      }
      if (!response.ok) return null;
      const answer = forecastAnswer.parse(await response.json());
      kept.set(where, { answer, until, modified: response.headers.get('last-modified') });
      return answer;
    } catch {
      return null;
    }
  };
};
