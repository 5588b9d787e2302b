import { z } from 'zod';

/** What a figure about the yard can belong to. */
export const FIGURE_KINDS = ['yard', 'mix', 'casting', 'mould', 'material', 'kit'] as const;

/** A figure: whose it is, and which of its fields, named as in the yard file. */
export const figureOf = z.strictObject({ kind: z.enum(FIGURE_KINDS), id: z.string(), figure: z.string() });
export type FigureOf = z.infer<typeof figureOf>;
