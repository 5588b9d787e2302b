import { endDoorKeys, personNamed, setPasswordHash } from '../../../db/stores/access-store.ts';
import type { Person } from '../../../shared/person.ts';
import { type Outcome, refuse } from '../core/context.ts';
import { hashPassword, isPassword, passwordTyped } from './password.ts';
import { type Moment, sessionFor } from './sign-in.ts';

/**
 * Puts another password in the place of one's own, for whoever knows the one of before. Every session of before is over then,
 * and every invitation: the secret of a new session.
 */
export const changeOwnPassword = async (
  moment: Moment,
  { id, name }: Pick<Person, 'id' | 'name'>,
  { before, password }: { before: string; password: string },
): Promise<Outcome<string>> => {
  const stored = await moment.database.read((tx) => personNamed(tx, name));
  if (!(await isPassword(before, stored?.passwordHash ?? null)))
    return refuse('before', 'That is not your password as it is now.');
  const fits = passwordTyped(password);
  if (!fits.ok) return fits;
  const passwordHash = await hashPassword(fits.value);
  await moment.database.write(async (tx) => {
    await setPasswordHash(tx, id, passwordHash);
    await endDoorKeys(tx, id);
  });
  return { ok: true, value: await sessionFor(moment, id) };
};
