import { z } from 'zod';

/** What a figure about the yard can belong to. A figure of the yard as a whole has the id "yard". */
export const FIGURE_KINDS = ['yard', 'mix', 'casting', 'mould', 'material', 'kit'] as const;

/** A figure: whose it is, and which of its fields, named as in the yard file. */
export const figureOf = z.strictObject({ kind: z.enum(FIGURE_KINDS), id: z.string(), figure: z.string() });
/** Names one figure, and says nothing of its amount. */
export type FigureOf = z.infer<typeof figureOf>;
