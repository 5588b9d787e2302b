import type { DayNumber, Minute } from '../../../shared/time.ts';

/** So much of a material is taken at an instant. */
export interface MaterialUse {
  at: Minute;
  quantity: number;
}

/** So much of a material comes in on a date, bought already. */
export interface MaterialArrival {
  day: DayNumber;
  quantity: number;
}
