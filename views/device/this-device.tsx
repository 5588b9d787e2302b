import type { FC } from 'hono/jsx';
import { ButtonLink } from '../parts/button.tsx';

export const WHO = '/who';
export const PHONE = '/phone';

/** Who is at this device, and how to get to it from another one: a line, for nobody is asked before it is wanted. */
export const ThisDevice: FC<{ who: string | null; back: string }> = ({ who, back }) => (
  <div class="buttons no-print this-device">
    <ButtonLink href={`${WHO}?back=${encodeURIComponent(back)}`} kind="quiet">
      {who === null ? 'Who is this?' : `Done here by ${who}`}
    </ButtonLink>
    <ButtonLink href={PHONE} kind="quiet">
      Open this on your phone
    </ButtonLink>
  </div>
);
