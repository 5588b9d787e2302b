import { FLOAT_DAYS, type YardHabits } from '../../shared/habits.ts';
import { yardHabits } from '../tables/habits.ts';
import type { Tx } from '../transaction.ts';

const UNSAID = { currency: 'EUR', weekStart: 'MO', floatDays: FLOAT_DAYS, demo: false } as const;

const rowOf = async (tx: Tx) => {
  const [row] = await tx.select().from(yardHabits);
  return row ?? { id: 1, ...UNSAID };
};

/** The yard's money and week, and its float: euros from Monday on and a working day until it says otherwise. */
export const habitsOfYard = async (tx: Tx): Promise<YardHabits> => {
  const { currency, weekStart, floatDays } = await rowOf(tx);
  return { currency, weekStart, floatDays };
};

/** What is there is the demo yard, and nobody's own. */
export const isDemo = async (tx: Tx): Promise<boolean> => (await rowOf(tx)).demo;

const write = async (tx: Tx, set: Partial<YardHabits & { demo: boolean }>): Promise<void> => {
  await tx
    .insert(yardHabits)
    .values({ id: 1, ...UNSAID, ...set })
    .onConflictDoUpdate({ target: yardHabits.id, set });
};

/** Sets the yard's money (three letters, ISO 4217), the day its week starts on and its float, those that are named; whether it is the demo stays. */
export const setHabits = (tx: Tx, habits: Partial<YardHabits>): Promise<void> => write(tx, habits);

/** Says whether what is there is the demo yard; money and week stay. */
export const setDemo = (tx: Tx, demo: boolean): Promise<void> => write(tx, { demo });
