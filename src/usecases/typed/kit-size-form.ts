import type { Fault } from '../../../shared/fault.ts';
import { FACES, type Faces, KIT_SHAPES, type KitShape, type KitSize } from '../../../shared/kit-size.ts';
import type { TypedLength, UnitSystem } from '../../../shared/units.ts';
import { lengthText, readLength } from '../../engine/units/length.ts';
import { readMass } from '../../engine/units/mass.ts';
import type { Outcome } from '../core/context.ts';

/** The fields of the form, as typed. */
export type KitTyped = Readonly<Record<string, string | undefined>>;

/** What the form of a size asks for. */
export const KIT_FIELDS = [
  ...['shape', 'faces', 'length', 'width', 'cutLength', 'cutWidth', 'courses', 'ground', 'payload', 'panels', 'pins'],
] as const;

/** Those fields alone, of whatever came with them. */
export const kitFields = (typed: KitTyped): KitTyped =>
  Object.fromEntries(KIT_FIELDS.flatMap((name) => (typed[name] === undefined ? [] : [[name, typed[name]]])));

export interface KitAsked {
  size: KitSize;
  /** What one pallet or car may carry; null when nothing was typed. */
  payloadKg: number | null;
}

const LONGEST_MM = 20_000;
const DEEPEST_MM = 3000;
const MOST_COURSES = 12;
/** Of the fields that each shape has beyond its length. */
const FIELDS: Readonly<Record<KitShape, readonly ('width' | 'cutLength' | 'cutWidth')[]>> = {
  row: [],
  rectangle: ['width'],
  L: ['width', 'cutLength', 'cutWidth'],
};

const mostText = (mm: number, system: UnitSystem): string =>
  system === 'metric' ? `${mm / 1000} m` : lengthText(mm, system);

/** Collects what was wrong, so that all of it is said at once. */
class Reader {
  readonly faults: Fault[] = [];
  readonly typed: KitTyped;
  readonly system: UnitSystem;
  constructor(typed: KitTyped, system: UnitSystem) {
    this.typed = typed;
    this.system = system;
  }

  refuse(path: string, message: string): void {
    this.faults.push({ path, message });
  }

  length(name: string, leastMm: number, mostMm: number): TypedLength {
    const read = readLength(this.typed[name] ?? '', this.system);
    if (!read.ok) this.refuse(name, read.reason);
    else if (read.value.mm < leastMm) this.refuse(name, 'Has to be more than nothing.');
    else if (read.value.mm > mostMm)
      this.refuse(name, `That is more than ${mostText(mostMm, this.system)}, the most that is worked out here.`);
    return read.ok ? read.value : { typed: '', mm: 0 };
  }

  courses(): number {
    const text = this.typed.courses ?? '';
    const courses = /^\d{1,3}$/.test(text) ? Number(text) : 0;
    if (courses < 1 || courses > MOST_COURSES)
      this.refuse('courses', `How many courses? Write a whole number from 1 to ${MOST_COURSES}.`);
    return courses;
  }

  payload(): number | null {
    const text = this.typed.payload ?? '';
    if (text === '') return null;
    const read = readMass(text, this.system);
    if (!read.ok) this.refuse('payload', read.reason);
    else if (read.value === 0) this.refuse('payload', 'Has to be more than nothing.');
    return read.ok ? read.value : null;
  }
}

/** The corner an L leaves out is smaller than the whole. */
const refuseCuts = (
  reader: Reader,
  size: Partial<Record<'length' | 'width' | 'cutLength' | 'cutWidth', TypedLength>>,
): void => {
  if (reader.faults.length > 0) return;
  for (const [cut, whole] of [
    ['cutLength', 'length'],
    ['cutWidth', 'width'],
  ] as const) {
    const [part, all] = [size[cut], size[whole]];
    if (part && all && part.mm >= all.mm) reader.refuse(cut, 'The corner left out has to be smaller than the whole.');
  }
};

const oneOf = <T extends string>(words: readonly T[], word: string | undefined): T =>
  words.find((one) => one === word) ?? words[0]!;

export const shapeTyped = (typed: KitTyped): KitShape => oneOf(KIT_SHAPES, typed.shape);
export const facesTyped = (typed: KitTyped): Faces => oneOf(FACES, typed.faces);

/** The size that was typed, each length in whatever unit it was typed in; or everything that could not be read. */
export const kitSizeTyped = (typed: KitTyped, system: UnitSystem): Outcome<KitAsked> => {
  const reader = new Reader(typed, system);
  const shape = shapeTyped(typed);
  const lengths = Object.fromEntries(
    (['length', ...FIELDS[shape]] as const).map((name) => [name, reader.length(name, Number.MIN_VALUE, LONGEST_MM)]),
  ) as Pick<KitSize, 'length' | 'width' | 'cutLength' | 'cutWidth'>;
  const courses = reader.courses();
  const ground = reader.length('ground', 0, DEEPEST_MM);
  const payloadKg = reader.payload();
  refuseCuts(reader, lengths);
  if (reader.faults.length > 0) return { ok: false, faults: reader.faults };
  return { ok: true, value: { size: { shape, faces: facesTyped(typed), ...lengths, courses, ground }, payloadKg } };
};

/** The minutes typed, the guess where none were; null when they are no whole number. */
export const packMinutesTyped = (text: string, guess: number): number | null => {
  if (text === '') return guess;
  return /^\d{1,3}$/.test(text) ? Number(text) : null;
};
