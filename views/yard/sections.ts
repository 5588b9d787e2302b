/** Where everything about the yard can be changed. */
export const YARD = '/yard';

/** The sections of the yard in a maker's order, each with its page. */
export const SECTIONS = [
  { key: 'about', name: 'Yard', path: '/yard/about' },
  { key: 'panels', name: 'What you cast', path: '/yard/panels' },
  { key: 'moulds', name: 'Moulds', path: '/yard/moulds' },
  { key: 'mixes', name: 'Mixes', path: '/yard/mixes' },
  { key: 'kits', name: 'Kits', path: '/yard/kits' },
  { key: 'hours', name: 'Hours worked', path: '/yard/hours' },
  { key: 'stock', name: 'Stock and suppliers', path: '/yard/stock' },
  { key: 'temperatures', name: 'Temperatures by month', path: '/yard/temperatures' },
  { key: 'weather', name: 'Weather of the coming days', path: '/yard/weather' },
  { key: 'costs', name: 'What work costs', path: '/yard/costs' },
] as const;
export type SectionKey = (typeof SECTIONS)[number]['key'];

const under = (path: string, id: string | number) => `${path}/${encodeURIComponent(String(id))}`;

/** The page of one entry: `entryPath('/yard/moulds', '900 no. 1')`; "new" is the page that adds one. */
export const entryPath = under;

export const removePath = (path: string, id: string | number) => `${under(path, id)}/remove`;
