import type { Child, FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';

/** What happened, what was kept, and what to do: nothing else. */
export const PlainPage: FC<{ happened: string; children?: Child; back?: string }> = ({
  happened,
  children,
  back = '/',
}) => (
  <>
    <Answer note={children}>{happened}</Answer>
    <p>
      <ButtonLink href={back}>{back === '/' ? 'To the first page' : 'Back'}</ButtonLink>
    </p>
  </>
);
