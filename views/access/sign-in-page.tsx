import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { described, Field, type FieldErrors, FormErrors, TextField } from '../parts/field.tsx';

export const SIGN_IN = '/sign-in';

interface PasswordProps {
  label: string;
  /** "new-password" where one is chosen, for programs that keep passwords. */
  autocomplete: 'current-password' | 'new-password';
  hint?: string;
  errors: FieldErrors;
}

const PasswordField: FC<PasswordProps> = ({ label, autocomplete, hint, errors }) => (
  <Field name="password" label={label} errors={errors} {...(hint ? { hint } : {})}>
    <input {...described('password', errors, hint)} type="password" autocomplete={autocomplete} required />
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
