import { z } from 'zod';

/** A quantity that may be a fraction (kg, m2, bags) and is never negative. */
export const amount = z.number().min(0, 'is negative');
/** A quantity something is divided by, a fraction perhaps: more than 0. */
export const positive = z.number().gt(0, 'has to be more than 0');
/** Minutes or a count: whole and never negative. */
export const whole = z.int('has to be a whole number').min(0, 'is negative');
/** A count or a number of minutes of which there has to be one at least. */
export const wholePositive = z.int('has to be a whole number').min(1, 'has to be at least 1');
/** A temperature; below -273.15 °C there is none. */
export const celsius = z.number().gt(-273.15, 'is colder than absolute zero');
/** What things are called by; unique among its kind, compared as it is written, never empty. */
export const id = z.string().min(1, 'is empty');
