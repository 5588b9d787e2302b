import type { FC } from 'hono/jsx';
import type { MeshFacts, SheetFacts } from '../../src/usecases/today/mesh-list.ts';
import { Boxes, short, Texts } from '../charts/drawn.tsx';
import { type SheetSizes, sheetGeometry } from '../charts/sheet-geometry.ts';
import { CutLine } from './cut-line.tsx';
import { sheetCutsText, sheetLine, wasteText } from './sheet-text.ts';
import { CUTTING } from './step-caution.tsx';

const SIZES: SheetSizes = { width: 300, height: 260, figure: 6.6, line: 14, gap: 6 };
const EDGE = 1;
/** From the end of a cut to the middle of its number. */
const NUMBER = 8;

/** A sheet to scale. The lines beside it say the same in words. */
const Drawn: FC<{ sheet: SheetFacts }> = ({ sheet }) => {
  const { width, height, isCropped, pieces, rests, cuts, texts } = sheetGeometry(sheet, SIZES);
  return (
    <svg
      class="sheet-drawing"
      viewBox={`${-EDGE} ${-EDGE} ${short(width + 2 * EDGE)} ${short(height + 2 * EDGE)}`}
      width={short(width + 2 * EDGE)}
      height={short(height + 2 * EDGE)}
      aria-hidden="true"
    >
      <path class="sheet-edge" d={`M0 ${short(height)}V0H${short(width)}V${short(height)}${isCropped ? '' : 'Z'}`} />
      <Boxes look="stick-left kept" boxes={rests} />
      <Boxes look="stick-piece" boxes={pieces} />
      {cuts.map(({ x1, y1, x2, y2 }) => (
        <line class="sheet-cut" x1={short(x1)} y1={short(y1)} x2={short(x2)} y2={short(y2)} />
      ))}
      <Texts look="stick-text" texts={texts} />
      <Texts
        look="sheet-number"
        texts={cuts.map(({ number, x1, y1, x2 }) => ({
          x: x1 === x2 ? x1 : x1 + NUMBER,
          y: x1 === x2 ? y1 + NUMBER : y1,
          text: number,
        }))}
      />
    </svg>
  );
};

/** How the sheets of a material are cut up: each with a box to tick, in words, and drawn with its cuts numbered. */
export const SheetDrawings: FC<{ mesh: MeshFacts; caution: boolean; folded: boolean }> = ({
  mesh,
  caution,
  folded,
}) => (
  <>
    <ul class="ticked">
      {mesh.sheets.map((sheet) => (
        <CutLine line={sheetLine(mesh.name, sheet)} folded={folded}>
          <Drawn sheet={sheet} />
          <span class="sheet-cuts">{sheetCutsText(sheet)}</span>
        </CutLine>
      ))}
    </ul>
    <p class="hint">
      {wasteText(mesh)} {caution && CUTTING}
    </p>
  </>
);
