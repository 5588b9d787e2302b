import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { FormErrors } from '../parts/field.tsx';
import { Passkeys, type PasskeysProps } from './passkeys.tsx';
import { PASSWORD_HINT, PasswordField } from './password-field.tsx';
import { OWN_PASSWORD } from './paths.ts';

interface OwnPasswordProps extends PasskeysProps {
  name: string;
}

/** Another password of one's own, and an end to all that is signed in by the one of before. */
export const OwnPasswordPage: FC<OwnPasswordProps> = ({ name, passkeys, hasPlace, device, errors }) => (
  <>
    <Answer note="Every other browser and phone in which you are signed in has to sign in anew.">
      {`Another password for ${name}.`}
    </Answer>
    <FormErrors errors={errors} lead="Nothing was changed." />
    <div class="own-access">
      <section>
        <form class="form" method="post" action={OWN_PASSWORD}>
          <PasswordField name="before" label="Password as it is now" autocomplete="current-password" errors={errors} />
          <PasswordField label="New password" autocomplete="new-password" hint={PASSWORD_HINT} errors={errors} />
          <div class="buttons">
            <Button kind="main">Change it</Button>
          </div>
        </form>
      </section>
      <Passkeys {...{ passkeys, hasPlace, device, errors }} />
      <section>
        <h2>A phone was lost</h2>
        <p>
          Whoever has it is signed out at once, and so are you here. If there is a passkey of it on the list, take that
          off first.
        </p>
        <form class="buttons" method="post" action="/sign-out-everywhere">
          <Button>Sign me out everywhere</Button>
        </form>
      </section>
    </div>
  </>
);
