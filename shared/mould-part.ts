import { z } from 'zod';

/** The parts of a mould's set as most moulds have them; a yard may name others. */
export const MOULD_PARTS = ['base', 'ends', 'sides', 'sleeve plugs'] as const;

/** How a part can be. A worn one is only a note; a broken one takes its mould out of use. "none": the mould has no such part. */
export const PART_CONDITIONS = ['whole', 'worn', 'broken', 'none'] as const;
/** One of `PART_CONDITIONS`. */
export type PartCondition = (typeof PART_CONDITIONS)[number];

/** A longer name is none. */
export const LONGEST_PART = 40;

/** What a form says in the place of a part that is none of those it lists; a name follows. */
export const OTHER_PART = 'other';

const few = z.string().min(1, 'is empty');

/** What a part is called. */
export const partName = few.max(LONGEST_PART, `has more than ${LONGEST_PART} letters`);

/**
 * What was said of one part of a mould's set. `tookOut`: the mould is out of use because of it, and free again once it is
 * mended. No plan reads it.
 */
export const mouldPart = z.strictObject({
  part: partName,
  condition: z.enum(PART_CONDITIONS),
  note: few.optional(),
  tookOut: z.literal(true).optional(),
});
/** A part once read. */
export type MouldPart = z.infer<typeof mouldPart>;

/**
 * All parts of a set: the usual ones first, whole where nothing was said of them, then those the yard named.
 *
 * `setOf([{ part: 'base', condition: 'none' }]).map(({ part }) => part)` is ['ends', 'sides', 'sleeve plugs'].
 */
export const setOf = (said: readonly MouldPart[]): MouldPart[] => {
  const usual = MOULD_PARTS.map(
    (part): MouldPart => said.find((one) => one.part === part) ?? { part, condition: 'whole' },
  );
  const own = said.filter(({ part }) => !usual.some((one) => one.part === part));
  return [...usual, ...own].filter(({ condition }) => condition !== 'none');
};

/**
 * What is said of the parts of a mould that is in use: whatever was broken is mended.
 *
 * `partsInUse([{ part: 'ends', condition: 'broken', note: 'split' }])` is [{ part: 'ends', condition: 'whole' }].
 */
export const partsInUse = (said: readonly MouldPart[]): MouldPart[] =>
  said.map((one) => (one.condition === 'broken' ? { part: one.part, condition: 'whole' } : one));

/** `partWords({ part: 'ends', condition: 'broken', note: 'split' })` is "ends broken: split". */
export const partWords = ({ part, condition, note }: Pick<MouldPart, 'part' | 'condition' | 'note'>): string =>
  `${condition === 'none' ? `no ${part}` : `${part} ${condition}`}${note ? `: ${note.replace(/\.$/, '')}` : ''}`;
