import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FormAnswer, SaveButtons } from '../parts/form-state.tsx';

/** Takes an entry away: one tap, which can be undone. */
export const RemoveForm: FC<{ action: string; name: string }> = ({ action, name }) => (
  <form method="post" action={action}>
    <Button label={`Remove ${name}`}>Remove</Button>
  </form>
);

interface RemovePageProps {
  name: string;
  state: FormState;
  today: string;
  action: string;
  back: string;
  /** Why it has to stay, and what to do about it. */
  uses: string | null;
  /** What can be done instead, where something can. */
  instead?: string;
}

/** What came of "Remove": it has to stay because of what uses it, or going it would move dates. */
export const RemovePage: FC<RemovePageProps> = ({ name, state, today, action, back, uses, instead }) =>
  uses === null ? (
    <>
      <FormAnswer state={state} today={today} />
      <Answer>Remove {name}?</Answer>
      <form method="post" action={action}>
        <SaveButtons state={state} back={back} save="Remove" />
      </form>
    </>
  ) : (
    <>
      <Answer note={instead ?? 'Nothing was changed. Take it out of these first, then it can be removed.'}>
        {name} can't be removed.
      </Answer>
      <p class="error" role="alert">
        {uses}
      </p>
      <p>
        <ButtonLink href={back}>Go back</ButtonLink>
      </p>
    </>
  );
