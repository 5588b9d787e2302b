import { z } from 'zod';
import { id } from './number.ts';

/** An order is set up in so many parts at most. */
const MOST_PARTS = 2;

const isListed = (most: number) => (ids: readonly string[]) =>
  ids.every((one) => ids.filter((other) => other === one).length <= most);

const choices = z.record(z.string(), z.union([z.number(), z.boolean()]));
const minute = z.number().int();

/** How a plan was come by, as a plan file has it: ids of orders, and choices of the engine by their names. */
export const memoryInFile = z.strictObject({
  sequence: z.array(id).refine(isListed(1), 'names an order twice'),
  setUp: z.array(id).refine(isListed(MOST_PARTS), 'names an order more than twice').optional(),
  choices,
  inShift: z.array(z.tuple([minute, choices])),
  heldBack: z.array(z.strictObject({ order: id, from: minute })).optional(),
  pourFirst: z.array(id).optional(),
});
/** The same, once read: a choice may still be one that the engine does not know. */
export type MemoryInFile = z.infer<typeof memoryInFile>;
