import { z } from 'zod';

/** What a picture may be written as: what browsers show of themselves. */
export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
/** One of `PHOTO_TYPES`. */
export type PhotoType = (typeof PHOTO_TYPES)[number];

/** A larger file is refused. */
export const LARGEST_PHOTO_MEGABYTES = 10;

/** What a photo is called: the SHA-256 of its bytes (FIPS 180-4) in small hexadecimal digits. */
export const photoName = z.string().regex(/^[0-9a-f]{64}$/, 'is no name of a photo');

const hasBytes = (bytes: Uint8Array, at: number, ...wanted: number[]): boolean =>
  wanted.every((byte, index) => bytes[at + index] === byte);

/**
 * What a file is by its first bytes, whatever it says of itself; null where that is none of `PHOTO_TYPES`. JPEG: ISO/IEC 10918-1,
 * B.1.1.3; PNG: ISO/IEC 15948, 5.2; WebP: RFC 9649, 2.4 (RIFF).
 *
 * `photoTypeOf(new Uint8Array([0xff, 0xd8, 0xff, 0xe0]))` is 'image/jpeg'.
 */
export const photoTypeOf = (bytes: Uint8Array): PhotoType | null => {
  if (hasBytes(bytes, 0, 0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (hasBytes(bytes, 0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  const isRiff = hasBytes(bytes, 0, 0x52, 0x49, 0x46, 0x46);
  return isRiff && hasBytes(bytes, 8, 0x57, 0x45, 0x42, 0x50) ? 'image/webp' : null;
};
