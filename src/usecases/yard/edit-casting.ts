import type { Tx } from '../../../db/open.ts';
import { removeCastingSize, setCastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { addCasting, rewriteCasting } from '../../../db/stores/casting-store.ts';
import { addGuesses } from '../../../db/stores/figure-store.ts';
import type { Casting } from '../../../shared/casting.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { newId } from '../core/new-id.ts';
import type { Edit } from '../plan/save-edit.ts';
import { figuresOf, keepFigures, typedAnew } from '../typed/figures.ts';
import { measuresOf } from '../typed/measures.ts';
import { type CastingTyped, castingTexts, castingTyped, type Size, withCasting } from './casting-typed.ts';
import type { ContentsWriting } from './contents-typed.ts';
import { keepContents } from './keep-contents.ts';

type Typed = Readonly<Record<string, string>>;

const FIGURES = ['fillMinutes', 'stripMinutes', 'cleanMinutes', 'prepMinutes', 'stripCrew', 'rackSpaces'] as const;

/** Numbers that stand side by side: "600 900 1200", "24,36,48", "600,900". */
const BARE_LENGTHS = /^\d{2,}(\s+\d{2,})+$|^\d{2,}(,\d{2,}){2,}$|^\d{3,},\d{3,}$/;

/**
 * Several lengths in one field: "600, 900 and 1200". A comma between two digits parts them only where it cannot be one of
 * a number: "1,200" stays as it is.
 */
export const lengthsTyped = (text: string): string[] => {
  const parted = text.split(BARE_LENGTHS.test(text) ? /[,\s]+/ : /;|\band\b|,(?!\d)|(?<!\d),/);
  return [...new Set(parted.map((one) => one.trim()).filter(Boolean))];
};

/** What the form was filled in from, what it showed, and what had been typed. */
interface Before {
  casting: Casting;
  shown: Typed;
  typed: Typed;
}

const keep = async (tx: Tx, before: Before | null, { casting, size, guesses }: CastingTyped, typed: Typed) => {
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

/** What is added: a piece by its name, or one for each length. */
const wantedOf = (typed: Typed, yard: YardFile): { id: string; name: string | null; length: string | null }[] => {
  const lengths = lengthsTyped(typed.lengths ?? '');
  const ids = new Set(yard.castings.map(({ id }) => id));
  const idFor = (name: string): string => {
    const id = newId(name, ids);
    ids.add(id);
    return id;
  };
  const base = typed.name ?? '';
  if (lengths.length === 0) return [{ id: idFor(base), name: null, length: null }];
  return lengths.map((length) => {
    const name = `${base || 'Panel'} ${length}`;
    return { id: idFor(name), name, length };
  });
};

const readAll = (typed: Typed, yard: YardFile, writing: ContentsWriting): Outcome<CastingTyped[]> => {
  const wanted = wantedOf(typed, yard);
  if (wanted.length > 1 && (typed.kg ?? '') !== '')
    return refuse('kg', 'Several lengths weigh different amounts. Leave this empty, and correct each of them later.');
  const read = wanted.map((one) => castingTyped(typed, one, null, yard, writing));
  const faults = read.flatMap((one) => (one.ok ? [] : one.faults));
  if (faults.length > 0) return { ok: false, faults };
  return done(read.flatMap((one) => (one.ok ? [one.value] : [])));
};

/** Something that is cast, in one length or in several at once. */
export const addCastings = (typed: Typed): Edit<string> => ({
  what: { kind: 'casting added', words: (names) => `${names} added to what is cast` },
  work: async (tx, yard) => {
    const { system } = await measuresOf(tx);
    const read = readAll(typed, yard, { system, materials: yard.materials, typed: {} });
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
export const editCasting = (id: string, typed: Typed): Edit<string> => ({
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
