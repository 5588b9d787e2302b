import { quoted } from '../../../shared/said-back.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { figure } from './measure.ts';
import { NUMBER_TYPED, numberTyped, plainFractions } from './number-typed.ts';
import { type Reading, read, unread } from './reading.ts';

const COLDEST_CELSIUS = -273.15;

/** t/°C = (t/°F - 32)/1.8, exact by definition. NIST SP 811 (2008), appendix B. */
const celsiusOf = (fahrenheit: number): number => Number(((fahrenheit - 32) / 1.8).toPrecision(15));
const fahrenheitOf = (celsius: number): number => Number((celsius * 1.8 + 32).toPrecision(15));

const HOW = 'Write it like 12 C or 54 F.';

/**
 * A typed temperature in °C; a bare number is °C in a metric yard, °F in a US one. Refuses what is no temperature.
 *
 * Example: `readTemperature('-40 F', 'metric')` reads -40.
 */
export const readTemperature = (text: string, system: UnitSystem): Reading<number> => {
  const plain = plainFractions(text).replace(/^[−–]/, '-');
  const [, sign = '', rest = ''] = /^([-+]?)(.*)$/.exec(plain) ?? [];
  if (plain === '') return unread(`Nothing was written. ${HOW}`);
  const number = NUMBER_TYPED.exec(rest)?.[0] ?? '';
  const unit = /^\s*(?:°|degrees?|deg)?\s*(c|celsius|f|fahrenheit)?$/i.exec(rest.slice(number.length));
  if (number === '' || !unit) return unread(`${quoted(text)} is not a temperature. ${HOW}`);
  const amount = numberTyped(number);
  if (!amount.ok) return unread(`${amount.reason} ${HOW}`);
  const degrees = sign === '-' ? -amount.value : amount.value;
  const scale = unit[1]?.[0]?.toLowerCase() ?? (system === 'metric' ? 'c' : 'f');
  const celsius = scale === 'f' ? celsiusOf(degrees) : degrees;
  return celsius < COLDEST_CELSIUS ? unread(`${quoted(text)} is colder than anything can be. ${HOW}`) : read(celsius);
};

/**
 * A temperature in °C to a tenth of a degree of the yard's own scale.
 *
 * Example: `temperatureText(12, 'metric')` is "12 °C", `temperatureText(12, 'US')` is "53.6 °F".
 */
export const temperatureText = (celsius: number, system: UnitSystem): string =>
  system === 'metric' ? `${figure(celsius, 1)} °C` : `${figure(fahrenheitOf(celsius), 1)} °F`;

/**
 * A temperature in °C as it is said: as `temperatureText`, but whole degrees Fahrenheit, which are the finer ones. For what
 * nobody types back.
 *
 * Example: `temperatureSaid(4, 'US')` is "39 °F".
 */
export const temperatureSaid = (celsius: number, system: UnitSystem): string =>
  system === 'metric' ? temperatureText(celsius, system) : `${figure(fahrenheitOf(celsius), 0)} °F`;
