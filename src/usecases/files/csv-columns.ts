/** What can be written down in a CSV: a table each. */
export const TABLE_KINDS = ['orders', 'moulds', 'stock'] as const;
export type TableKind = (typeof TABLE_KINDS)[number];

export interface Column {
  name: string;
  /** What stands in it, for the page. */
  means: string;
  /** A new row has to have it. */
  needed?: true;
  /** Its cells are days. */
  days?: true;
}

/** The columns of each table in a maker's words; the first one says which entry a row is about. */
export const COLUMNS: Readonly<Record<TableKind, readonly Column[]>> = {
  orders: [
    { name: 'order', means: 'The number of the order. Left empty, a new order gets the next one.' },
    { name: 'customer', means: 'Who it is for.' },
    { name: 'phone', means: 'Their phone. Two customers of one name are told apart by it.' },
    {
      name: 'asked for',
      means:
        'How many of what, apart by semicolons: "2 x Planter; 3 x Panel 900". A name with a semicolon in it goes in quotation marks.',
      needed: true,
    },
    { name: 'wanted', means: 'The day they would like it.', days: true },
    { name: 'not before', means: 'The day before which nothing is poured for it, where there is one.', days: true },
    { name: 'promised', means: 'The day you promised.', days: true },
    { name: 'held until', means: 'For a date only held: until the end of which day.', days: true },
    { name: 'can it slip', means: 'not, rather not, or yes. Left empty it is rather not.' },
    { name: 'note', means: 'Anything else.' },
  ],
  moulds: [
    { name: 'mould', means: 'What is painted on it.' },
    {
      name: 'makes',
      means:
        'The panels it makes, apart by semicolons, with the minutes to change it over where it takes any: "Panel 1200; Panel 900 (15)".',
      needed: true,
    },
    { name: 'set for', means: 'The panel it is set for now. Left empty it is the first it makes.' },
    { name: 'condition', means: 'clean, to be cleaned, damaged, or scrapped. Left empty it is clean.' },
    { name: 'turns since sealing coat', means: 'How many turns it made since. Left empty it is 0.' },
    { name: 'sealing coat every', means: 'After how many turns it is due. Left empty, never.' },
    { name: 'note', means: 'Anything else.' },
  ],
  stock: [
    { name: 'material', means: 'What it is called.' },
    {
      name: 'unit',
      means:
        'What the amounts of the row count: bag, kg, lb, sheet. Left empty for a material that is there, they count what the pages show.',
      needed: true,
    },
    { name: 'in the yard', means: 'How much is there, counted in that unit.', needed: true },
    { name: 'pack', means: 'How much comes at a time. Left empty it is 1.' },
    { name: 'lead days', means: 'Days from buying until it is there. Left empty it cannot be bought.' },
    { name: 'always keep', means: 'How much should always be left. Left empty it is 0.' },
    { name: 'price', means: "The price of one of that unit, in the yard's money." },
    { name: 'supplier', means: 'Where it is bought.' },
    { name: 'weight', means: 'What one of that unit weighs, in kg, or in lb where the yard measures so.' },
    {
      name: 'price breaks',
      means: 'What one of that unit costs from so many at once on: "from 10 at 8.90; from 40 at 8.20".',
    },
  ],
};

/** The columns whose cells are days. */
export const DAY_COLUMNS: readonly string[] = Object.values(COLUMNS)
  .flat()
  .filter(({ days }) => days)
  .map(({ name }) => name);

/** What each table is called at its key, for a file that fits none. */
export const columnNames = (kind: TableKind): string[] => COLUMNS[kind].map(({ name }) => name);
