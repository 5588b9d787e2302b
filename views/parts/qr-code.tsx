import type { FC } from 'hono/jsx';
import { encode } from 'uqr';

/** The light border that ISO/IEC 18004 asks for, in modules. */
const QUIET_ZONE = 4;

/** The dark modules of a QR code as an SVG path, a row at a time, and how many modules its side has. */
export const qrPath = (text: string): { side: number; path: string } => {
  const { size, data } = encode(text, { ecc: 'M', border: QUIET_ZONE });
  const runs = data.flatMap((row, y) =>
    row.flatMap((dark, x) => {
      if (!dark || row[x - 1]) return [];
      const end = row.indexOf(false, x);
      return [`M${x} ${y}h${(end < 0 ? size : end) - x}v1H${x}z`];
    }),
  );
  return { side: size, path: runs.join('') };
};

/** A text as a QR code (ISO/IEC 18004), dark on light whatever the colours of the page are. */
export const QrCode: FC<{ text: string; label: string }> = ({ text, label }) => {
  const { side, path } = qrPath(text);
  return (
    <svg class="qr-code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={side} height={side} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
};
