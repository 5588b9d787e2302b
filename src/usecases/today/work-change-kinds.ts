/** The kinds of change that write down work done in the yard. */
export const WORK_KINDS: readonly string[] = [
  ...[
    'coated',
    'prepared',
    'mixing',
    'mixed',
    'poured',
    'covered',
    'stripped',
    'piece mended',
    'piece scrapped',
    'packed',
    'unpacked',
    'as planned',
    'not done',
    'thrown away',
    'not hard yet',
  ],
];

/** Those by which something was done that a session asked for: a sheet for the wall need not say what was not. */
export const DONE_KINDS: readonly string[] = WORK_KINDS.filter(
  (kind) => !['mixing', 'mixed', 'not done', 'unpacked', 'not hard yet'].includes(kind),
);
