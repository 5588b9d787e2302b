import type { Child } from 'hono/jsx';

interface LongListProps<T> {
  items: readonly T[];
  draw: (item: T, place: number) => Child;
  /** So many take a few milliseconds to draw. */
  atOnce?: number;
}

const othersFirst = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

const Some = <T,>({ items, draw, from, atOnce }: Required<LongListProps<T>> & { from: number }) => (
  <>
    {items.slice(from, from + atOnce).map((item, place) => draw(item, from + place))}
    {from + atOnce < items.length && <Rest items={items} draw={draw} from={from + atOnce} atOnce={atOnce} />}
  </>
);

const Rest = async <T,>(props: Required<LongListProps<T>> & { from: number }) => {
  await othersFirst();
  return <Some {...props} />;
};

/** A list that may be long, drawn some entries at a time: in between others are let in. A short one is drawn at once. */
export const LongList = <T,>({ items, draw, atOnce = 25 }: LongListProps<T>) => (
  <Some items={items} draw={draw} from={0} atOnce={atOnce} />
);
