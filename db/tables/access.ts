import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { ROLES, TOKEN_SCOPES } from '../../shared/person.ts';
import { neverEmpty, neverNegative, oneOf } from './limits.ts';

/** Who may come in from elsewhere than the desk itself. No part of the yard: no archive and no undo knows of them. */
export const people = sqliteTable(
  'people',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    name: text().notNull().unique(),
    role: text({ enum: ROLES }).notNull(),
    /** What is kept of the password; none before an invitation was followed. */
    passwordHash: text(),
    madeAt: text().notNull(),
  },
  (t) => [...neverEmpty([t.name, t.madeAt]), oneOf(t.role, ROLES)],
);

/** Browsers in which somebody is signed in, and invitations: the secret itself is not kept, as in `calendarAddresses`. */
export const doorKeys = sqliteTable(
  'doorKeys',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    person: integer()
      .notNull()
      .references(() => people.id, { onDelete: 'cascade' }),
    kind: text({ enum: ['session', 'invitation'] }).notNull(),
    /** SHA-256 of the secret, in hexadecimal. */
    secretHash: text().notNull().unique(),
    until: text().notNull(),
  },
  (t) => [...neverEmpty([t.secretHash, t.until]), oneOf(t.kind, ['session', 'invitation'])],
);

/** Tokens by which other programs come in: the secret itself is not kept, as in `doorKeys`. */
export const apiTokens = sqliteTable(
  'apiTokens',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    /** Which program it is for: "Shop". */
    name: text().notNull(),
    scope: text({ enum: TOKEN_SCOPES }).notNull(),
    /** SHA-256 of the secret, in hexadecimal. */
    secretHash: text().notNull().unique(),
    madeAt: text().notNull(),
  },
  (t) => [...neverEmpty([t.name, t.secretHash, t.madeAt]), oneOf(t.scope, TOKEN_SCOPES)],
);

/** Keys of people's own phones and computers, by which they sign in (WebAuthn): what is kept of one is public. */
export const passkeys = sqliteTable(
  'passkeys',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    person: integer()
      .notNull()
      .references(() => people.id, { onDelete: 'cascade' }),
    /** What it is on: "Phone". */
    name: text().notNull(),
    /** What the device calls it, in base64url. */
    credential: text().notNull().unique(),
    /** COSE_Key (RFC 9052, 7), in base64url. */
    publicKey: text().notNull(),
    /** How often it was used, as the device counts; 0 where it does not. */
    counter: integer().notNull(),
    madeAt: text().notNull(),
  },
  (t) => [...neverEmpty([t.name, t.credential, t.publicKey, t.madeAt]), ...neverNegative([t.counter])],
);
