import { addPerson, everybody, personNamed, removePerson } from '../../../db/stores/access-store.ts';
import { ROLES, type Role } from '../../../shared/person.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { whoTyped } from '../typed/who-form.ts';
import { type TokenFacts, tokensOf } from './api-tokens.ts';
import { inviteAgain } from './sign-in.ts';

/** Who may come in. */
export interface PeopleModel extends PageHead {
  /** Nobody needs to sign in at the one desk; who is named here may once it is opened to others. */
  people: readonly { id: number; name: string; role: Role; isInvited: boolean }[];
  /** Other programs that may come in. */
  tokens: readonly TokenFacts[];
}

/** Everybody who may come in; `isInvited` who has not followed the invitation yet. */
export const showPeople = async (context: UseCaseContext): Promise<PeopleModel> => {
  const { yard } = await currentPlan(context);
  const people = await context.database.read(everybody);
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    people: people.map(({ id, name, role, passwordHash }) => ({ id, name, role, isInvited: passwordHash === null })),
    tokens: await tokensOf(context),
  };
};

/** Invites somebody new: the secret of the invitation. */
export const invite = async (
  context: UseCaseContext,
  { name: typed = '', role }: { name?: string | undefined; role?: string | undefined },
): Promise<Outcome<string>> => {
  const named = whoTyped(typed);
  if (!named.ok) return named;
  const [name, as] = [named.value, ROLES.find((one) => one === role)];
  if (name === null) return refuse('name', 'Who is invited? A first name will do.');
  if (as === undefined) return refuse('role', 'Choose what they may do.');
  const id = await context.database.write(async (tx) =>
    (await personNamed(tx, name)) ? null : addPerson(tx, { name, role: as, passwordHash: null, madeAt: context.now }),
  );
  return id === null ? refuse('name', `There is a ${name} already.`) : done(await inviteAgain(context, id));
};

/** Takes somebody away; the last owner stays, or nobody could let anybody in. */
export const letNoMoreIn = ({ database }: UseCaseContext, id: number): Promise<Outcome<null>> =>
  database.write(async (tx) => {
    const others = (await everybody(tx)).filter((person) => person.id !== id && person.passwordHash !== null);
    if (!others.some(({ role }) => role === 'owner')) return refuse('person', 'There has to be another owner first.');
    await removePerson(tx, id);
    return done(null);
  });
