/** Whose doing it was, before what was done: "Anna: ", or nothing where nobody has said. */
export const byText = (by: string | null): string => (by === null ? '' : `${by}: `);
