import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moneyOfCell, numberOfCell, wholeOfCell } from '../../../src/engine/csv/cells.ts';
import { dateOfCell, orderOfCells } from '../../../src/engine/csv/date-cells.ts';
import { COMMAS, dialectOf, POINTS } from '../../../src/engine/csv/dialect.ts';
import { guarded, unguarded } from '../../../src/engine/csv/formula.ts';
import { readCsv } from '../../../src/engine/csv/read-csv.ts';
import { writeCsv } from '../../../src/engine/csv/write-csv.ts';

const anyText = fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom(...`'"=+-@,;\t\r\n＝ a1`) }));

describe('a cell that a spreadsheet would run', () => {
  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', "'=1", "''-"])(
    '%j is neutralised',
    (text) => {
      expect(guarded(text)).toBe(`'${text}`);
      expect(unguarded(guarded(text))).toBe(text);
    },
  );
  test.each(['2 x Planter', "O'Neill", "'tis", '', ' =1'])('%j stays as it is', (text) => {
    expect(guarded(text)).toBe(text);
    expect(unguarded(text)).toBe(text);
  });
});

describe('what was written', () => {
  test.each([POINTS, COMMAS])('is read again, whatever text it is (%j)', (dialect) => {
    const rows = fc.array(fc.tuple(fc.constant('row'), anyText, anyText), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(rows, (texts) => {
        const csv = writeCsv(['a', 'b', 'c'], texts, dialect);
        const read = readCsv(csv);
        if (!read.ok) throw new Error(read.reason);
        expect(read.csv.dialect).toEqual(dialect);
        expect(read.csv.rows.map(({ cells }) => cells)).toEqual(texts);
        // As a spreadsheet sees it: after the library has undone the quoting, no cell begins as a formula does.
        for (const { cells } of read.csv.rows)
          for (const cell of cells) expect(guarded(cell)).not.toMatch(/^[=+\-@\t\r\n]/);
      }),
      { numRuns: 500 },
    );
  });

  test('has the numbers of its dialect, and they are read again to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e9, noNaN: true }), fc.constantFrom(POINTS, COMMAS), (number, dialect) => {
        fc.pre(!/e/.test(String(number)) && !Object.is(number, -0));
        const read = readCsv(writeCsv(['a', 'b'], [['x', number]], dialect));
        if (!read.ok) throw new Error(read.reason);
        expect(numberOfCell(read.csv.rows[0]?.cells[1] ?? '', dialect)).toEqual({ ok: true, value: number });
      }),
    );
  });
});

describe('reading', () => {
  const rowsOf = (text: string) => {
    const read = readCsv(text);
    return read.ok ? read.csv.rows : read;
  };

  test.each(['\n', '\r\n', '\r'])(
    'takes commas, semicolons and tabs, quoted line ends and a byte order mark (%j)',
    (end) => {
      for (const sign of [',', ';', '\t']) {
        const text = `\uFEFFmould${sign}note${end}"900 no. 1"${sign}"left, right; ""rail""${end}\tnew"${end}`;
        expect(rowsOf(text)).toEqual([{ number: 2, cells: ['900 no. 1', `left, right; "rail"${end}\tnew`] }]);
      }
    },
  );

  test('counts rows as a spreadsheet does, empty ones too', () => {
    expect(rowsOf('a,b\n1,2\n,\n\n"3\n3",4')).toEqual([
      { number: 2, cells: ['1', '2'] },
      { number: 5, cells: ['3\n3', '4'] },
    ]);
  });

  test('a mark that is not closed, or stands where none may, is said with its row', () => {
    expect(rowsOf('a,b\n1,2\n3,"four')).toMatchObject({
      ok: false,
      row: 3,
      reason: expect.stringContaining('never closed'),
    });
    expect(rowsOf('a,b\n1,"2"x\n')).toMatchObject({
      ok: false,
      row: 2,
      reason: expect.stringContaining('behind a closing'),
    });
    expect(rowsOf('a,b\n1,2\n1,t"wo\n')).toMatchObject({
      ok: false,
      row: 3,
      reason: expect.stringContaining('not quoted'),
    });
  });

  test('a file with one column has commas', () => {
    expect(dialectOf('material\nsand')).toEqual(POINTS);
    expect(dialectOf('"a;b",c\n')).toEqual(POINTS);
  });
});

