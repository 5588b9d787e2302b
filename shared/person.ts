/** What somebody may do who signs in: all of it; all but who may come in; today, the moulds and counting. */
export const ROLES = ['owner', 'office', 'yard'] as const;
/** One of `ROLES`. */
export type Role = (typeof ROLES)[number];

/** Somebody who has signed in. */
export interface Person {
  id: number;
  name: string;
  role: Role;
}
