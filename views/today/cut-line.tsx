import type { Child, FC } from 'hono/jsx';

interface CutLineProps {
  line: string;
  /** The drawing waits behind its line: on a phone the lines are what is needed at once. On paper all is drawn. */
  folded: boolean;
  children?: Child;
}

const Box: FC = () => <span class="tick-box" aria-hidden="true" />;

/** What is cut of one stick or sheet: a box to tick, in words, and drawn. */
export const CutLine: FC<CutLineProps> = ({ line, folded, children }) =>
  folded ? (
    <li class="folded-cut">
      <Box />{' '}
      <details>
        <summary>
          {line} <span class="opens">Drawn</span>
        </summary>
        {children}
      </details>
    </li>
  ) : (
    <li>
      <Box /> <span>{line}</span>
      {children}
    </li>
  );
