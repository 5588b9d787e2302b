import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { Faults } from './faults.tsx';
import type { Fault, FilesModel, TableOffered } from './files-facts.ts';

export const FILES = '/yard/files';

const NAMES = { orders: 'Orders', moulds: 'Moulds', stock: 'Stock' } as const;

const ReadIn: FC = () => (
  <section>
    <h2>Read a file in</h2>
    <form class="form" method="post" action={`${FILES}/look`} enctype="multipart/form-data">
      <Field
        name="file"
        label="A yard file, an archive, or a CSV"
        hint="Nothing is loaded yet: first you see what it would change. 10 MB at most."
      >
        <input id="file" name="file" type="file" accept=".json,.csv,.txt,.tsv" aria-describedby="file-hint" />
      </Field>
      <div class="buttons">
        <Button kind="main">Check it</Button>
      </div>
    </form>
  </section>
);

const Whole: FC = () => (
  <section>
    <h2>Take the whole yard out</h2>
    <ul class="file-list">
      <li>
        <p>
          <strong>Archive</strong>: everything that is recorded here, with customers, past orders, notes and all that
          was done. This is the one to keep as a copy. Reading it in puts it in place of everything. Photos of pieces
          are not in it, only that there are some: their files lie in the folder "photos" beside the database, and a
          backup has them.
        </p>
        <ButtonLink href={`${FILES}/archive.json`}>Save the archive</ButtonLink>
      </li>
      <li>
        <p>
          <strong>Yard file</strong>: what a plan is made from and no more. Reading it in makes the yard what the file
          says; phones, notes and past orders of what stays are kept. The time in it says when it was written: planning
          goes by the clock of this machine.
        </p>
        <ButtonLink href={`${FILES}/yard.json`}>Save the yard file</ButtonLink>
      </li>
    </ul>
  </section>
);

/** How numbers are written in the lists that are saved: said once, for all of them. */
const Numbers: FC<{ commas: boolean }> = ({ commas }) => (
  <nav class="file-numbers" aria-label="How numbers are written">
    <span>Numbers as</span>
    <a class="button" href={FILES} aria-current={commas ? undefined : 'true'}>
      2.5
    </a>
    <a class="button" href={`${FILES}?numbers=commas`} aria-current={commas ? 'true' : undefined}>
      2,5
    </a>
  </nav>
);

const TableFiles: FC<{ table: TableOffered; commas: boolean }> = ({ table: { kind, columns }, commas }) => {
  const numbers = commas ? '?numbers=commas' : '';
  return (
    <section class="file-table" aria-labelledby={`${kind}-files`}>
      <h3 id={`${kind}-files`}>{NAMES[kind]}</h3>
      <p class="file-links">
        <a href={`${FILES}/${kind}.csv${numbers}`}>{NAMES[kind]} as CSV</a>
        <a href={`${FILES}/${kind}-template.csv${numbers}`} aria-label={`An empty one: ${NAMES[kind]}`}>
          An empty one
        </a>
      </p>
      <details>
        <summary>Columns of {NAMES[kind].toLowerCase()}</summary>
        <dl class="file-columns">
          {columns.map(({ name, means }) => (
            <>
              <dt>{name}</dt>
              <dd>{means}</dd>
            </>
          ))}
        </dl>
      </details>
    </section>
  );
};

const Tables: FC<{ model: FilesModel; commas: boolean }> = ({ model: { tables, mostRows }, commas }) => (
  <section>
    <h2>Lists for a spreadsheet</h2>
    <p>
      A row whose order, mould or material is here already changes it; every other row is new. Nothing is ever removed
      by a CSV. A column that the file does not have leaves things as they are; an empty cell empties what it stands
      for.
    </p>
    <p class="hint">
      Columns in any order. Days as 2027-05-08 or 8.5.2027. At most {mostRows.toLocaleString('en')} rows at a time. A
      cell that a spreadsheet would run as a formula gets an apostrophe before it, which goes again when it is loaded.
    </p>
    <Numbers commas={commas} />
    {tables.map((table) => (
      <TableFiles table={table} commas={commas} />
    ))}
  </section>
);

interface FilesPageProps {
  model: FilesModel;
  notice: DoneNotice | null;
  faults: readonly Fault[];
  /** Whether the lists are offered with decimal commas. */
  commas: boolean;
}

export const FilesPage: FC<FilesPageProps> = ({ model, notice, faults, commas }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={FILES} />}
    <Faults faults={faults} />
    <Answer note="Keep a copy of the archive now and then, somewhere else.">
      Everything here can be saved as a file, and loaded again.
    </Answer>
    <div class="files">
      <div>
        <ReadIn />
        <Whole />
      </div>
      <Tables model={model} commas={commas} />
    </div>
    <p class="way">
      <a href="/yard">Your yard</a>
    </p>
  </>
);
