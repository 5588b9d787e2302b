import { defineConfig } from 'drizzle-kit';

/** `npx drizzle-kit generate --config db/drizzle.config.ts` writes a migration for what changed in the tables. */
export default defineConfig({ dialect: 'turso', schema: './db/tables/*.ts', out: './db/migrations' });
