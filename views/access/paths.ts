/** Where it is decided who may come in. */
export const PEOPLE = '/people';
