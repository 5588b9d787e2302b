import { buildWhenOld } from '../../src/built.mjs';

/** Once before all tests: those that start the program start what is built, as its users do. */
export const setup = () => buildWhenOld();
