import { addRecordedSteps, minutesOfSteps } from '../../../db/stores/recorded-step-store.ts';
import { listText } from '../../../shared/list-text.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { orRecorded } from '../plan/recorded-once.ts';
import { pieceKeyOf } from './session-step.ts';

/** Pieces in moulds, by the names they have on the page, and when they were covered; null for just now. */
interface CoveredTyped {
  pieces: readonly string[];
  at?: string | null;
}

/** The name under which it is found again that a piece was covered. */
export const coveredName = (pieceKey: string): string => `covered ${pieceKey}`;

const mouldsOf = (pieces: readonly string[], { inMould }: YardFile): string[] =>
  inMould
    .filter(({ mould, filledAt }) => pieces.includes(pieceKeyOf(mould, minuteOf(filledAt))))
    .map(({ mould }) => mould);

/**
 * Pieces that set are covered and kept wet, since a minute. No plan asks for it: it stands with them until they are stripped,
 * and in what was done. Refused at `pieces` where none of them is in its mould.
 */
export const coverPieces = (
  context: UseCaseContext,
  { pieces, at = null }: CoveredTyped,
): Promise<Outcome<Changed<{ moulds: string[] } | null>>> => {
  const names = pieces.map(coveredName);
  return orRecorded(context, { names, at, field: 'pieces' }, () =>
    changing(
      context,
      { kind: 'covered', words: ({ moulds }) => `Covered and wet: ${listText(moulds)}` },
      async (tx, yard, change) => {
        // Somebody else may have covered some of them meanwhile, and said so.
        const known = await minutesOfSteps(tx, names);
        const fresh = pieces.filter((piece) => !known.has(coveredName(piece)));
        const moulds = mouldsOf(fresh, yard);
        if (moulds.length === 0) return refuse('pieces', 'They are not in their moulds any more. Nothing was changed.');
        const since = writtenAt(at, { now: context.now, yard, path: 'pieces' });
        if (!since.ok) return since;
        const said = { what: 'covered and wet', minute: minuteOf(since.value) };
        await addRecordedSteps(
          tx,
          change,
          fresh.map((piece) => ({ step: coveredName(piece), said })),
        );
        return done({ moulds });
      },
      { carryOn: (plan) => plan },
    ),
  );
};
