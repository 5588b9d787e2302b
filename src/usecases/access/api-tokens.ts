import { addApiToken, allApiTokens, apiTokenWithHash, removeApiToken } from '../../../db/stores/access-store.ts';
import { type Person, TOKEN_SCOPES, type TokenScope } from '../../../shared/person.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { hashOf, newSecret } from '../core/secret.ts';
import { whoTyped } from '../typed/who-form.ts';

/** A token of another program, without its secret. */
export interface TokenFacts {
  id: number;
  name: string;
  scope: TokenScope;
}

const MOST_TOKENS = 50;

/** The tokens that let other programs in. */
export const tokensOf = async ({ database }: Pick<UseCaseContext, 'database'>): Promise<TokenFacts[]> =>
  (await database.read(allApiTokens)).map(({ id, name, scope }) => ({ id, name, scope }));

/** Makes a token for another program: its secret is given here and never again. */
export const makeToken = async (
  { database, now }: Pick<UseCaseContext, 'database' | 'now'>,
  typed: { program?: string | undefined; scope?: string | undefined },
): Promise<Outcome<string>> => {
  const named = whoTyped(typed.program ?? '');
  const scope = TOKEN_SCOPES.find((one) => one === typed.scope);
  if (!named.ok || named.value === null) return refuse('program', 'Which program is it for? A short name will do.');
  if (scope === undefined) return refuse('scope', 'Choose what it may do.');
  const [secret, name] = [newSecret(), named.value];
  const secretHash = await hashOf(secret);
  return database.write(async (tx) => {
    if ((await allApiTokens(tx)).length >= MOST_TOKENS)
      return refuse('program', 'Withdraw one that is not used first.');
    await addApiToken(tx, { name, scope, secretHash, madeAt: now });
    return done(secret);
  });
};

/** Withdraws a token: it lets nobody in from then on. */
export const withdrawToken = ({ database }: Pick<UseCaseContext, 'database'>, id: number): Promise<void> =>
  database.write((tx) => removeApiToken(tx, id));

/** Whom a token lets in, and whether only to read; null where it lets nobody in. */
export const letInByToken = async (
  { database }: Pick<UseCaseContext, 'database'>,
  secret: string,
): Promise<(Person & { mayOnlyRead: boolean }) | null> => {
  const hash = await hashOf(secret);
  const token = await database.read((tx) => apiTokenWithHash(tx, hash));
  if (!token) return null;
  // Below all people: it is none of them.
  return {
    ...{ id: -token.id, name: token.name, mayOnlyRead: token.scope === 'read' },
    role: token.scope === 'yard' ? 'yard' : 'office',
  };
};
