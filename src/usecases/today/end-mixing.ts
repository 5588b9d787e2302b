import { addWorkRecords, recentWorkRecords } from '../../../db/stores/work-record-store.ts';
import { listText } from '../../../shared/list-text.ts';
import { minuteOf } from '../../../shared/time.ts';
import { saidOfBatch } from '../../engine/book/mixing-begun.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import { type Changed, changing } from '../plan/changing.ts';

/** A batch that is mixed, by its moulds, and when it was; null for just now. */
interface MixedTyped {
  moulds: readonly string[];
  at: string | null;
}

/**
 * A batch is mixed, and is filled from now on: nothing of the plan hangs on it, but with "Mixing now" before it and "Poured" after
 * it says what mixing takes, and what filling. Refused at `at` where nobody said that it is being mixed, or somebody said this
 * already.
 */
export const endMixing = (
  context: UseCaseContext,
  { moulds, at }: MixedTyped,
): Promise<Outcome<Changed<{ moulds: readonly string[] }>>> =>
  changing(
    context,
    { kind: 'mixed', words: (value) => `Mixed, and being filled: ${listText(value.moulds)}` },
    async (tx, yard) => {
      const when = writtenAt(at, { now: context.now, yard });
      if (!when.ok) return when;
      const records = await recentWorkRecords(tx);
      const pours = moulds.map((mould) => ({ mould }));
      const begun = saidOfBatch(records, pours, { kind: 'mixing begun', by: minuteOf(when.value) });
      if (begun === null)
        return refuse('at', 'Tap “Mixing now” first: nobody said that it is being mixed. Nothing was changed.');
      const mixed = saidOfBatch(records, pours, { kind: 'mixed', by: minuteOf(when.value) });
      if (mixed !== null && minuteOf(mixed) >= minuteOf(begun))
        return refuse('at', 'That is recorded already. Nothing was changed.');
      await addWorkRecords(tx, [{ kind: 'mixed', at: when.value, moulds: [...moulds] }], context.by);
      return done({ moulds });
    },
    { carryOn: (plan) => plan },
  );
