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

/** What a token lets another program do: read all but prices and phones; what somebody in the yard does; all of it but who may come in. */
export const TOKEN_SCOPES = ['read', 'yard', 'office'] as const;
/** One of `TOKEN_SCOPES`. */
export type TokenScope = (typeof TOKEN_SCOPES)[number];
