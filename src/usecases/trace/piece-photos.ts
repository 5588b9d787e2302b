import { addWorkRecords, workRecords } from '../../../db/stores/work-record-store.ts';
import { LARGEST_PHOTO_MEGABYTES, photoTypeOf } from '../../../shared/photo.ts';
import { markKey, type PieceMark } from '../../../shared/piece-mark.ts';
import { isInstant, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';

type PhotoRecord = Extract<WorkRecord, { kind: 'photo' }>;

/** More of one piece nobody looks at. */
const MOST_PHOTOS = 12;

/** The photos that are kept of each piece, by its mark (`markKey`), in the order in which they were taken. */
export const photosByPiece = (records: readonly WorkRecord[]): ReadonlyMap<string, PhotoRecord[]> => {
  const photos = new Map<string, PhotoRecord[]>();
  for (const record of records) {
    if (record.kind !== 'photo' && record.kind !== 'photo removed') continue;
    const before = (photos.get(markKey(record)) ?? []).filter(({ photo }) => photo !== record.photo);
    photos.set(markKey(record), record.kind === 'photo' ? [...before, record] : before);
  }
  return photos;
};

/** A piece of which a photo is taken. */
export interface PhotoOf extends PieceMark {
  casting: string;
}

const NO_FOLDER =
  'Photos are kept in a folder beside the database, and this one is no file of the machine. Nothing was kept.';
const NO_PICTURE = 'That is no picture that can be shown: JPEG, PNG or WebP. Nothing was kept.';

const asKept = (records: readonly WorkRecord[], piece: PhotoOf, photo: string): Outcome<null> => {
  const photos = photosByPiece(records).get(markKey(piece)) ?? [];
  if (photos.some((one) => one.photo === photo)) return refuse('photo', 'That very photo is kept already.');
  return photos.length < MOST_PHOTOS
    ? done(null)
    : refuse('photo', `${MOST_PHOTOS} photos of a piece are the most. Remove one first.`);
};

/** A clock that is ahead says nothing. */
const isPast = (at: string, now: string): boolean => isInstant(at) && minuteOf(at) <= minuteOf(now);

/**
 * Keeps a photo of a piece: its bytes in the folder, that there is one in the record of what was done. Refused at `photo` for
 * what is no picture, is there already, or is one too many. The plan goes on as it was. `takenAt`: when, where it is sent later.
 */
export const keepPhoto = async (
  context: UseCaseContext,
  piece: PhotoOf,
  bytes: Uint8Array,
  takenAt?: string,
): Promise<Outcome<Changed<null>>> => {
  if (!context.photos) return refuse('photo', NO_FOLDER);
  if (bytes.length > LARGEST_PHOTO_MEGABYTES * 1_000_000)
    return refuse('photo', `A photo larger than ${LARGEST_PHOTO_MEGABYTES} MB is not kept.`);
  const type = photoTypeOf(bytes);
  if (type === null) return refuse('photo', NO_PICTURE);
  const { mould, casting, filledAt } = piece;
  const photo = await context.photos.keep(bytes);
  return changing(
    context,
    { kind: 'photo kept', words: `Photo kept of a piece from ${mould}` },
    async (tx) => {
      const may = asKept(await workRecords(tx), piece, photo);
      if (!may.ok) return may;
      const at = takenAt !== undefined && isPast(takenAt, context.now) ? takenAt : context.now;
      const record = { kind: 'photo', at, mould, casting, filledAt, photo, type } as const;
      await addWorkRecords(tx, [record], context.by);
      return done(null);
    },
    { carryOn: (plan) => plan },
  );
};

/** Takes a photo off a piece; its file stays for as long as undoing brings it back. Refused at `photo` where there is none such. */
export const removePhoto = (
  context: UseCaseContext,
  piece: PieceMark,
  photo: string,
): Promise<Outcome<Changed<null>>> =>
  changing(
    context,
    { kind: 'photo removed', words: `Photo of a piece from ${piece.mould} removed` },
    async (tx) => {
      const kept = photosByPiece(await workRecords(tx)).get(markKey(piece)) ?? [];
      const found = kept.find((one) => one.photo === photo);
      if (!found) return refuse('photo', 'There is no such photo of it any more. Nothing was changed.');
      const { mould, casting, filledAt } = found;
      await addWorkRecords(
        tx,
        [{ kind: 'photo removed', at: context.now, mould, casting, filledAt, photo }],
        context.by,
      );
      return done(null);
    },
    { carryOn: (plan) => plan },
  );
