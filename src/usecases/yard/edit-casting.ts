import type { Tx } from '../../../db/open.ts';
import { removeCastingSize, setCastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { addCasting, rewriteCasting } from '../../../db/stores/casting-store.ts';
import { addGuesses } from '../../../db/stores/figure-store.ts';
import type { Casting } from '../../../shared/casting.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import {
  type CastingTyped,
  castingTexts,
  castingTyped,
  newCastingsTyped,
  type Size,
  withCasting,
} from '../typed/casting-form.ts';
import { figuresOf, keepFigures, typedAnew } from '../typed/figures.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { measuresOf } from '../typed/measures.ts';
import { keepContents } from './keep-contents.ts';

const FIGURES = ['fillMinutes', 'stripMinutes', 'cleanMinutes', 'prepMinutes', 'stripCrew', 'rackSpaces'] as const;

/** What the form was filled in from, what it showed, and what had been typed. */
interface Before {
  casting: Casting;
  shown: FormFields;
  typed: FormFields;
}

const keep = async (tx: Tx, before: Before | null, { casting, size, guesses }: CastingTyped, typed: FormFields) => {
  const owner = { kind: 'casting', id: casting.id } as const;
  await keepFigures(tx, owner, [
    { figure: 'kg', before: before?.casting.kg, after: casting.kg, typed: typedAnew(typed, before?.shown ?? {}, 'kg') },
    ...FIGURES.map((figure) => ({ figure, before: before?.casting[figure], after: casting[figure] })),
  ]);
  await addGuesses(
    tx,
    guesses.map((figure) => ({ ...owner, figure })),
  );
  await keepContents(tx, owner, typed, before ?? {});
  await (size ? setCastingSize(tx, { casting: casting.id, ...size }) : removeCastingSize(tx, casting.id));
};

/** Something that is cast, in one length or in several at once. */
export const addCastings = (typed: FormFields): Edit<string> => ({
  what: { kind: 'casting added', words: (names) => `${names} added to what is cast` },
  work: async (tx, yard) => {
    const { system } = await measuresOf(tx);
    const read = newCastingsTyped(typed, yard, { system, materials: yard.materials, typed: {} });
    if (!read.ok) return read;
    let then: Outcome<YardFile> = done(yard);
    for (const { casting } of read.value) if (then.ok) then = withCasting(then.value, casting, typed);
    if (!then.ok) return then;
    for (const one of read.value) {
      await addCasting(tx, one.casting);
      await keep(tx, null, one, typed);
    }
    return done(read.value.map(({ casting }) => casting.name).join(', '));
  },
});

const sizeOf = async (tx: Tx, id: string): Promise<Size> => {
  const found = (await sizesOfCastings(tx)).find(({ casting }) => casting === id);
  return found ? { length: found.length, height: found.height, thickness: found.thickness } : null;
};

/** What a piece is called, weighs, takes, and how long each bit of work on it is. */
export const editCasting = (id: string, typed: FormFields): Edit<string> => ({
  what: { kind: 'casting set', words: (name) => `${name} changed` },
  work: async (tx, yard) => {
    const casting = yard.castings.find((one) => one.id === id);
    if (!casting) return refuse('name', 'It is not among what is cast any more.');
    const { guesses, typed: kept } = await figuresOf(tx, { kind: 'casting', id });
    const before = { casting, size: await sizeOf(tx, id), isWeightGuessed: guesses.includes('kg') };
    const { system } = await measuresOf(tx);
    const writing = { system, materials: yard.materials, typed: kept };
    const read = castingTyped(typed, { id, name: null, length: null }, before, yard, writing);
    if (!read.ok) return read;
    const then = withCasting(yard, read.value.casting, typed);
    if (!then.ok) return then;
    await rewriteCasting(tx, read.value.casting);
    const shown = castingTexts(casting, before.size, writing);
    await keep(tx, { casting, shown, typed: kept }, read.value, typed);
    return done(read.value.casting.name);
  },
});
