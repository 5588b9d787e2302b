import { writeEntries } from '../../../db/stores/book-store.ts';
import { deliveriesForMixes } from '../../../db/stores/material-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import { listText } from '../../../shared/list-text.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Deliveries } from '../../engine/book/bag-dates.ts';
import { type MouldsLeft, throwAway } from '../../engine/book/throw-away.ts';
import { thrownRecords } from '../../engine/book/work-records.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { workOfStep } from '../plan/late-step-work.ts';
import type { LateStep } from '../plan/late-steps.ts';
import { stepsToRecord } from '../plan/steps-to-record.ts';

type LateBatch = Extract<LateStep, { kind: 'batch' }>;

/** A batch that went off, by the name of its step, and what it leaves of its moulds. */
export interface ThrownBatch {
  step: string;
  left: MouldsLeft;
}

interface Thrown {
  moulds: string[];
  names: string[];
}

/** The batch with the set-ups of its moulds, as far as they are to be recorded: none is left to do, or all are anew. */
const namesOf = ({ name, mix }: LateBatch, steps: readonly LateStep[]): string[] => {
  const own = new Set(mix.pours.map(({ id }) => id));
  return [name, ...steps.filter((step) => step.kind === 'prep' && own.has(step.pour.id)).map((step) => step.name)];
};

/** What throwing a batch away comes to in the book, and which steps end with it. */
const thrown = (yard: YardFile, work: PlanOfWork, { step: name, left }: ThrownBatch, deliveries: Deliveries) => {
  const steps = stepsToRecord(yard, work);
  const batch = steps.find((step): step is LateBatch => step.kind === 'batch' && step.name === name);
  const poured = batch && workOfStep(batch, yard, { planned: [], sticks: work.sticks ?? [], sheets: work.sheets });
  if (poured?.kind !== 'poured')
    return refuse('late', 'That batch is neither under way nor to be recorded any more. Nothing was changed.');
  const booked = throwAway(yard, poured, left);
  if (!booked.ok) return refuse(name, booked.faults[0]?.message ?? '');
  const moulds = poured.pours.map(({ mould }) => mould);
  const records = thrownRecords(poured, yard, { entries: booked.entries, deliveries });
  return done({ entries: booked.entries, records, thrown: { moulds, names: namesOf(batch!, steps) } });
};

/**
 * A batch that is under way, or late, went off: its materials are gone, its moulds are to be cleaned or still set up, and what
 * it was poured for is planned anew.
 */
export const throwBatchAway = (context: UseCaseContext, batch: ThrownBatch): Promise<Outcome<Changed<Thrown>>> =>
  changing<Thrown>(
    context,
    {
      kind: 'thrown away',
      words: ({ moulds }) =>
        `The mix for ${listText(moulds)} thrown away${batch.left === 'set up' ? ', nothing was in the moulds' : ''}`,
    },
    async (tx, yard, _change, _plan, work) => {
      const outcome = thrown(yard, work, batch, await deliveriesForMixes(tx, yard));
      if (!outcome.ok) return outcome;
      await writeEntries(tx, outcome.value.entries);
      await addWorkRecords(tx, outcome.value.records, context.by);
      return done(outcome.value.thrown);
    },
    { unfixed: ({ names }) => ({ notDone: names }) },
  );
