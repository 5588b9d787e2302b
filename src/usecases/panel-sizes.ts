import {
  type CastingSize,
  removeCastingSize,
  setCastingSize,
  sizesOfCastings,
} from '../../db/stores/casting-size-store.ts';
import { unitsOfYard } from '../../db/stores/units-store.ts';
import type { Fault } from '../../shared/fault.ts';
import type { UnitSystem } from '../../shared/units.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { readLength } from '../engine/units/length.ts';
import { read as asRead } from '../engine/units/reading.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { lengthShown } from './size-shown.ts';

export const SIZE_FIELDS = ['length', 'height', 'thickness'] as const;
type SizeField = (typeof SIZE_FIELDS)[number];

/** What the three fields of a piece show. */
const sizeTexts = (size: CastingSize | undefined, system: UnitSystem): Record<SizeField, string> => {
  const shown = (field: SizeField) => (size ? lengthShown(size[field], system) : '');
  return { length: shown('length'), height: shown('height'), thickness: shown('thickness') };
};

/** How large each piece is, as it was typed; empty where nobody said yet. */
export const showPanelSizes = async (context: UseCaseContext) => {
  const { yard } = await currentPlan(context);
  const { sizes, system } = await context.database.read(async (tx) => ({
    sizes: await sizesOfCastings(tx),
    system: await unitsOfYard(tx),
  }));
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    system,
    pieces: yard.castings.map(({ id, name }) => {
      const size = sizes.find(({ casting }) => casting === id);
      return { id, name, ...sizeTexts(size, system) };
    }),
  };
};

/** One piece's three fields: its size, null when all are empty, or what could not be read. */
const sizeTyped = (
  casting: string,
  typed: Readonly<Record<string, string>>,
  system: UnitSystem,
  before: CastingSize | undefined,
): { size: CastingSize | null; faults: Fault[] } => {
  const shown = sizeTexts(before, system);
  const texts = SIZE_FIELDS.map((field) => typed[`${field}:${casting}`] ?? '');
  if (texts.every((text) => text === '')) return { size: null, faults: [] };
  const read = SIZE_FIELDS.map((field, index) =>
    before && texts[index] === shown[field] ? asRead(before[field]) : readLength(texts[index] ?? '', system),
  );
  const faults = read.flatMap((one, index): Fault[] => {
    const path = `${SIZE_FIELDS[index]}:${casting}`;
    if (!one.ok) return [{ path, message: one.reason }];
    return one.value.mm > 0 ? [] : [{ path, message: 'Has to be more than nothing.' }];
  });
  const [length, height, thickness] = read.map((one) => (one.ok ? one.value : { typed: '', mm: 0 }));
  return { size: { casting, length: length!, height: height!, thickness: thickness! }, faults };
};

const sizesTyped = (
  yard: YardFile,
  typed: Readonly<Record<string, string>>,
  system: UnitSystem,
  before: readonly CastingSize[],
) =>
  yard.castings.map(({ id }) => ({
    id,
    ...sizeTyped(
      id,
      typed,
      system,
      before.find(({ casting }) => casting === id),
    ),
  }));

/** Writes down how large the pieces are; a piece whose fields are empty has no size any more. */
export const setPanelSizes = (
  context: UseCaseContext,
  typed: Readonly<Record<string, string>>,
): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: 'panel sizes set', words: 'Panel sizes written down' }, async (tx, yard) => {
    const before = await sizesOfCastings(tx);
    const sizes = sizesTyped(yard, typed, await unitsOfYard(tx), before);
    const faults = sizes.flatMap((one) => one.faults);
    if (faults.length > 0) return { ok: false, faults };
    for (const { id, size } of sizes) await (size ? setCastingSize(tx, size) : removeCastingSize(tx, id));
    if (JSON.stringify(await sizesOfCastings(tx)) === JSON.stringify(before))
      return refuse('sizes', 'Nothing was changed.');
    return done(null);
  });
