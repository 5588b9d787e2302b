import type { FC } from 'hono/jsx';
import { LARGEST_PHOTO_MEGABYTES, PHOTO_TYPES } from '../../shared/photo.ts';
import type { PieceModel } from '../../src/usecases/trace/show-piece.ts';
import { mouldPagePath } from '../moulds/mould-facts.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { byText } from '../parts/by-text.ts';
import { momentText } from '../parts/clock-text.ts';
import { Field, type FieldErrors, FormErrors } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { photoPath, piecePath } from './piece-path.ts';
import { TracedPieces } from './traced-pieces.tsx';

const altText = ({ piece }: PieceModel, at: string, today: string): string =>
  `${piece.piece} from ${piece.mould}, ${momentText(at, today)}`;

const Photos: FC<{ model: PieceModel }> = ({ model }) => {
  const { photos, key, today } = model;
  if (photos.length === 0) return <p>There is none yet.</p>;
  return (
    <ul class="photos">
      {photos.map(({ photo, at, by }) => (
        <li>
          <a href={photoPath(photo)}>
            <img src={photoPath(photo)} alt={altText(model, at, today)} loading="lazy" />
          </a>
          <p class="quiet">
            {momentText(at, today)} {byText(by)}
          </p>
          <form method="post" action={`${piecePath(key)}/photo-removed`}>
            <input type="hidden" name="photo" value={photo} />
            <Button kind="quiet" label={`Remove: photo of ${momentText(at, today)}`}>
              Remove
            </Button>
          </form>
        </li>
      ))}
    </ul>
  );
};

/** With script the photo is made smaller before it is sent (assets/photo.js); without, it is sent as it is. */
const PhotoForm: FC<{ model: PieceModel; errors: FieldErrors }> = ({ model, errors }) =>
  model.canKeep ? (
    <form
      class="form no-print"
      method="post"
      action={`${piecePath(model.key)}/photo`}
      enctype="multipart/form-data"
      data-photo
    >
      <Field
        name="photo"
        label="Another photo"
        hint={`Taken now or chosen: JPEG, PNG or WebP, ${LARGEST_PHOTO_MEGABYTES} MB at most.`}
        errors={errors}
      >
        <input type="file" id="photo" name="photo" accept={PHOTO_TYPES.join(',')} />
      </Field>
      <div class="buttons">
        <Button kind="main">Keep the photo</Button>
      </div>
      <p class="quiet" data-photo-says aria-live="polite" />
    </form>
  ) : (
    <p class="quiet">Photos are kept in a folder beside the database, and this one is no file of the machine.</p>
  );

interface PieceProps {
  model: PieceModel;
  notice: DoneNotice | null;
  errors: FieldErrors;
}

/** One piece: what it is of, where it is, and photos of it. */
export const PiecePage: FC<PieceProps> = ({ model, notice, errors }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={piecePath(model.key)} />}
    <FormErrors errors={errors} lead="Nothing was changed." />
    <Answer>
      {model.piece.piece} from {model.piece.mould}
    </Answer>
    <TracedPieces pieces={[model.piece]} today={model.today} />
    <section>
      <h2>Photos</h2>
      <Photos model={model} />
      <PhotoForm model={model} errors={errors} />
    </section>
    <div class="buttons">
      <ButtonLink href={mouldPagePath(model.piece.mould)}>All about {model.piece.mould}</ButtonLink>
    </div>
  </>
);
