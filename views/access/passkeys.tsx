import type { FC } from 'hono/jsx';
import type { PasskeyFacts } from '../../src/usecases/access/passkeys.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { type FieldErrors, TextField } from '../parts/field.tsx';
import { PasskeyForm } from './passkey-form.tsx';
import { PasswordField } from './password-field.tsx';
import { OWN_PASSKEYS, OWN_PASSWORD } from './paths.ts';

export interface PasskeysProps {
  passkeys: readonly PasskeyFacts[];
  /** Browsers have passkeys for the address that the page was opened by. */
  hasPlace: boolean;
  /** What was typed as the device of a new one. */
  device: string;
  errors: FieldErrors;
}

const One: FC<{ passkey: PasskeyFacts }> = ({ passkey: { id, name } }) => (
  <li>
    <form class="buttons" method="post" action={`${OWN_PASSKEYS}/removed`}>
      <strong>{name}</strong>
      <input type="hidden" name="passkey" value={String(id)} />
      <Button kind="quiet" label={`Take off the passkey ${name}`}>
        Take off
      </Button>
    </form>
  </li>
);

const Add: FC<Pick<PasskeysProps, 'device' | 'errors'>> = ({ device, errors }) => (
  <form class="form" method="post" action={OWN_PASSKEYS}>
    <TextField
      name="device"
      label="What it is on"
      hint="“Phone”, or whatever tells it from others."
      value={device}
      errors={errors}
    />
    <PasswordField name="own" label="Your password" autocomplete="current-password" errors={errors} />
    <div class="buttons">
      <Button>Add a passkey</Button>
    </div>
  </form>
);

/** The passkeys of whoever has signed in, and how another one is made. */
export const Passkeys: FC<PasskeysProps> = ({ passkeys, hasPlace, device, errors }) => (
  <section>
    <h2>Passkeys</h2>
    <p>
      A passkey is a key that a phone or computer keeps for you: you sign in there by your finger, your face or its own
      code, without the password.
    </p>
    {passkeys.length > 0 && (
      <ul class="plain-list">
        {passkeys.map((passkey) => (
          <One passkey={passkey} />
        ))}
      </ul>
    )}
    {hasPlace ? (
      <Add device={device} errors={errors} />
    ) : (
      <p class="hint">
        Browsers make them only for a name by https, or for “localhost”. This page was opened by another address, so
        none can be made or used here.
      </p>
    )}
  </section>
);

/** The second step: the password was right, and the device makes the passkey. */
export const NewPasskeyPage: FC<{ device: string; options: string }> = ({ device, options }) => (
  <>
    <Answer note="It asks for your finger, your face or its own code, and keeps the passkey.">
      {`Now have the device make it: ${device}.`}
    </Answer>
    <PasskeyForm action={`${OWN_PASSKEYS}/made`} how="create" options={options} words="Make the passkey">
      <input type="hidden" name="device" value={device} />
    </PasskeyForm>
    <p data-no-passkey>This browser makes no passkeys, or runs no scripts. The password does as well.</p>
    <p>
      <ButtonLink href={OWN_PASSWORD}>Leave it</ButtonLink>
    </p>
  </>
);
