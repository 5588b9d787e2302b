import { getDocumentProxy } from 'unpdf';

/** A run of text on a sheet of paper: where it stands, in points from the lower left corner. */
export interface PrintedText {
  text: string;
  x: number;
  y: number;
  width: number;
  height: number;
}

interface TextItem {
  str: string;
  transform: number[];
  width: number;
  height: number;
}

/** The room that a run of text takes: one that is turned goes up from where it stands, its letters to the left of that. */
const roomOf = ({ str, transform, width, height }: TextItem): PrintedText => {
  const [x, y] = [transform[4]!, transform[5]!];
  const isTurned = Math.abs(transform[1]!) > Math.abs(transform[0]!);
  return isTurned ? { text: str, x: x - height, y, width: height, height: width } : { text: str, x, y, width, height };
};

/** What is printed on each sheet of a PDF, as a reader of others finds it (pdf.js). */
export const printedText = async (pdf: Uint8Array): Promise<PrintedText[][]> => {
  const document = await getDocumentProxy(new Uint8Array(pdf));
  const sheets: PrintedText[][] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    const runs = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item as TextItem] : []));
    sheets.push(runs.map(roomOf));
  }
  return sheets;
};

/** The height of small letters, of the whole line's: what is above and below them may be shared with other lines. */
const LETTERS = 0.7;

const shared = (from: number, length: number, other: number, otherLength: number): number =>
  Math.min(from + length, other + otherLength) - Math.max(from, other);

/** A text with an outline is printed twice, once for each. */
const isOutlined = (a: PrintedText, b: PrintedText): boolean => a.text === b.text && a.x === b.x && a.y === b.y;

/** Runs of text that are printed over one another, by more than a point each way. */
export const printedOver = (texts: readonly PrintedText[]): string[] =>
  texts.flatMap((a, place) =>
    texts.slice(place + 1).flatMap((b) => {
      const across = shared(a.x, a.width, b.x, b.width);
      const down = shared(a.y, a.height * LETTERS, b.y, b.height * LETTERS);
      return across > 1 && down > 1 && !isOutlined(a, b) ? [`"${a.text}" and "${b.text}"`] : [];
    }),
  );
