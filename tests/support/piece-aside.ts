import { finishedPieces } from '../../db/stores/finished-store.ts';
import { piecesToMend } from '../../db/stores/piece-to-mend-store.ts';
import { recordStrip } from '../../src/usecases/today/record-strip.ts';
import { doneOf } from './outcomes.ts';
import { plannedYard, saturday } from './planned-yard.ts';
import { yardContext } from './yard-context.ts';

/** A yard with one piece kept aside to be mended: poured on Saturday at 9:00, stripped at 10:30, 72 hours to cure. */
export const pieceAside = async () => {
  const base = plannedYard();
  const { database } = await yardContext(
    plannedYard({
      yard: { ...base.yard, now: saturday('10:30') },
      mixes: [{ ...base.mixes[0]!, cureHours: 72 }],
      finished: [],
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') }],
    }),
  );
  const at = (now: string) => ({ database, now });
  const record = { mould: '900 no. 1', cameOut: 'mend' as const, reason: 'corner' };
  const { plan } = doneOf(await recordStrip(at(saturday('10:30')), record));
  const aside = () => database.read(piecesToMend);
  const id = (await aside())[0]!.id;
  return { id, at, plan, aside, finished: () => database.read(finishedPieces) };
};
