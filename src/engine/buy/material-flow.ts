import type { DayNumber, Minute } from '../../../shared/time.ts';
import type { ComingDays } from './coming-days.ts';

/** So much of a material is taken at an instant. */
export interface MaterialUse {
  at: Minute;
  quantity: number;
}

/** So much of a material comes in on a date, bought already; where the date has passed it is overdue, and not there. */
export interface MaterialArrival {
  day: DayNumber;
  quantity: number;
}

/**
 * How many days late a delivery may come, by what time of its day it is there ("HH:MM"), and on which days things come (absent: every
 * day; null: never).
 */
export interface Deliveries {
  daysInHand?: number;
  deliveredBy?: string;
  days?: ComingDays | null;
}
