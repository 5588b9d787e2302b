import { expect, test } from 'vitest';
import { LongList } from '../../../views/parts/long-list.tsx';
import { yieldsDuring } from '../../support/yields-during.ts';

const numbers = (count: number) => Array.from({ length: count }, (_, i) => i);
const text = async (node: { toString(): unknown }): Promise<string> => String(await node.toString());

test('a short list is drawn at once', () => {
  expect(String(<LongList items={numbers(3)} draw={(n) => <li>{n}</li>} />)).toBe('<li>0</li><li>1</li><li>2</li>');
  expect(String(<LongList items={[]} draw={() => <li />} />)).toBe('');
});

test('a long one has every entry once, in its order and with its place, wherever it stands', async () => {
  const list = (
    <ul>
      <li>before</li>
      <LongList items={numbers(103)} draw={(n, place) => <li id={`n${n}`}>{place}</li>} />
      <li>after</li>
    </ul>
  );
  const entries = numbers(103).map((n) => `<li id="n${n}">${n}</li>`);
  expect(await text(list)).toBe(`<ul><li>before</li>${entries.join('')}<li>after</li></ul>`);
});

test('others are let in in between', async () => {
  const yields = await yieldsDuring(() =>
    text(<LongList items={numbers(100)} atOnce={10} draw={(n) => <li>{n}</li>} />),
  );
  expect(yields).toBeGreaterThanOrEqual(9);
});

test('long lists in long lists are drawn like lists written out', async () => {
  const [outer, inner] = [numbers(12), numbers(60)];
  const inParts = (
    <LongList
      items={outer}
      atOnce={5}
      draw={(n) => (
        <section>
          <h2>{n}</h2>
          <LongList items={inner} draw={(m) => <p>{`${n} & ${m}`}</p>} />
        </section>
      )}
    />
  );
  const writtenOut = outer.map((n) => (
    <section>
      <h2>{n}</h2>
      {inner.map((m) => (
        <p>{`${n} & ${m}`}</p>
      ))}
    </section>
  ));
  expect(await text(<main>{inParts}</main>)).toBe(await text(<main>{writtenOut}</main>));
});

test('a drawing stays a drawing, and what comes after it a page', async () => {
  const boxes = (list: unknown) => (
    <main>
      <svg viewBox="0 0 1 1" width="1">
        <title>Boxes</title>
        <g>{list as never}</g>
      </svg>
      <table>
        <tr tabindex={0}>
          <td colspan={2} class="last">
            <input type="text" maxlength={3} readonly />
          </td>
        </tr>
      </table>
    </main>
  );
  const draw = (n: number) => (
    <a href={`#${n}`}>
      <rect class="turn" x={n} stroke-width="2" fill="url(#setting)" />
    </a>
  );
  const [inParts, writtenOut] = [boxes(<LongList items={numbers(80)} draw={draw} />), boxes(numbers(80).map(draw))];
  expect(await text(inParts)).toBe(await text(writtenOut));
});
