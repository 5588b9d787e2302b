/** When one piece more is poured where that pays: never, once enough is on record, or by guesses too. */
export const SPARE_RULES = ['never', 'recorded', 'always'] as const;
/** One of them. */
export type SpareRule = (typeof SPARE_RULES)[number];

/** As a yard does it that says nothing: a guess is no reason to pour what nobody asked for. */
export const USUAL_SPARES: SpareRule = 'recorded';
