export type { MouldFacts } from '../../src/usecases/show-moulds.ts';

export const mouldPath = (id: string, mark: string): string => `/moulds/${encodeURIComponent(id)}/${mark}`;
