import { describe, expect, test } from 'vitest';
import { photoTypeOf } from '../../shared/photo.ts';

const bytes = (...values: (number | string)[]) =>
  new Uint8Array(values.flatMap((value) => (typeof value === 'number' ? [value] : [...Buffer.from(value, 'latin1')])));

/* First bytes as their formats have them: ISO/IEC 10918-1 B.1.1.3, ISO/IEC 15948 5.2, RFC 9649 2.4. */
describe('what a file is', () => {
  test.each([
    ['image/jpeg', bytes(0xff, 0xd8, 0xff, 0xe1, 'Exif')],
    ['image/png', bytes(0x89, 'PNG\r\n', 0x1a, '\n')],
    ['image/webp', bytes('RIFF', 1, 2, 3, 4, 'WEBPVP8 ')],
  ])('%s by its first bytes', (type, file) => {
    expect(photoTypeOf(file)).toBe(type);
  });

  test.each([
    ['nothing', bytes()],
    ['a drawing that may hold script', bytes('<svg xmlns="http://www.w3.org/2000/svg">')],
    ['a page', bytes('<!doctype html><script>')],
    ['a GIF', bytes('GIF89a')],
    ['sound', bytes('RIFF', 1, 2, 3, 4, 'WAVEfmt ')],
    ['half a PNG', bytes(0x89, 'PNG')],
    ['a picture that does not begin with its mark', bytes(' ', 0xff, 0xd8, 0xff)],
  ])('%s is no picture', (_what, file) => {
    expect(photoTypeOf(file)).toBe(null);
  });
});
