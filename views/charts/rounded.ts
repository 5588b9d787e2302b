/** A place or size of a drawing to a tenth of a pixel: finer is seen by nobody and sent by everybody. */
export const rounded = (value: number): number => Number(value.toFixed(1));
