export const buysOf = (..._: unknown[]): never[] => [];
