import type { FC } from 'hono/jsx';
import type { PiecesModel } from '../../src/usecases/pieces/show-pieces.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { whatOptions } from '../parts/what-options.ts';
import { keptText } from './kept-text.ts';

/** Where it is sent, and what its refusal is known by. */
export const KEPT = 'kept';

/** What is to stand ready in the yard for whoever comes, and a form to say so. */
export const KeptReady: FC<{ model: PiecesModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { kept, offers, today } = model;
  if (offers.length === 0) return null;
  const { typed = {}, errors = {} } = refused ?? {};
  return (
    <section class="stand-ready">
      <h2>To stand ready in the yard</h2>
      {kept.length > 0 && (
        <ul class="sentences">
          {kept.map((one) => (
            <li>{keptText(one, today)}</li>
          ))}
        </ul>
      )}
      <details class="otherwise" open={refused !== null}>
        <summary>{kept.length > 0 ? 'Change what stands ready' : 'Have something stand ready'}</summary>
        <p class="hint">
          What is missing is poured in the time and the moulds that all orders leave. It makes no order later, and is
          promised to nobody. Of a kit its pieces are poured, and what its pins and parts are made of is on the list to
          buy.
        </p>
        <form class="form" method="post" action={`/pieces/${KEPT}`}>
          <SelectField
            name="what"
            label="What"
            value={typed.what ?? kept[0]?.what ?? ''}
            options={whatOptions(offers)}
            errors={errors}
          />
          <TextField
            name="ready"
            id="kept-count"
            label="How many (0 for none)"
            type="number"
            min={0}
            width="short"
            value={typed.ready ?? ''}
            errors={errors}
          />
          <div class="buttons">
            <Button>Keep so many ready</Button>
          </div>
        </form>
      </details>
    </section>
  );
};
