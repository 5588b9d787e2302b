import { dropGuess, setTyped } from '../../../db/stores/figure-store.ts';
import { updateTimes } from '../../../db/stores/times-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { ENOUGH_MEASURED, measuredTimes, withMeasured } from '../../engine/begin/measured-times.ts';
import { done, refuse } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { figureChanges } from './show-measured.ts';

const WHAT = { 'set up': 'Setting up', strip: 'Stripping', batch: 'Mixing and filling' } as const;

interface Taken {
  words: string;
}

/**
 * The yard's figures are what was measured from now on, and are no guesses any more. Refused where too few are measured, or
 * more were since the page was shown, so that it would be another figure.
 */
export const takeMeasured = ({ what, id, minutes }: FormFields): Edit<Taken> => ({
  what: { kind: 'measured', words: ({ words }) => words },
  work: async (tx, yard) => {
    const measured = measuredTimes(await workRecords(tx), yard).find((one) => one.what === what && one.id === id);
    if (!measured || measured.count < ENOUGH_MEASURED)
      return refuse('measured', `Fewer than ${ENOUGH_MEASURED} of that are measured. Nothing was changed.`);
    if (String(measured.minutes.median) !== minutes)
      return refuse(
        'measured',
        'More was measured since, and it comes to another time. Look again; nothing was changed.',
      );
    const changes = figureChanges(yard, measured);
    if (changes.length === 0) return refuse('measured', 'The figures say so already. Nothing was changed.');
    await updateTimes(tx, withMeasured(yard, measured));
    for (const { kind, id: owner, figure } of changes) {
      await dropGuess(tx, { kind, id: owner, figure });
      await setTyped(tx, { kind, id: owner, figure }, null);
    }
    const name = (measured.what === 'batch' ? yard.mixes : yard.castings).find((one) => one.id === id)?.name ?? id;
    const figures = changes.map((change) => `${change.before} to ${change.after}`).join(', ');
    return done({ words: `${WHAT[measured.what]}, ${name}: as measured (minutes ${figures})` });
  },
});
