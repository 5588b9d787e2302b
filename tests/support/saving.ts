import type { Outcome, UseCaseContext } from '../../src/usecases/core/context.ts';
import { exportArchive } from '../../src/usecases/files/export-file.ts';
import { type Changed, changing } from '../../src/usecases/plan/changing.ts';
import { type Edit, saveEdit } from '../../src/usecases/plan/save-edit.ts';

/** Does what an edit does without asking first, whatever comes of it. */
export const doAnyway = <T>(
  context: UseCaseContext,
  { what, work, replanning }: Edit<T>,
): Promise<Outcome<Changed<T>>> => changing(context, what, work, replanning);

/** Saves an edit whatever it moves; a refusal is an error of the test. */
export const savedAnyway = async <T>(context: UseCaseContext, edit: Edit<T>): Promise<number> => {
  const first = await saveEdit(context, edit, undefined);
  const saved = first.kind === 'moves' ? await saveEdit(context, edit, first.effect.seen) : first;
  if (saved.kind !== 'saved') throw new Error(`Not saved: ${JSON.stringify(saved)}`);
  return saved.change;
};

/** What an edit is refused for, each as "field: message"; an edit that is not refused is an error of the test. */
export const refusedFor = async <T>(context: UseCaseContext, edit: Edit<T>): Promise<string[]> => {
  const saved = await saveEdit(context, edit, undefined);
  if (saved.kind !== 'refused') throw new Error(`Not refused: ${JSON.stringify(saved)}`);
  return saved.faults.map(({ path, message }) => `${path}: ${message}`);
};

/** All that an archive holds of a yard, its log apart: what a change that changed nothing leaves as it was. */
export const archiveWithoutLog = async (context: UseCaseContext): Promise<unknown> => {
  const { log: _log, ...rest } = JSON.parse((await exportArchive(context)).text);
  return rest;
};
