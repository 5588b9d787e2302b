import { type Outcome, refuse } from '../core/context.ts';

/** Files that are often taken for another kind, by the bytes they begin with. */
const KINDS: readonly { begins: readonly number[]; is: string; how: string }[] = [
  {
    begins: [0x50, 0x4b, 0x03, 0x04],
    is: 'a spreadsheet workbook or another packed file (ZIP)',
    how: 'Open it in the spreadsheet, save it as CSV (UTF-8), and choose that file.',
  },
  {
    begins: [0xd0, 0xcf, 0x11, 0xe0],
    is: 'an old spreadsheet workbook',
    how: 'Open it in the spreadsheet, save it as CSV (UTF-8), and choose that file.',
  },
  { begins: [0x89, 0x50, 0x4e, 0x47], is: 'a picture (PNG)', how: 'Choose a yard file, an archive or a CSV.' },
  { begins: [0xff, 0xd8, 0xff], is: 'a picture (JPEG)', how: 'Choose a yard file, an archive or a CSV.' },
  { begins: [0x25, 0x50, 0x44, 0x46], is: 'a PDF', how: 'Choose a yard file, an archive or a CSV.' },
  { begins: [0x1f, 0x8b], is: 'a packed file (gzip)', how: 'Unpack it, and choose what was in it.' },
  {
    begins: [0xff, 0xfe],
    is: 'written in UTF-16, which some spreadsheets call Unicode text',
    how: 'Save it as CSV (UTF-8), and choose that file.',
  },
  {
    begins: [0xfe, 0xff],
    is: 'written in UTF-16, which some spreadsheets call Unicode text',
    how: 'Save it as CSV (UTF-8), and choose that file.',
  },
  {
    begins: [...'SQLite format 3'].map((letter) => letter.charCodeAt(0)),
    is: 'a database',
    how: 'A database is put in place by DATABASE_URL, with the program stopped. Here, choose a yard file, an archive or a CSV.',
  },
];

const utf8 = (bytes: Uint8Array): string | null => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};

/** What a file says; `isGuessed`: it is not in UTF-8, and was read as what spreadsheets write beside that. */
interface UploadedText {
  text: string;
  isGuessed: boolean;
}

/** Bytes that Windows-1252 has no letter for. */
const NO_LETTER = [0x81, 0x8d, 0x8f, 0x90, 0x9d];

/**
 * The text of a file that was sent, or in plain words what it is instead. A byte order mark goes. What is not UTF-8 is read as
 * Windows-1252 (WHATWG Encoding), for the maker to look at.
 */
export const uploadText = (bytes: Uint8Array): Outcome<UploadedText> => {
  if (bytes.length === 0) return refuse('file', 'The file is empty. Choose another.');
  const kind = KINDS.find(({ begins }) => begins.every((byte, index) => bytes[index] === byte));
  if (kind) return refuse('file', `The file is ${kind.is}. ${kind.how}`);
  const known = utf8(bytes);
  if (known === null && bytes.some((byte) => NO_LETTER.includes(byte)))
    return refuse('file', 'The file is not written in UTF-8. Save it again with the encoding UTF-8, and choose that.');
  const text = known ?? new TextDecoder('windows-1252').decode(bytes);
  if (text.includes('\0')) return refuse('file', 'The file is no text. Choose a yard file, an archive or a CSV.');
  return text.trim() === ''
    ? refuse('file', 'The file is empty. Choose another.')
    : { ok: true, value: { text, isGuessed: known === null } };
};
