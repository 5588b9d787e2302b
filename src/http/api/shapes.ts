import { z } from 'zod';
import { DOUBTS } from '../../../shared/doubt.ts';
import { SLIPS } from '../../../shared/order.ts';
import { CAME_OUT } from '../../../shared/piece-to-mend.ts';
import { planFile } from '../../../shared/plan.ts';
import { LONGEST_NAME, LONGEST_NOTE, tooLongText } from '../../../shared/text-limits.ts';
import { date, instant } from '../../../shared/time.ts';

/*
 * What the JSON interface takes and gives. The same schemas check what comes, type what goes out and are written into the
 * description (OpenAPI 3.1). Amounts are in the unit that a material is kept in, days "YYYY-MM-DD", instants RFC 3339.
 */

const LONGEST_TEXT = 1000;
const text = z.string().max(LONGEST_TEXT);
const name = z.string().min(1).max(LONGEST_TEXT);
/** What is written down newly; what is only named may be longer. */
const newName = z.string().max(LONGEST_NAME, tooLongText(LONGEST_NAME));
const newNote = z.string().max(LONGEST_NOTE, tooLongText(LONGEST_NOTE));

const line = z.strictObject({
  what: name.describe('As `/offers` names it: "kit:planter".'),
  quantity: z.number().positive().max(1_000_000),
});

const lines = z.array(line).min(1).max(40);

/** A problem (RFC 9457). */
export const problem = z.strictObject({
  type: z.literal('about:blank'),
  title: z.string(),
  status: z.int(),
  detail: z.string().optional(),
  faults: z
    .array(z.strictObject({ at: z.string(), message: z.string() }))
    .describe('What is wrong where, each in a sentence.')
    .optional(),
  seen: z.string().describe('Send it along, as `seen`, to have it done all the same.').optional(),
  moved: z
    .array(z.strictObject({ order: z.string(), from: z.string().nullable(), to: z.string().nullable() }))
    .describe('Orders that would get later.')
    .optional(),
});

export const offers = z.strictObject({
  items: z.array(
    z.strictObject({
      what: z.string(),
      name: z.string(),
      kind: z.enum(['kit', 'casting', 'material']),
      unit: z.string(),
    }),
  ),
});

export const askedFor = z.strictObject({ lines, notBefore: date.optional() });

export const ready = z.strictObject({
  earliestOn: z
    .string()
    .nullable()
    .describe('The first day on which it could be handed over; null: it cannot be made.'),
  promiseOn: z
    .string()
    .nullable()
    .describe(
      'The day to promise: the first that holds with promiseOdds, or with the time in hand that the yard keeps.',
    ),
  promiseOdds: z
    .number()
    .nullable()
    .describe(
      'How often promiseOn is kept by what the yard has on record; null: that is too little, or no day holds so often.',
    ),
  ifFirstOn: z.string().nullable().describe('The day if it went before all others.'),
  isProven: z.boolean().describe('No plan has it sooner.'),
  isLooking: z.boolean().describe('A sooner day is still looked for: ask again in a few seconds.'),
  reason: z.string().nullable(),
});

export const order = z.strictObject({
  id: z.string(),
  customer: z.string().nullable(),
  note: z.string().nullable(),
  lines: z.array(z.strictObject({ what: z.string(), quantity: z.number() })),
  status: z.string(),
  slip: z.enum(SLIPS),
  wantedOn: z.string().nullable(),
  promisedOn: z.string().nullable(),
  heldUntil: z.string().nullable(),
  readyOn: z.string().nullable().describe("By today's plan."),
  isPacked: z.boolean(),
  reason: z.string().nullable().describe('Why it cannot be made.'),
});

export const orders = z.strictObject({
  items: z.array(order),
  next: z.string().nullable().describe('Ask for `after` this; null: these are the last.'),
});

export const pageAsked = z.strictObject({
  after: z.string().max(100).optional().describe('The last order of the page before.'),
  limit: z.coerce.number().int().min(1).max(200).optional().describe('50 where it is not said.'),
});

export const orderToTake = z.strictObject({
  lines,
  customer: newName.optional(),
  phone: newName.optional(),
  note: newNote.optional(),
  wantedOn: date.optional(),
  notBefore: date.optional(),
  promisedOn: date.optional(),
  heldUntil: date.optional(),
  slip: z.enum(SLIPS).optional(),
  seen: text.optional().describe('What a 409 said, to take it all the same.'),
  address: newNote.optional().describe('Where it is taken.'),
});

export const taken = z.strictObject({ id: z.string().nullable(), change: z.int() });

export const done = z.strictObject({ change: z.int().describe('Names the change, as the record of changes does.') });

export const moulds = z.strictObject({
  items: z.array(
    z.strictObject({
      id: z.string(),
      condition: z.string(),
      isSetUp: z.boolean(),
      setFor: z.string(),
      piece: z.strictObject({ name: z.string(), filledAt: z.string(), stripAt: z.string().nullable() }).nullable(),
      nextPourAt: z.string().nullable(),
      turnsToSealing: z.number().nullable(),
      repairedOn: z.string().nullable(),
    }),
  ),
});

export const stock = z.strictObject({
  items: z.array(
    z.strictObject({
      material: z.string(),
      name: z.string(),
      unit: z.string(),
      inYard: z.number(),
      spokenFor: z.number(),
      spare: z.number(),
      coming: z.array(z.strictObject({ quantity: z.number(), on: z.string() })),
    }),
  ),
});

export const buying = z.strictObject({
  items: z
    .array(
      z.strictObject({
        supplier: z.string(),
        on: z.string(),
        isFetched: z.boolean(),
        lines: z.array(
          z.strictObject({
            material: z.string(),
            name: z.string(),
            quantity: z.number(),
            unit: z.string(),
            orderBy: z.string(),
          }),
        ),
      }),
    )
    .describe('Trips and orders, the soonest first. Amounts in the unit that the yard shows.'),
});

export const today = z.strictObject({
  now: z.string(),
  session: z.strictObject({ date: z.string(), start: z.string(), end: z.string() }).nullable(),
  steps: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.string(),
      at: z.string(),
      until: z.string(),
      moulds: z.array(z.string()),
      order: z.string().nullable(),
    }),
  ),
});

export const plan = planFile;

/** When it was done, where that was not just now. */
const at = instant.optional();
/** Which step of `/today` it is; what is recorded twice by one name is found again. */
const step = name.describe('The `name` of a step of `/today`.').optional();
/** What was asked about, and is so. */
const sure = z.array(z.enum(DOUBTS)).max(DOUBTS.length).optional();

export const coated = z.strictObject({ mould: name, at, step });
export const prepared = z.strictObject({ mould: name, casting: name, isSealed: z.boolean().optional(), at, step });
export const stripped = z.strictObject({
  mould: name,
  cameOut: z.enum(CAME_OUT),
  reason: newNote.optional(),
  at,
  step,
  sure,
});
export const poured = z.strictObject({
  pours: z
    .array(z.strictObject({ mould: name, casting: name, order: name.optional(), isSealed: z.boolean().optional() }))
    .min(1)
    .max(40),
  bags: z.number().positive().max(1000).optional(),
  ...{ at, step, sure },
});
export const packed = z.strictObject({ order: name, evenShort: z.boolean().optional(), at, step, sure });
