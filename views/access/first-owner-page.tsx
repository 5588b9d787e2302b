import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { type FieldErrors, FormErrors, TextField } from '../parts/field.tsx';
import { PASSWORD_HINT, PasswordField } from './password-field.tsx';

/** Where whoever started the program becomes its owner. */
export const FIRST_OWNER = '/first-owner';

const CODE_HINT = 'Three groups of four, such as 4KTM-9Q2X-7HWD. Small letters and spaces do as well.';

/** The first visit, before anybody has a password: it says nothing of whose yard it is. */
export const FirstOwnerPage: FC<{ typed: { code: string; name: string }; errors: FieldErrors }> = ({
  typed,
  errors,
}) => (
  <>
    <Answer note="Whoever started Mould Rota was shown a code where it was started. With it you become the owner here, who lets in everybody else.">
      Nobody has a password here yet.
    </Answer>
    <FormErrors errors={errors} lead="There is no owner yet." />
    <form class="form" method="post" action={FIRST_OWNER}>
      <TextField name="code" label="The code" hint={CODE_HINT} value={typed.code} errors={errors} />
      <TextField name="name" label="Your name" value={typed.name} errors={errors} />
      <PasswordField label="Password" autocomplete="new-password" hint={PASSWORD_HINT} errors={errors} />
      <div class="buttons">
        <Button kind="main">Become the owner</Button>
      </div>
    </form>
    <p class="hint">
      The code is good for half an hour and once. Start Mould Rota again for another one, or make an owner there with
      “npm run rota -- owner NAME”.
    </p>
  </>
);
