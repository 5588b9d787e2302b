import type { Tx } from '../../../db/open.ts';
import { dropGuess, setTyped } from '../../../db/stores/figure-store.ts';
import { updateTimes } from '../../../db/stores/times-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { ENOUGH_STRIPS, measuredStrips, withStrips } from '../../engine/begin/measured-strips.ts';
import { ENOUGH_MEASURED, measuredTimes, withMeasured } from '../../engine/begin/measured-times.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { figureChanges, namedIn } from './show-measured.ts';
import { stripKey } from './strip-facts.ts';

const WHAT = {
  'set up': 'Setting up',
  strip: 'Stripping',
  batch: 'Mixing and filling',
  mix: 'Mixing',
  fill: 'Filling',
} as const;

interface Taken {
  words: string;
}

const STALE = 'More was measured since, and it comes to another time. Look again; nothing was changed.';
const SAME = 'The figures say so already. Nothing was changed.';

/** Figures that were confirmed by measuring: no guesses any more, and not as somebody typed them. */
const settle = async (tx: Tx, figures: readonly FigureOf[]): Promise<void> => {
  for (const figure of figures) {
    await dropGuess(tx, figure);
    await setTyped(tx, figure, null);
  }
};

/** How a mix sets, as its strips said. */
const takeStrips = async (tx: Tx, yard: YardFile, { id, minutes }: FormFields): Promise<Outcome<Taken>> => {
  const measured = measuredStrips(await workRecords(tx), yard).find((one) => one.mix === id);
  if (!measured || measured.count < ENOUGH_STRIPS)
    return refuse('measured', `Fewer than ${ENOUGH_STRIPS} of that are measured. Nothing was changed.`);
  if (stripKey(measured) !== minutes) return refuse('measured', STALE);
  const mix = yard.mixes.find((one) => one.id === measured.mix)!;
  const { demouldMinutes, activationKelvin } = measured;
  if (mix.demouldMinutes === demouldMinutes && mix.activationKelvin === activationKelvin)
    return refuse('measured', SAME);
  await updateTimes(tx, withStrips(yard, measured));
  await settle(
    tx,
    ['demouldMinutes', 'activationKelvin'].map((figure) => ({ kind: 'mix', id: mix.id, figure })),
  );
  return done({ words: `${mix.name} stripped as measured: after ${mix.demouldMinutes} to ${demouldMinutes} minutes` });
};

const takeTimes = async (tx: Tx, yard: YardFile, { what, id, minutes }: FormFields): Promise<Outcome<Taken>> => {
  const measured = measuredTimes(await workRecords(tx), yard).find((one) => one.what === what && one.id === id);
  if (!measured || measured.count < ENOUGH_MEASURED)
    return refuse('measured', `Fewer than ${ENOUGH_MEASURED} of that are measured. Nothing was changed.`);
  if (String(measured.minutes.median) !== minutes) return refuse('measured', STALE);
  const changes = figureChanges(yard, measured);
  if (changes.length === 0) return refuse('measured', SAME);
  await updateTimes(tx, withMeasured(yard, measured));
  await settle(
    tx,
    changes.map(({ kind, id: owner, figure }) => ({ kind, id: owner, figure })),
  );
  const name = namedIn(yard, measured.what).find((one) => one.id === id)?.name ?? id;
  const figures = changes.map((change) => `${change.before} to ${change.after}`).join(', ');
  return done({ words: `${WHAT[measured.what]}, ${name}: as measured (minutes ${figures})` });
};

/**
 * The yard's figures are what was measured from now on, and are no guesses any more. Refused where too few are measured, or
 * more were since the page was shown, so that it would be another figure.
 */
export const takeMeasured = (fields: FormFields): Edit<Taken> => ({
  what: { kind: 'measured', words: ({ words }) => words },
  work: (tx, yard) => (fields.what === 'strips' ? takeStrips(tx, yard, fields) : takeTimes(tx, yard, fields)),
});
