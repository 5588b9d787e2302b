import type { FC } from 'hono/jsx';
import type { Role } from '../../shared/person.ts';
import { countText } from '../../shared/plural.ts';
import type { PeopleModel } from '../../src/usecases/access/people.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { type FieldErrors, FormErrors, SelectField, TextField, Wrong } from '../parts/field.tsx';
import { NoPhoneReaches } from '../parts/no-phone-reaches.tsx';
import { QrCode } from '../parts/qr-code.tsx';
import { YARD } from '../yard/sections.ts';
import { PEOPLE } from './paths.ts';
import { Tokens } from './tokens.tsx';

const ROLE_WORDS: Readonly<Record<Role, string>> = {
  owner: 'Everything, and who comes in',
  office: 'Everything but who comes in and files of all data',
  yard: 'Today, moulds and counting; no prices',
};

interface PeopleProps {
  model: PeopleModel;
  /** The invitation that was made just now: it is shown this once. */
  made: string | null;
  /** The secret of a token that was made just now: it is shown this once. */
  token: string | null;
  typed: Readonly<Record<string, string>>;
  errors: FieldErrors;
}

const Made: FC<{ address: string }> = ({ address }) => (
  <section class="notice" role="status" aria-label="The invitation">
    <p>
      <strong>This is the invitation. It is shown only now,</strong> and is good for a week and for one person. Have
      their phone's camera look at the square, or send them the address.
    </p>
    <QrCode text={address} label="The invitation as a square to point a camera at" />
    <p>
      <label for="invitation" class="hint">
        Address
      </label>
      <textarea id="invitation" rows={3} readonly>
        {address}
      </textarea>
    </p>
    <NoPhoneReaches address={address} what="it" />
  </section>
);

const One: FC<{ person: PeopleModel['people'][number] }> = ({ person: { id, name, role, isInvited } }) => (
  <li>
    <p>
      <strong>{name}</strong>
      {`: ${ROLE_WORDS[role]}${isInvited ? '. Invited, not here yet' : ''}.`}
    </p>
    <form class="buttons" method="post" action={`${PEOPLE}/invited-again`}>
      <input type="hidden" name="person" value={String(id)} />
      <Button label={`A new invitation for ${name}`}>New invitation</Button>
      <Button action={`${PEOPLE}/signed-out`} label={`Sign ${name} out everywhere`}>
        Sign out everywhere
      </Button>
      <Button action={`${PEOPLE}/removed`} kind="quiet" label={`Let ${name} in no more`}>
        Let in no more
      </Button>
    </form>
  </li>
);

/** Who may come in from elsewhere, and how another one gets in. */
export const PeoplePage: FC<PeopleProps> = ({ model: { people, tokens }, made, token, typed, errors }) => (
  <>
    <Answer note="At this machine itself nobody has to sign in while it is open to nobody else.">
      {people.length === 0 ? 'Nobody can sign in yet.' : `${countText(people.length, 'person')} may sign in.`}
    </Answer>
    <FormErrors errors={errors} lead="Nothing was changed." />
    <Wrong name="person" message={errors.person} />
    {made && <Made address={made} />}
    {people.length > 0 && (
      <ul class="plain-list">
        {people.map((person) => (
          <One person={person} />
        ))}
      </ul>
    )}
    <h2>Invite somebody</h2>
    <form class="form" method="post" action={PEOPLE}>
      <TextField name="name" label="Name" value={typed.name ?? ''} errors={errors} />
      <SelectField
        name="role"
        label="What they may do"
        value={typed.role ?? 'yard'}
        options={(['yard', 'office', 'owner'] as const).map((role) => ({ value: role, text: ROLE_WORDS[role] }))}
        errors={errors}
      />
      <div class="buttons">
        <Button kind="main">Make an invitation</Button>
        <ButtonLink href={YARD}>Your yard</ButtonLink>
      </div>
    </form>
    <Tokens {...{ tokens, token, typed, errors }} />
  </>
);
