import type { FC } from 'hono/jsx';
import type { MouldsModel } from '../../src/usecases/moulds/show-moulds.ts';
import { ButtonLink } from '../parts/button.tsx';
import { NoPhoneReaches } from '../parts/no-phone-reaches.tsx';
import { QrCode } from '../parts/qr-code.tsx';

/** A sheet of labels. */
export const LABELS = '/moulds/labels';

/** Labels on one page: a sheet or two of paper. */
const LABELS_SHOWN = 24;

const labelsFrom = (from: number): string => (from === 0 ? LABELS : `${LABELS}?from=${from}`);

/** Which of the labels these are, and the way to the others; nothing where all of them are here. */
const Further: FC<{ from: number; all: number }> = ({ from, all }) =>
  all <= LABELS_SHOWN ? null : (
    <>
      <p>{`Labels ${from + 1} to ${Math.min(all, from + LABELS_SHOWN)} of ${all}.`}</p>
      <nav class="buttons" aria-label="Other labels">
        {from > 0 && <ButtonLink href={labelsFrom(Math.max(0, from - LABELS_SHOWN))}>Labels before</ButtonLink>}
        {from + LABELS_SHOWN < all && <ButtonLink href={labelsFrom(from + LABELS_SHOWN)}>Labels after</ButtonLink>}
      </nav>
    </>
  );

interface LabelsPageProps {
  model: MouldsModel;
  /** How many labels are on the pages before. */
  from: number;
  addressOf: (mould: string) => string;
}

/** A label for each mould in use: what is painted on it, what it makes, and a square that opens its page. */
export const LabelsPage: FC<LabelsPageProps> = ({ model, from: asked, addressOf }) => {
  const moulds = model.kinds.flatMap((kind) => kind.moulds);
  const from = asked < moulds.length ? asked : 0;
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
        <Further from={from} all={moulds.length} />
      </div>
      <ul class="labels">
        {moulds.slice(from, from + LABELS_SHOWN).map(({ id, makes }) => (
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
