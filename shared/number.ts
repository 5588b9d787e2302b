import { z } from 'zod';

/** The most of anything in a file, for people to see that a number is a slip of the hand. */
export const LARGEST = 1_000_000_000;
const tooMuch = (most: number) => `is more than ${most.toLocaleString('en')}`;

/** A quantity that may be a fraction (kg, m2, bags): never negative, at most a thousand million. */
export const amount = z.number().min(0, 'is negative').max(LARGEST, tooMuch(LARGEST));
/** A quantity something is divided by, a fraction perhaps: more than 0, at most a thousand million. */
export const positive = z.number().gt(0, 'has to be more than 0').max(LARGEST, tooMuch(LARGEST));
const upTo = (most: number) => z.int('has to be a whole number').min(0, 'is negative').max(most, tooMuch(most));
/** Minutes or a count: whole, never negative, at most a million (in minutes, two years). */
export const whole = upTo(1_000_000);
/** A count or a number of minutes of which there has to be one at least, and at most a million. */
export const wholePositive = z
  .int('has to be a whole number')
  .min(1, 'has to be at least 1')
  .max(1_000_000, tooMuch(1_000_000));
/** People, or mixers, at once. */
export const atOnce = upTo(1000);
/** How many of something one piece or one kit has. */
export const perOne = upTo(1000);
/** Whole days, at most as many as the longest plan covers: 20 years. */
export const days = upTo(7300);
/** Hours, a fraction perhaps: at most ten years. */
export const hours = z.number().min(0, 'is negative').max(87_600, tooMuch(87_600));
/** What a plan adds up or multiplies from amounts: never negative, and as large as it comes to. */
export const sum = z.number().min(0, 'is negative');
/** What a plan counts: whole, never negative. */
export const count = z.int('has to be a whole number').min(0, 'is negative');
/** A temperature: below -273.15 °C there is none, and 200 °C is hotter than anything is cured at. */
export const celsius = z.number().gt(-273.15, 'is colder than absolute zero').max(200, tooMuch(200));
/** What things are called by; unique among its kind, compared as it is written, never empty. */
export const id = z.string().min(1, 'is empty');
