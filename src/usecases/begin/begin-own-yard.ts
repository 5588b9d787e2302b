import type { Tx } from '../../../db/open.ts';
import { setCastingSize } from '../../../db/stores/casting-size-store.ts';
import { dismissNotice, openNotices } from '../../../db/stores/change-store.ts';
import { addGuesses } from '../../../db/stores/figure-store.ts';
import { setHabits } from '../../../db/stores/habits-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import type { English } from '../../../shared/english.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { castingIdOf, yardFromAnswers } from '../../engine/begin/begin-yard.ts';
import { emptyYard } from '../../engine/begin/empty-yard.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type BegunTyped, beginTyped, nameTyped, writtenTyped } from '../typed/begin-form.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { TypedReader } from '../typed/typed-reader.ts';

const begun = {
  kind: 'yard begun',
  words: ({ name }: { name: string }) => `${name} begun; what was there is put away`,
};

/** Answers that were read make a yard file; if not, the program is at fault. */
const checked = (file: YardFile): YardFile => {
  const read = readYardFile(file);
  if (read.ok) return read.yard;
  throw new Error(
    `The first yard has faults: ${read.faults.map(({ path, message }) => `${path} ${message}`).join('; ')}`,
  );
};

const keepSizes = async (tx: Tx, { lengths, height, thickness }: BegunTyped): Promise<void> => {
  for (const length of lengths)
    await setCastingSize(tx, { casting: castingIdOf(length.mm), length, height, thickness });
};

/** Units and words as they were said. Who writes as in the US pays in dollars and begins the week on Sunday, until it says otherwise. */
const setWriting = async (tx: Tx, { system, english }: { system: UnitSystem; english: English }): Promise<void> => {
  await setUnits(tx, system, english);
  if (english === 'US') await setHabits(tx, { currency: 'USD', weekStart: 'SU' });
};

/** Notices of the yard before say nothing about the one that takes its place. */
const putNoticesAway = async (tx: Tx, now: string): Promise<void> => {
  for (const { id } of await openNotices(tx)) await dismissNotice(tx, id, now);
};

/** Begins a yard of one's own with the four answers. All that was there is put away, and comes back when it is undone. */
export const beginWithAnswers = async (
  context: UseCaseContext,
  typed: FormFields,
): Promise<Outcome<Changed<{ name: string }>>> => {
  const read = beginTyped(typed, context.now);
  if (!read.ok) return read;
  const made = yardFromAnswers(read.value.answers);
  if (!made.ok) return refuse(made.at, made.reason);
  return changing(context, begun, async (tx) => {
    await replaceYard(tx, checked(made.yard));
    await putNoticesAway(tx, context.now);
    await setWriting(tx, read.value);
    await keepSizes(tx, read.value);
    await addGuesses(tx, made.guesses);
    return done({ name: made.yard.yard.name });
  });
};

/** Begins a yard of one's own that is empty but for its name and clock. */
export const beginEmpty = async (
  context: UseCaseContext,
  typed: FormFields,
): Promise<Outcome<Changed<{ name: string }>>> => {
  const reader = new TypedReader(typed);
  const named = reader.outcome({ ...nameTyped(reader), written: writtenTyped(reader) });
  if (!named.ok) return named;
  return changing(context, begun, async (tx) => {
    const { written, ...of } = named.value;
    await replaceYard(tx, checked(emptyYard({ ...of, now: context.now })));
    await putNoticesAway(tx, context.now);
    await setWriting(tx, written);
    return done({ name: named.value.name });
  });
};
