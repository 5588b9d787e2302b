import type { FC } from 'hono/jsx';
import type { WhoModel } from '../../src/usecases/changes/show-who.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { described, Field, type FieldErrors, FormErrors } from '../parts/field.tsx';
import { WHO } from './this-device.tsx';

interface WhoPageProps {
  model: WhoModel;
  /** The name chosen on this device. */
  who: string | null;
  typed: string;
  back: string;
  errors: FieldErrors;
}

const HINT = 'A first name will do. It stands with what is recorded from here on.';

const Names: FC<{ names: readonly string[]; back: string }> = ({ names, back }) =>
  names.length === 0 ? null : (
    <form class="buttons" method="post" action={WHO}>
      <input type="hidden" name="back" value={back} />
      {names.map((name) => (
        <Button name="name" value={name}>
          {name}
        </Button>
      ))}
    </form>
  );

/** A name chosen on the device: no account, and nothing that anybody has to say. */
export const WhoPage: FC<WhoPageProps> = ({ model, who, typed, back, errors }) => (
  <>
    <Answer note="It is kept on this phone or computer, and is not checked by anybody.">
      {who === null ? 'Nobody has said who this is.' : `This is ${who}.`}
    </Answer>
    <FormErrors errors={errors} lead="No name was kept." />
    <Names names={model.names.filter((name) => name !== who)} back={back} />
    <form class="form" method="post" action={WHO}>
      <input type="hidden" name="back" value={back} />
      <Field name="name" label="Your name" hint={HINT} errors={errors}>
        <input {...described('name', errors, HINT)} type="text" value={typed} autocomplete="off" />
      </Field>
      <div class="buttons">
        <Button kind="main">This is me</Button>
        {who !== null && (
          <Button form="nobody" kind="plain">
            No name
          </Button>
        )}
        <ButtonLink href={back}>Cancel</ButtonLink>
      </div>
    </form>
    {who !== null && (
      <form id="nobody" method="post" action={WHO}>
        <input type="hidden" name="back" value={back} />
        <input type="hidden" name="name" value="" />
      </form>
    )}
  </>
);
