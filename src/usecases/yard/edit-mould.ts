import type { Tx } from '../../../db/open.ts';
import { addMould, rewriteMould } from '../../../db/stores/mould-store.ts';
import { savePlan, storedPlan } from '../../../db/stores/plan-store.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { done, refuse } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import { keepFigures, renameFigures } from '../typed/figures.ts';
import { fitsYardFile } from '../typed/fits-yard-file.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { asMould, mouldTyped, newMouldsTyped, withMould } from '../typed/mould-form.ts';

const addedWords = (names: readonly string[]): string =>
  names.length === 1 ? `${names[0]} added` : `${names[0]} to ${names.at(-1)} added`;

/** "4 moulds of 1100": 1100 no. 1 to no. 4, or on from the numbers there are. */
export const addMoulds = (typed: FormFields): Edit<string[]> => ({
  what: { kind: 'moulds added', words: addedWords },
  work: async (tx, yard) => {
    const read = newMouldsTyped(typed, yard);
    if (!read.ok) return read;
    const { names, casting, coat, note } = read.value;
    const makes = [{ casting, changeMinutes: 0 }];
    const fresh = { makes, setFor: casting, condition: 'ready' as const, prepped: false, turnsSinceOil: 0 };
    const moulds = names.map((id) => asMould({ ...fresh, id }, coat));
    const then = fitsYardFile({ ...yard, moulds: [...yard.moulds, ...moulds] }, `moulds[${yard.moulds.length}]`);
    if (!then.ok) return then;
    for (const mould of moulds) await addMould(tx, mould, note);
    return done(names);
  },
});

/** What is fixed and planned for a mould stays its own under another name. */
const renameInPlan = async (tx: Tx, from: string, to: string): Promise<void> => {
  const stored = await storedPlan(tx);
  if (!stored) return;
  const renamed = <T extends { mould: string }>(list: readonly T[]): T[] =>
    list.map((one) => (one.mould === from ? { ...one, mould: to } : one));
  const { pours, strips, unstripped } = stored.plan;
  const plan = { ...stored.plan, pours: renamed(pours), strips: renamed(strips), unstripped: renamed(unstripped) };
  const unanswered = stored.unanswered && { ...stored.unanswered, pours: renamed(stored.unanswered.pours) };
  await savePlan(tx, { ...stored, plan, unanswered });
};

/** What a mould is called, makes and needs. */
export const editMould = (id: string, typed: FormFields): Edit<string> => ({
  what: { kind: 'mould set', words: (name) => (name === id ? `${id} changed` : `${id} is called ${name} now`) },
  work: async (tx, yard) => {
    const mould = yard.moulds.find((one) => one.id === id);
    if (!mould) return refuse('id', thereIsNo('mould', id));
    const read = mouldTyped(typed, mould, yard);
    if (!read.ok) return read;
    const { coat, note, serviceEveryTurns, ...edited } = read.value;
    // Set up for another piece than before, it is not set up.
    const prepped = mould.prepped && edited.setFor === mould.setFor;
    const after = asMould({ ...mould, ...edited, prepped }, coat);
    const { oilEveryTurns: _every, ...rest } = after;
    const then = withMould(yard, id, coat.oilEveryTurns === null ? rest : after);
    if (!then.ok) return then;
    await rewriteMould(tx, id, { ...edited, ...coat, prepped, note, serviceEveryTurns });
    if (edited.id !== id) {
      await renameInPlan(tx, id, edited.id);
      await renameFigures(tx, { kind: 'mould', id }, edited.id);
    }
    const figures = (['makes', 'oilEveryTurns', 'oilMinutes', 'oilDryMinutes', 'turnsSinceOil'] as const).map(
      (figure) => ({
        figure,
        before: mould[figure],
        after: figure === 'oilEveryTurns' ? (coat.oilEveryTurns ?? undefined) : after[figure],
      }),
    );
    await keepFigures(tx, { kind: 'mould', id: edited.id }, figures);
    return done(edited.id);
  },
});
