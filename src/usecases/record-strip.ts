import { addFinished } from '../../db/stores/finished-store.ts';
import { emptyMould, mouldById, updateMould } from '../../db/stores/mould-store.ts';
import { minuteOf } from '../../shared/time.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { afterStrip } from './carry-on.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, type UseCaseContext } from './context.ts';
import { settingOf } from './setting.ts';

/**
 * A piece is out of its mould, and the mould is dirty. A good piece cures on until it is fit to go out by the plan's
 * temperatures; one that is not good is gone, and is poured again if an order needs it.
 */
export const recordStrip = (
  context: UseCaseContext,
  { mould: id, good }: { mould: string; good: boolean },
): Promise<Outcome<Changed<null>>> =>
  changing(
    context,
    { kind: 'stripped', words: good ? `${id} stripped` : `${id} stripped, the piece is not good` },
    async (tx, yard) => {
      const mould = await mouldById(tx, id);
      if (!mould?.piece) return refuse('mould', `${id} has no piece in it by the stock book. Nothing was changed.`);
      const { casting, filledAt, order } = mould.piece;
      const now = minuteOf(context.now);
      const cured = settingOf(yard).curedAt(casting, minuteOf(filledAt));
      const readyAt = cured > now ? calendarOf(yard.yard.timeZone).instantText(cured) : null;
      await emptyMould(tx, id);
      if (good) await addFinished(tx, { casting, count: 1, readyAt, order });
      const outOfUse = mould.condition === 'damaged' || mould.condition === 'retired';
      await updateMould(tx, id, { condition: outOfUse ? mould.condition : 'dirty', prepped: false });
      return done(null);
    },
    good ? { carryOn: afterStrip(id, minuteOf(context.now)) } : {},
  );
