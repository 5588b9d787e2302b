import type { Context } from 'hono';
import type { FirstCode } from '../usecases/access/first-owner.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { Tries } from './tries.ts';

/** What the routes of a screen get. */
export interface Screens {
  /** The context of a use case, made anew for each request. */
  context: () => UseCaseContext;
  /** A path as others get to it: at the public address, where there is one, else as the browser came. */
  addressOf: (c: Context, path: string) => string;
  /** Under which path others get to it, such as `/rota`; '' where it stands at the root. */
  path: string;
  /** Others get here by https alone. */
  isSecure: boolean;
  /** How often passwords and the first code were guessed at, wherever they are asked for. */
  tries: Tries;
  /** Of the code by which the first owner comes in; null where there was one at the start. */
  firstCode: FirstCode | null;
}
