import type { YardFile } from '../../shared/yard-file.ts';
import { isOut } from '../../src/engine/book/mould-state.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import type { Session } from '../../src/engine/calendar/sessions.ts';
import { countMaterial } from '../../src/usecases/buying/count-material.ts';
import type { Outcome, UseCaseContext } from '../../src/usecases/core/context.ts';
import { markMould } from '../../src/usecases/moulds/mark-mould.ts';
import { saveOrder } from '../../src/usecases/orders/save-order.ts';
import { takeOrder } from '../../src/usecases/orders/take-order.ts';
import { countFinished } from '../../src/usecases/pieces/count-finished.ts';
import { mouldsOfStep } from '../../src/usecases/plan/late-steps.ts';
import { onePersonFewer } from '../../src/usecases/today/one-person-fewer.ts';
import type { Begun } from './begun-by.ts';
import { BLANK_DRAFT } from './blank-draft.ts';
import type { Dice } from './random-yard/dice.ts';

const draftOf = (yard: YardFile, dice: Dice) => ({
  ...BLANK_DRAFT,
  lines: [{ row: 0, line: { casting: dice.pick(yard.castings).id, quantity: dice.whole(1, 4) } }],
});

type Act = (context: UseCaseContext, begun: Begun, dice: Dice, session: Session) => Promise<number | null>;

const changeOf = (outcome: Outcome<{ change: number }>): number | null => (outcome.ok ? outcome.value.change : null);

/** Changes anybody may make in the middle of a session; each gives its number, or null where there is nothing of the kind. */
export const MIDWAY_ACTS: Record<string, Act> = {
  'something is counted': async (context, { yard }, dice) => {
    const material = dice.pick(yard.materials);
    return changeOf(await countMaterial(context, material.id, { text: String(Math.floor(material.onHand / 2)) }));
  },
  'pieces are counted': async (context, { yard }, dice) => {
    const casting = dice.pick(yard.castings).id;
    const there = yard.finished.reduce((sum, lot) => sum + (lot.casting === casting ? lot.count : 0), 0);
    const counted = there > 0 && dice.chance(0.7) ? there - 1 : there + 1;
    return changeOf(await countFinished(context, { casting, counted, was: null }));
  },
  'an order is taken': async (context, { yard }, dice) => {
    const draft = draftOf(yard, dice);
    const first = await saveOrder(context, takeOrder(draft), undefined);
    const saved = first.kind === 'moves' ? await saveOrder(context, takeOrder(draft), first.effect.seen) : first;
    return saved.kind === 'saved' ? saved.change : null;
  },
  'there is one person fewer': async (context, { yard }, _dice, { start }) => {
    const session = calendarOf(yard.yard.timeZone).instantText(start);
    return changeOf(await onePersonFewer(context, { session, window: 0 }));
  },
  'a mould that is not in use is damaged': async (context, { yard, steps }, dice) => {
    const used = new Set(steps.flatMap(mouldsOfStep));
    const free = yard.moulds.filter((mould) => !used.has(mould.id) && !isOut(mould));
    if (free.length === 0) return null;
    const details = { note: '', repairedOn: null, cameOut: null };
    return changeOf(await markMould(context, dice.pick(free).id, 'damaged', details));
  },
};
