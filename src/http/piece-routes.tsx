import { type Context, Hono, type MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { LARGEST_PHOTO_MEGABYTES, photoTypeOf } from '../../shared/photo.ts';
import type { FieldErrors } from '../../views/parts/field.tsx';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { PiecePage } from '../../views/trace/piece-page.tsx';
import { piecePath } from '../../views/trace/piece-path.ts';
import { refuse, type UseCaseContext } from '../usecases/core/context.ts';
import type { Saved } from '../usecases/plan/save-edit.ts';
import { keepPhoto, removePhoto } from '../usecases/trace/piece-photos.ts';
import { type PieceKey, type PieceModel, showPiece } from '../usecases/trace/show-piece.ts';
import { type FormFields, wholeTyped } from '../usecases/typed/form-fields.ts';
import { missing } from './failures.tsx';
import { errorsByField, readForm } from './form.ts';
import { asked, asSent, atOnce, formRoute, pageRoute, type Show, savedOnce } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import { page, seeDone } from './page.tsx';
import type { Screens } from './screens.ts';
import { AROUND_BYTES, uploadedFile } from './uploaded-file.ts';

const PATH = '/piece/:minute/:mould';

const keyOf = (c: Context): PieceKey => ({
  minute: wholeTyped(c.req.param('minute')) ?? 0,
  mould: c.req.param('mould') ?? '',
});

const shownPiece = async (c: Context, context: UseCaseContext, model: PieceModel, errors: FieldErrors) => {
  const frame = { title: `Piece from ${model.key.mould}`, at: 'moulds', yardName: model.yardName } as const;
  return { frame, content: <PiecePage model={model} notice={await doneNotice(c, context)} errors={errors} /> };
};

const show: Show = async (c, context, { errors }) => {
  const model = await showPiece(context, keyOf(c));
  return model && shownPiece(c, context, model, errors);
};

const PHOTO_PATH = /^\/piece\/\d+\/[^/]+\/photo$/;

/** The address that takes a photo, with the larger limit that it has. */
export const isPhotoPath = (path: string): boolean => PHOTO_PATH.test(path);

const tooLarge = (c: Context) =>
  page(
    c,
    { title: 'Too large', at: 'moulds' },
    <PlainPage
      happened={`The photo is larger than ${LARGEST_PHOTO_MEGABYTES} MB, so it was not taken.`}
      back={c.req.path.replace(/\/photo$/, '')}
      backName="Back to the piece"
    >
      Nothing was changed. Choose a smaller one, or take it with fewer pixels.
    </PlainPage>,
    { status: 413 },
  );

export const photoLimit: MiddlewareHandler = bodyLimit({
  maxSize: LARGEST_PHOTO_MEGABYTES * 1_000_000 + AROUND_BYTES,
  onError: tooLarge,
});

const NONE_CHOSEN = refuse('photo', 'No photo was chosen. Choose one, then keep it.');

/** A photo comes as bytes with a limit of its own: it is kept before its piece is told of it. */
const takePhoto = async (c: Context, context: UseCaseContext): Promise<Response> => {
  const model = await showPiece(context, keyOf(c));
  if (!model) return missing(c);
  const [bytes, texts] = [await uploadedFile(c, 'photo'), await readForm(c)];
  const asker = await asked(c, context, texts);
  const save = async (by: UseCaseContext): Promise<Saved<null>> => {
    const kept = bytes ? await keepPhoto(by, model.of, bytes, texts.takenAt) : NONE_CHOSEN;
    return kept.ok
      ? { kind: 'saved', value: null, change: kept.value.change }
      : { kind: 'refused', faults: kept.faults };
  };
  const saved = asker.ok
    ? await savedOnce(asker.value, () => save(asker.value))
    : { kind: 'refused' as const, ...asker };
  if (saved.kind === 'saved') return seeDone(c, piecePath(model.key), saved.change);
  const faults = saved.kind === 'refused' ? saved.faults : [];
  const { frame, content } = await shownPiece(c, context, model, errorsByField(faults));
  return page(c, frame, content, { status: 422 });
};

const YEAR_SECONDS = 31_536_000;

/** What a name stands for never changes, so that a browser may keep it; nobody between may. */
const photo = async (c: Context, context: UseCaseContext): Promise<Response> => {
  const bytes = (await context.photos?.read(c.req.param('photo') ?? '')) ?? null;
  const type = bytes && photoTypeOf(bytes);
  if (!bytes || !type) return missing(c);
  c.header('Cache-Control', `private, max-age=${YEAR_SECONDS}, immutable`);
  return c.body(bytes, 200, { 'Content-Type': type });
};

const removing = (screens: Screens): Hono =>
  formRoute(screens, {
    path: `${PATH}/photo-removed`,
    show,
    save: atOnce(asSent, async (context, fields: FormFields, c) => {
      const model = await showPiece(context, keyOf(c));
      return model
        ? removePhoto(context, model.of, fields.photo ?? '')
        : refuse('photo', 'That piece is not there any more. Nothing was changed.');
    }),
    next: (c) => piecePath(keyOf(c)),
  });

/** The page of a piece, and its photos. */
export const pieceRoutes = (screens: Screens): Hono =>
  new Hono()
    .route('/', pageRoute(screens, PATH, show))
    .post(`${PATH}/photo`, (c) => takePhoto(c, screens.context()))
    .get('/photo/:photo', (c) => photo(c, screens.context()))
    .route('/', removing(screens));
