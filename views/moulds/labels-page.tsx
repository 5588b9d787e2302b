import type { FC } from 'hono/jsx';
import { listPart } from '../../shared/list-part.ts';
import type { MouldsModel } from '../../src/usecases/moulds/show-moulds.ts';
import { ButtonLink } from '../parts/button.tsx';
import { NoPhoneReaches } from '../parts/no-phone-reaches.tsx';
import { OtherParts } from '../parts/other-parts.tsx';
import { QrCode } from '../parts/qr-code.tsx';

/** A sheet of labels. */
export const LABELS = '/moulds/labels';

/** Labels on one page: a sheet or two of paper. */
const LABELS_SHOWN = 24;

const labelsFrom = (from: number): string => (from === 0 ? LABELS : `${LABELS}?from=${from}`);

interface LabelsPageProps {
  model: MouldsModel;
  /** How many labels are on the pages before. */
  from: number;
  addressOf: (mould: string) => string;
}

/** A label for each mould in use: what is painted on it, what it makes, and a square that opens its page. */
export const LabelsPage: FC<LabelsPageProps> = ({ model, from, addressOf }) => {
  const part = listPart(
    model.kinds.flatMap(({ moulds }) => moulds),
    from,
    { most: LABELS_SHOWN },
  );
  return (
    <>
      <div class="labels-head no-print">
        <h1>Labels for the moulds</h1>
        <p>
          Print this, cut it, and fix each label where no mortar gets to it: under tape, or in a sleeve. A phone's
          camera opens the page of that mould.
        </p>
        <NoPhoneReaches address={addressOf('')} what="these squares" />
        <div class="buttons">
          <ButtonLink href="/moulds">Moulds</ButtonLink>
        </div>
        <OtherParts part={part} what="label" href={labelsFrom} />
      </div>
      <ul class="labels">
        {part.items.map(({ id, makes }) => (
          <li class="label">
            <QrCode text={addressOf(id)} label={`The page of ${id}`} />
            <div>
              <strong>{id}</strong>
              <span>{makes.join(', ')}</span>
              <span>{model.yardName}</span>
            </div>
          </li>
        ))}
      </ul>
    </>
  );
};
