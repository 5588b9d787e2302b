import type { FC } from 'hono/jsx';
import type { ListPart } from '../../shared/list-part.ts';
import { ButtonLink } from './button.tsx';

interface OtherPartsProps {
  part: Pick<ListPart<unknown>, 'from' | 'all' | 'before' | 'after' | 'items'>;
  /** What it is a list of: "label", and several of them. */
  what: string;
  many?: string;
  /** The address of the part that so many come before. */
  href: (from: number) => string;
}

/** "Labels 1 to 24 of 40." */
const partText = ({ part, what, many = `${what}s` }: Omit<OtherPartsProps, 'href'>): string => {
  const [first, last] = [part.from + 1, part.from + part.items.length];
  const named = first === last ? `${what} ${first}` : `${many} ${first} to ${last}`;
  return `${named[0]?.toUpperCase()}${named.slice(1)} of ${part.all}.`;
};

/** Which part of a long list this is, and the way to the others; nothing where all of it is here. */
export const OtherParts: FC<OtherPartsProps> = ({ part, what, many = `${what}s`, href }) => {
  if (part.before === null && part.after === null) return null;
  const named = `${many[0]?.toUpperCase()}${many.slice(1)}`;
  return (
    <nav class="other-parts no-print" aria-label={`Other ${many}`}>
      <p>{partText({ part, what, many })}</p>
      <div class="buttons">
        {part.before !== null && <ButtonLink href={href(part.before)}>{named} before</ButtonLink>}
        {part.after !== null && <ButtonLink href={href(part.after)}>{named} after</ButtonLink>}
      </div>
    </nav>
  );
};
