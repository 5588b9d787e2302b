import type { FC } from 'hono/jsx';
import type { MouldsModel } from '../../src/usecases/moulds/show-moulds.ts';
import { ButtonLink } from '../parts/button.tsx';
import { NoPhoneReaches } from '../parts/no-phone-reaches.tsx';
import { QrCode } from '../parts/qr-code.tsx';

/** A sheet of labels. */
export const LABELS = '/moulds/labels';

/** A label for each mould in use: what is painted on it, what it makes, and a square that opens its page. */
export const LabelsPage: FC<{ model: MouldsModel; addressOf: (mould: string) => string }> = ({ model, addressOf }) => (
  <>
    <div class="labels-head no-print">
      <h1>Labels for the moulds</h1>
      <p>
        Print this, cut it, and fix each label where no mortar gets to it: under tape, or in a sleeve. A phone's camera
        opens the page of that mould.
      </p>
      <NoPhoneReaches address={addressOf('')} what="these squares" />
      <div class="buttons">
        <ButtonLink href="/moulds">Moulds</ButtonLink>
      </div>
    </div>
    <ul class="labels">
      {model.kinds.flatMap(({ moulds }) =>
        moulds.map(({ id, makes }) => (
          <li class="label">
            <QrCode text={addressOf(id)} label={`The page of ${id}`} />
            <div>
              <strong>{id}</strong>
              <span>{makes.join(', ')}</span>
              <span>{model.yardName}</span>
            </div>
          </li>
        )),
      )}
    </ul>
  </>
);
