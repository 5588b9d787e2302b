import type { Child, FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';

interface PlainPageProps {
  happened: string;
  children?: Child;
  back?: string | undefined;
  /** What the page that leads back to is called, where that is known. */
  backName?: string | undefined;
}

/** What happened, what was kept, and what to do: nothing else. */
export const PlainPage: FC<PlainPageProps> = ({ happened, children, back = '/', backName = 'Back' }) => (
  <>
    <Answer note={children}>{happened}</Answer>
    <p>
      <ButtonLink href={back}>{back === '/' ? 'To the first page' : backName}</ButtonLink>
    </p>
  </>
);
