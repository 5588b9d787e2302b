import type { Child, FC } from 'hono/jsx';
import { Empty } from '../parts/answer.tsx';
import { RemoveForm } from './remove.tsx';

/** An entry that is said in one sentence, which leads to its form where it has one. */
interface RowProps {
  text: string;
  more?: string | null;
  /** What is wrong with it. */
  warning?: string | null;
  edit?: string;
  remove: string;
}

const Row: FC<RowProps> = ({ text, more, warning, edit, remove }) => (
  <li class="yard-row">
    <div>
      <p>{edit ? <a href={edit}>{text}</a> : text}</p>
      {more && <p class="quiet">{more}</p>}
      {warning && <p class="warning">{warning}</p>}
    </div>
    <RemoveForm action={remove} name={text.replace(/\.$/, '')} />
  </li>
);

/** A list of sentences under a heading, each with "Remove" beside it; `children` are the buttons below. */
export const SentenceList: FC<{ title: string; empty: string; rows: readonly RowProps[]; children?: Child }> = (
  props,
) => (
  <section>
    <h2>{props.title}</h2>
    {props.rows.length === 0 ? (
      <Empty>{props.empty}</Empty>
    ) : (
      <ul class="yard-rows">
        {props.rows.map((row) => (
          <Row {...row} />
        ))}
      </ul>
    )}
    <div class="buttons">{props.children}</div>
  </section>
);
