import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { type FieldErrors, FormErrors, TextField, Wrong } from '../parts/field.tsx';
import { PasskeyForm } from './passkey-form.tsx';
import { PASSWORD_HINT, PasswordField } from './password-field.tsx';

export const SIGN_IN = '/sign-in';
export const SIGN_IN_BY_PASSKEY = '/sign-in/passkey';

interface SignInProps {
  typed: string;
  /** Where it leads on. */
  back: string;
  /** What the browser is asked for to use a passkey; null where it has none here. */
  passkey: string | null;
  errors: FieldErrors;
}

/** Who is let in: it says nothing of whose yard it is. */
export const SignInPage: FC<SignInProps> = ({ typed, back, passkey, errors }) => (
  <>
    <Answer note="Whoever set this up, or invited you, knows your name here.">Sign in to go on.</Answer>
    <FormErrors errors={errors} lead="You are not signed in." />
    <form class="form" method="post" action={SIGN_IN}>
      <input type="hidden" name="back" value={back} />
      <TextField name="name" label="Your name" value={typed} errors={errors} />
      <PasswordField label="Password" autocomplete="current-password" errors={errors} />
      <div class="buttons">
        <Button kind="main">Sign in</Button>
      </div>
    </form>
    {passkey && (
      <PasskeyForm action={SIGN_IN_BY_PASSKEY} how="get" options={passkey} words="Sign in with a passkey">
        <input type="hidden" name="back" value={back} />
        <Wrong name="passkey" message={errors.passkey} />
      </PasskeyForm>
    )}
  </>
);

/** An invitation that is followed. */
export const InvitedPage: FC<{ name: string; action: string; errors: FieldErrors }> = ({ name, action, errors }) => (
  <>
    <Answer note="From then on you sign in with your name and this password.">{`Choose a password, ${name}.`}</Answer>
    <FormErrors errors={errors} lead="No password was kept." />
    <form class="form" method="post" action={action}>
      <PasswordField label="Password" autocomplete="new-password" hint={PASSWORD_HINT} errors={errors} />
      <div class="buttons">
        <Button kind="main">Keep it and go on</Button>
      </div>
    </form>
  </>
);
