import { z } from 'zod';
import { atOnce } from './number.ts';
import { clock, clockEnd, clockMinutes, date, isDate } from './time.ts';

/** The kinds of work a window of hours can be for. */
export const TASK_KINDS = ['prep', 'batch', 'strip', 'pack'] as const;
/** One of `TASK_KINDS`: set up, mix and pour, strip, pack. */
export type TaskKind = (typeof TASK_KINDS)[number];

const PART = /^(RRULE:)?[A-Z]+=[^=;]+(;[A-Z]+=[^=;]+)*$/;
const PLAIN_DAY = /^(MO|TU|WE|TH|FR|SA|SU)$/;
const NTH_DAY = /^([+-]?[1-5])?(MO|TU|WE|TH|FR|SA|SU)$/;
const MONTH_DAY = /^[+-]?([1-9]|[12]\d|3[01])$/;
const WHOLE = /^[1-9]\d{0,5}$/;
const UNTIL = /^(\d{4})(\d{2})(\d{2})(T([01]\d|2[0-3])[0-5]\d[0-5]\dZ?)?$/;

/**
 * What is wrong with a recurrence rule, in words that follow on its path, or null. Allowed (RFC 5545, 3.3.10): DAILY,
 * WEEKLY, and MONTHLY by BYDAY or BYMONTHDAY, with INTERVAL, COUNT or UNTIL, WKST. DTSTART is no part of it: a window
 * has `from`.
 *
 * Example: `ruleFault('FREQ=WEEKLY;BYDAY=SA')` is null, `ruleFault('FREQ=YEARLY')` is "has to repeat DAILY, WEEKLY or
 * MONTHLY".
 */
export const ruleFault = (text: string): string | null => {
  if (!PART.test(text)) return 'is no recurrence rule (RFC 5545 RRULE)';
  const parts = new Map<string, string>();
  for (const part of text.replace(/^RRULE:/, '').split(';')) {
    const [key, value] = part.split('=') as [string, string];
    if (parts.has(key)) return `has ${key} twice`;
    parts.set(key, value);
  }
  const freq = parts.get('FREQ');
  if (freq !== 'DAILY' && freq !== 'WEEKLY' && freq !== 'MONTHLY') return 'has to repeat DAILY, WEEKLY or MONTHLY';
  if (parts.has('COUNT') && parts.has('UNTIL')) return 'has both COUNT and UNTIL';
  if (freq === 'MONTHLY' && parts.has('BYDAY') === parts.has('BYMONTHDAY')) return 'MONTHLY needs BYDAY or BYMONTHDAY';
  const day = freq === 'MONTHLY' ? NTH_DAY : PLAIN_DAY;
  for (const [key, value] of parts) {
    const list = value.split(',');
    if (key === 'FREQ') continue;
    if ((key === 'INTERVAL' || key === 'COUNT') && WHOLE.test(value)) continue;
    if (key === 'UNTIL' && UNTIL.test(value) && isDate(value.replace(/^(....)(..)(..).*/, '$1-$2-$3'))) continue;
    if (key === 'WKST' && PLAIN_DAY.test(value)) continue;
    if (key === 'BYDAY' && list.every((x) => day.test(x))) continue;
    if (key === 'BYMONTHDAY' && freq === 'MONTHLY' && list.every((x) => MONTH_DAY.test(x))) continue;
    return `has ${key}=${value}, which is outside the allowed rules`;
  }
  return null;
};

/** Years of days to count through take seconds, and nobody worked by this then. */
const COUNTS_FROM = '1970-01-01';

const hours = {
  start: clock,
  end: clockEnd,
  crew: atOnce.default(1),
  allows: z.array(z.enum(TASK_KINDS)).default([...TASK_KINDS]),
};
const endsAfterStart = (w: { start: string; end: string }) => clockMinutes(w.end) > clockMinutes(w.start);
const endFault = { path: ['end'], message: 'is not after the start' };

/**
 * Hours of work that repeat (R1): on every date of the rule from `from` to `until`, both included, from `start` to
 * `end` of the yard's clock, `end` not included. Windows at once add their people up.
 */
export const workWindow = z
  .strictObject({
    rule: z.string().superRefine((text, context) => {
      const fault = ruleFault(text);
      if (fault) context.addIssue({ code: 'custom', message: fault });
    }),
    from: date,
    until: date.optional(),
    ...hours,
  })
  .refine(endsAfterStart, endFault)
  .refine(({ rule, from }) => !rule.includes('COUNT=') || from >= COUNTS_FROM, {
    path: ['from'],
    message: 'is before 1970, and the rule counts from there',
  });
/** A window once read: one person, all kinds of work, where nothing else was given. */
export type WorkWindow = z.infer<typeof workWindow>;

/** Hours of one date (R1); a closed date does not shut them. They add up with the repeating ones. */
export const extraWindow = z.strictObject({ date, ...hours }).refine(endsAfterStart, endFault);
/** Hours of one date once read, with the same defaults as `WorkWindow`. */
export type ExtraWindow = z.infer<typeof extraWindow>;
