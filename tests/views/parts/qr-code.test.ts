import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { qrPath } from '../../../views/parts/qr-code.tsx';

/** Draws the runs of a path as a picture of so many pixels a module, as a screen would. */
const drawn = ({ side, path }: { side: number; path: string }, scale: number) => {
  const width = side * scale;
  const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y, length] of path.matchAll(/M(\d+) (\d+)h(\d+)v1H\d+z/g))
    for (let row = Number(y) * scale; row < (Number(y) + 1) * scale; row++)
      for (let column = Number(x) * scale; column < (Number(x) + Number(length)) * scale; column++)
        pixels.fill(0, (row * width + column) * 4, (row * width + column) * 4 + 3);
  return { pixels, width };
};

const readBack = (text: string, scale = 4): string | undefined => {
  const { pixels, width } = drawn(qrPath(text), scale);
  return jsQR(pixels, width, width)?.data;
};

describe('a QR code, read by a decoder of others (jsQR)', () => {
  test.each([
    'http://192.168.1.20:3000/moulds/1200%20no.%201',
    'https://yard.example/calendar/abcdefghijklmnopqrstuvwxyz012345.ics',
    'http://[fd00::1]:3000/moulds/Gro%C3%9Fe%20Form',
  ])('says %s', (text) => expect(readBack(text)).toBe(text));

  test('is read with three pixels a module as well', () =>
    expect(readBack('http://yard.local/today', 3)).toBe('http://yard.local/today'));

  test('has a light border of four modules (ISO/IEC 18004, 9.1)', () => {
    const { side, path } = qrPath('http://yard.local/');
    const runs = [...path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map(
      ([, x, y, length]) => [Number(x), Number(y), Number(length)] as const,
    );
    for (const [x, y, length] of runs) {
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(4);
      expect(Math.max(x + length, y + 1)).toBeLessThanOrEqual(side - 4);
    }
  });
});
