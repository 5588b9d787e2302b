import type { FC } from 'hono/jsx';
import type { TokenScope } from '../../shared/person.ts';
import type { TokenFacts } from '../../src/usecases/access/api-tokens.ts';
import { Button } from '../parts/button.tsx';
import { type FieldErrors, SelectField, TextField } from '../parts/field.tsx';
import { PEOPLE } from './paths.ts';

const SCOPE_WORDS: Readonly<Record<TokenScope, string>> = {
  read: 'Read, and ask for dates',
  yard: 'Today, moulds, stock; record work',
  office: 'All of it: also take and cancel orders',
};

const Made: FC<{ token: string }> = ({ token }) => (
  <section class="notice" role="status" aria-label="The token">
    <p>
      <strong>This is the token. It is shown only now.</strong> Whoever has it gets in with it.
    </p>
    <p>
      <label for="token" class="hint">
        Token
      </label>
      <textarea id="token" rows={2} readonly>
        {token}
      </textarea>
    </p>
  </section>
);

const One: FC<{ token: TokenFacts }> = ({ token: { id, name, scope } }) => (
  <li>
    <p>
      <strong>{name}</strong>
      {`: ${SCOPE_WORDS[scope]}.`}
    </p>
    <form class="buttons" method="post" action={`${PEOPLE}/tokens/withdrawn`}>
      <input type="hidden" name="token" value={String(id)} />
      <Button kind="quiet" label={`Withdraw the token of ${name}`}>
        Withdraw
      </Button>
    </form>
  </li>
);

interface TokensProps {
  tokens: readonly TokenFacts[];
  /** The secret of one that was made just now. */
  token: string | null;
  typed: Readonly<Record<string, string>>;
  errors: FieldErrors;
}

/** Other programs that may come in, and how another one gets a token. */
export const Tokens: FC<TokensProps> = ({ tokens, token, typed, errors }) => (
  <section>
    <h2>Other programs</h2>
    {token && <Made token={token} />}
    <p>
      A program that may ask or record has a token of its own; none is told of prices or phones.{' '}
      <a href="/api/v1">What it can do</a>
    </p>
    {tokens.length > 0 && (
      <ul class="plain-list">
        {tokens.map((one) => (
          <One token={one} />
        ))}
      </ul>
    )}
    <form class="form" method="post" action={`${PEOPLE}/tokens`}>
      <TextField name="program" label="Program" value={typed.program ?? ''} errors={errors} />
      <SelectField
        name="scope"
        label="What it may do"
        value={typed.scope ?? 'read'}
        options={(['read', 'yard', 'office'] as const).map((scope) => ({ value: scope, text: SCOPE_WORDS[scope] }))}
        errors={errors}
      />
      <div class="buttons">
        <Button>Make a token</Button>
      </div>
    </form>
  </section>
);
