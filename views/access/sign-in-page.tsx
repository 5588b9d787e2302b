import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { described, Field, type FieldErrors, FormErrors, TextField } from '../parts/field.tsx';

export const SIGN_IN = '/sign-in';

/** Where somebody chooses another password for themselves. */
export const OWN_PASSWORD = '/password';

interface PasswordProps {
  name?: string;
  label: string;
  /** "new-password" where one is chosen, for programs that keep passwords. */
  autocomplete: 'current-password' | 'new-password';
  hint?: string;
  errors: FieldErrors;
}

const PasswordField: FC<PasswordProps> = ({ name = 'password', label, autocomplete, hint, errors }) => (
  <Field name={name} label={label} errors={errors} {...(hint ? { hint } : {})}>
    <input {...described(name, errors, hint)} type="password" autocomplete={autocomplete} required />
  </Field>
);

interface SignInProps {
  typed: string;
  /** Where it leads on. */
  back: string;
  errors: FieldErrors;
}

/** Who is let in: it says nothing of whose yard it is. */
export const SignInPage: FC<SignInProps> = ({ typed, back, errors }) => (
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
  </>
);

const HINT = 'At least 12 letters. Four words that nobody would guess do well.';

/** An invitation that is followed. */
export const InvitedPage: FC<{ name: string; action: string; errors: FieldErrors }> = ({ name, action, errors }) => (
  <>
    <Answer note="From then on you sign in with your name and this password.">{`Choose a password, ${name}.`}</Answer>
    <FormErrors errors={errors} lead="No password was kept." />
    <form class="form" method="post" action={action}>
      <PasswordField label="Password" autocomplete="new-password" hint={HINT} errors={errors} />
      <div class="buttons">
        <Button kind="main">Keep it and go on</Button>
      </div>
    </form>
  </>
);

/** Another password of one's own, and an end to all that is signed in by the one of before. */
export const OwnPasswordPage: FC<{ name: string; errors: FieldErrors }> = ({ name, errors }) => (
  <>
    <Answer note="Every other browser and phone in which you are signed in has to sign in anew.">
      {`Another password for ${name}.`}
    </Answer>
    <FormErrors errors={errors} lead="Your password is as it was." />
    <form class="form" method="post" action={OWN_PASSWORD}>
      <PasswordField name="before" label="Password as it is now" autocomplete="current-password" errors={errors} />
      <PasswordField label="New password" autocomplete="new-password" hint={HINT} errors={errors} />
      <div class="buttons">
        <Button kind="main">Change it</Button>
      </div>
    </form>
    <h2>A phone was lost</h2>
    <p>Whoever has it is signed out at once, and so are you here.</p>
    <form class="buttons" method="post" action="/sign-out-everywhere">
      <Button>Sign me out everywhere</Button>
    </form>
  </>
);
