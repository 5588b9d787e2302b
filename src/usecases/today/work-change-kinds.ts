/** The kinds of change that write down work done in the yard. */
export const WORK_KINDS: readonly string[] = [
  ...[
    'coated',
    'prepared',
    'mixing',
    'poured',
    'stripped',
    'piece mended',
    'piece scrapped',
    'packed',
    'unpacked',
    'as planned',
    'not done',
    'thrown away',
  ],
];
