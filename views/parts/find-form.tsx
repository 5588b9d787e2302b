import type { Child, FC } from 'hono/jsx';
import { Answer } from './answer.tsx';
import { Button } from './button.tsx';
import { SelectField, TextField } from './field.tsx';
import { countWord } from './quantity-text.ts';

/** What was looked for: words, and one of the choices, the first of which is all. */
export interface Search {
  find: string;
  which: string;
}

export const isSearching = ({ find, which }: Search): boolean => find !== '' || which !== 'all';

/** As an address, so that it can be come back to: "?find=garden&which=late", or nothing. */
export const searchQuery = ({ find, which }: Search): string => {
  const query = new URLSearchParams({ ...(find ? { find } : {}), ...(which === 'all' ? {} : { which }) }).toString();
  return query === '' ? '' : `?${query}`;
};

export const choicesOf = (words: Readonly<Record<string, { text: string }>>) =>
  Object.entries(words).map(([value, { text }]) => ({ value, text }));

interface FindFormProps {
  path: string;
  label: string;
  hint: string;
  search: Search;
  choices: readonly { value: string; text: string }[];
}

/** Looks for something as it is typed; without script, at the button. What was looked for stays in the address. */
export const FindForm: FC<FindFormProps> = ({ path, label, hint, search, choices }) => (
  <search class="no-print">
    <form
      class="find field-row"
      data-address
      method="get"
      action={path}
      data-hx-get={path}
      data-hx-trigger="input delay:150ms"
      data-hx-target="#found"
      data-hx-sync="this:replace"
      aria-label={label}
    >
      <TextField name="find" label={label} hint={hint} value={search.find} />
      <SelectField name="which" label="Which" value={search.which} options={choices} />
      <Button>Find</Button>
    </form>
  </search>
);

interface FoundProps {
  search: Search;
  count: number;
  all: number;
  /** "order", "mould". */
  what: string;
  path: string;
  /** The choice in words: "late". */
  which: string;
  children?: Child;
}

/** "“garden”, those that are late", as it was looked for. */
const soughtText = ({ find }: Search, which: string): string =>
  [find && `“${find}”`, which && `only those ${which}`].filter(Boolean).join(', ');

/** The first line of a page on which something is looked for: how many were found, of what, and the way back to all. */
export const FoundAnswer: FC<FoundProps> = ({ search, count, all, what, path, which, children }) => (
  <Answer
    note={
      <>
        Looked for {soughtText(search, which)}. <a href={path}>Show all {what}s</a>
        {children}
      </>
    }
  >
    {count === 0
      ? `No ${what} found.`
      : `${countWord(count)} of ${countWord(all).toLowerCase()} ${what}${all === 1 ? '' : 's'} found.`}
  </Answer>
);

/** The first line in its place, or sent beside what was found to be put there. */
export const AnswerPlace: FC<{ beside?: boolean; children?: Child }> = ({ beside = false, children }) => (
  <div id="find-answer" aria-live="polite" {...(beside ? { 'data-hx-swap-oob': 'true' } : {})}>
    {children}
  </div>
);
