import type { FC } from 'hono/jsx';
import { Button } from './button.tsx';

/** What happened by itself since the maker last looked, until it is put away. */
export const HeldNotices: FC<{ notices: readonly { id: number; words: string }[]; back: string }> = ({
  notices,
  back,
}) =>
  notices.length === 0 ? null : (
    <ul class="held-notices" aria-label="What happened meanwhile">
      {notices.map(({ id, words }) => (
        <li class="warning notice-head">
          <p>{words.replace(/\.?$/, '.')}</p>
          <form method="post" action="/notices/read">
            <input type="hidden" name="notice" value={String(id)} />
            <input type="hidden" name="back" value={back} />
            <Button label={`Dismiss: ${words}`}>Dismiss</Button>
          </form>
        </li>
      ))}
    </ul>
  );