describe('a number', () => {
  test.each([
    ['12', POINTS, 12],
    [' 2.5 ', POINTS, 2.5],
    ['2,5', POINTS, 2.5],
    ['1.125', POINTS, 1.125],
    ['0,125', POINTS, 0.125],
    ['1,125', COMMAS, 1.125],
    ['2.5', COMMAS, 2.5],
    ['0.125', COMMAS, 0.125],
  ])('%j is read', (text, dialect, value) => {
    expect(numberOfCell(text, dialect)).toEqual({ ok: true, value });
  });

  test.each([
    ['1,125', POINTS, /can be read two ways, as 1125 or as 1\.125/],
    ['1.125', COMMAS, /can be read two ways, as 1125 or as 1,125/],
    ['-3', POINTS, /below 0/],
    ['1 000', POINTS, /is no number/],
    ['1e3', POINTS, /is no number/],
    ['two', POINTS, /is no number/],
    ['1.2.3', POINTS, /is no number/],
  ])('%j is refused', (text, dialect, reason) => {
    expect(numberOfCell(text, dialect)).toMatchObject({ ok: false, reason: expect.stringMatching(reason) });
  });

  test('that has to be whole', () => {
    expect(wholeOfCell('3', POINTS)).toEqual({ ok: true, value: 3 });
    expect(wholeOfCell('3.5', POINTS)).toMatchObject({ ok: false });
  });
});

describe('a date', () => {
  test.each([
    ['2027-05-08', '2027-05-08'],
    ['2027-5-8', '2027-05-08'],
    ['8.5.2027', '2027-05-08'],
    ['08.05.2027', '2027-05-08'],
    ['14/5/2027', '2027-05-14'],
    ['5/14/2027', '2027-05-14'],
    ['5/5/2027', '2027-05-05'],
    ['29.2.2028', '2028-02-29'],
    ['20.02.27', '2027-02-20'],
    ['20/02/27', '2027-02-20'],
    ['02/20/27', '2027-02-20'],
    ['26-12-2026', '2026-12-26'],
    ['26 Dec 2026', '2026-12-26'],
    ['26-Dec-26', '2026-12-26'],
    ['December 26, 2026', '2026-12-26'],
    ['2026/12/26', '2026-12-26'],
  ])('%j is read', (text, date) => {
    expect(dateOfCell(text)).toEqual({ ok: true, value: date });
  });

  test.each([
    ['31/02/2027', /31 Feb 2027 does not exist/],
    ['2027-02-29', /29 Feb 2027 does not exist/],
    ['29.2.2027', /29 Feb 2027 does not exist/],
    ['13/13/2027', /does not exist/],
    ['4/5/2027', /two ways, as 4 May 2027 or 5 Apr 2027/],
    ['4/5/27', /two ways, as 4 May 2027 or 5 Apr 2027/],
    ['4 Nonember 2027', /is no date/],
    ['4/5-2027', /is no date/],
    ['soon', /is no date/],
  ])('%j is refused', (text, reason) => {
    expect(dateOfCell(text)).toMatchObject({ ok: false, reason: expect.stringMatching(reason) });
  });

  test('of a column in which another can be read one way only is read like that one', () => {
    expect(orderOfCells(['4/5/2027', '', '14/5/2027', 'soon'])).toBe('day first');
    expect(orderOfCells(['4-5-27', '5-14-27'])).toBe('month first');
    expect(dateOfCell('4/5/2027', 'day first')).toEqual({ ok: true, value: '2027-05-04' });
    expect(dateOfCell('4/5/2027', 'month first')).toEqual({ ok: true, value: '2027-04-05' });
    // What can be read one way only is read that way, and two that contradict each other settle nothing.
    expect(dateOfCell('14/5/2027', 'month first')).toEqual({ ok: true, value: '2027-05-14' });
    expect(orderOfCells(['14/5/2027', '5/14/2027'])).toBeNull();
    expect(orderOfCells(['31/02/2027', '4.5.2027'])).toBeNull();
  });
});

describe('what spreadsheets write around a table', () => {
  test('a first line that says what stands between the cells', () => {
    const text = 'sep=;\r\nmould;note\r\n900 no. 1;a, b, c\r\n';
    expect(readCsv(text)).toMatchObject({
      ok: true,
      csv: { dialect: COMMAS, header: ['mould', 'note'], rows: [{ number: 2, cells: ['900 no. 1', 'a, b, c'] }] },
    });
  });

  test('empty columns behind the last one with a name, and none that says something', () => {
    const read = readCsv('mould,note,,\n900 no. 1,,,\n900 no. 2,old,,x\n');
    expect(read).toMatchObject({
      ok: true,
      csv: {
        header: ['mould', 'note'],
        rows: [{ cells: ['900 no. 1', ''] }, { cells: ['900 no. 2', 'old', '', 'x'] }],
      },
    });
  });

  test.each([
    ['€0.95', 0.95],
    ['0.95 €', 0.95],
    ['EUR 0.95', 0.95],
    ['0.95', 0.95],
  ])('%s is money of the yard', (text, value) => {
    expect(moneyOfCell(text, POINTS, 'EUR')).toEqual({ ok: true, value });
  });

  test('money of another currency, and what is no number, are refused', () => {
    expect(moneyOfCell('$0.95', POINTS, 'EUR')).toMatchObject({
      ok: false,
      reason: `"$0.95" is in $, and the yard's money is EUR`,
    });
    expect(moneyOfCell('€', POINTS, 'EUR').ok).toBe(false);
    expect(moneyOfCell('€-1', POINTS, 'EUR').ok).toBe(false);
  });
});
