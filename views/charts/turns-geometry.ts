/** Sizes of the chart, in units of the drawing (pixels on a screen). */
export interface TurnsSizes {
  /** Width of one turn's box. */
  turn: number;
  /** Width of a session in which nothing is poured: for its day and when it begins. */
  session: number;
  /** Room at the left of a session for a piece that is only stripped in it. */
  tail: number;
  /** Between two sessions: the night left out. */
  gap: number;
  row: number;
  /** Above the first row: day and hours. */
  head: number;
  /** Height of the hatched band, at the foot of a box. */
  band: number;
  /** Between a box and the edges of its place. */
  inset: number;
}

/** A turn on the chart. Sessions are counted from 0, the first shown. */
export interface TurnSpan {
  id: string;
  row: number;
  /** Null: poured before the first session shown. */
  pour: number | null;
  /** Null: stripped after the last session shown, or not at all. */
  strip: number | null;
}

/** Sessions `from` up to, not including, `to` in which a mould is out of use. */
export interface OutSpan {
  row: number;
  from: number;
  to: number;
}

export interface Rectangle {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface TurnsGeometry {
  width: number;
  height: number;
  columns: { x: number; width: number }[];
  rows: { y: number; height: number }[];
  /** In the order given: the box of a turn, and the band of its setting, which may reach into later sessions. */
  turns: { id: string; box: Rectangle; band: Rectangle }[];
  outs: Rectangle[];
}

/** The session in whose column the box of a turn stands: that of its pour, or the first for a piece poured before. */
const boxSession = ({ pour }: TurnSpan): number => pour ?? 0;

/** A piece that is stripped in a later session than that of its box leaves a tail there. */
const hasTail = (turn: TurnSpan, session: number): boolean => turn.strip === session && boxSession(turn) < session;

/** The turns of each row. */
const byRow = (rows: number, turns: readonly TurnSpan[]): readonly TurnSpan[][] => {
  const own = Array.from({ length: rows }, (): TurnSpan[] => []);
  for (const turn of turns) own[turn.row]?.push(turn);
  return own;
};

const columnsOf = (sessions: number, rows: readonly (readonly TurnSpan[])[], sizes: TurnsSizes) => {
  const columns: { x: number; width: number }[] = [];
  let x = 0;
  for (let session = 0; session < sessions; session++) {
    let width = sizes.session;
    for (const own of rows) {
      const boxes = own.filter((turn) => boxSession(turn) === session).length;
      const tail = own.some((turn) => hasTail(turn, session)) ? sizes.tail : 0;
      width = Math.max(width, tail + boxes * sizes.turn);
    }
    columns.push({ x, width });
    x += width + sizes.gap;
  }
  return columns;
};

/**
 * The sizes with boxes so much wider that the chart is as wide as a screen, at most half as wide again. Sessions without a
 * box stay narrow.
 *
 * Example: one box of 100 on a screen of 120: boxes of 120.
 */
export const wideAs = (
  screen: number,
  [sessions, rows, turns]: readonly [sessions: number, rows: number, turns: readonly TurnSpan[]],
  sizes: TurnsSizes,
): TurnsSizes => {
  const own = byRow(rows, turns);
  const side = (session: number) => own.map((row) => row.filter((turn) => boxSession(turn) === session).length);
  const boxes = Array.from({ length: sessions }, (_, session) => Math.max(0, ...side(session)));
  const most = boxes.reduce((sum, count) => sum + count, 0);
  const room = screen - turnsGeometry(sessions, rows, turns, [], sizes).width;
  const more = Math.max(0, Math.min(sizes.turn / 2, Math.floor(room / Math.max(1, most))));
  return { ...sizes, turn: sizes.turn + more };
};

/** `own`: the turns of its row. */
const boxOf = (
  turn: TurnSpan,
  own: readonly TurnSpan[],
  columns: TurnsGeometry['columns'],
  sizes: TurnsSizes,
): Rectangle => {
  const session = boxSession(turn);
  const tail = own.some((one) => hasTail(one, session)) ? sizes.tail : 0;
  const place = own.filter((one) => boxSession(one) === session).indexOf(turn);
  return {
    x: columns[session]!.x + tail + place * sizes.turn + sizes.inset,
    y: sizes.head + turn.row * sizes.row + sizes.inset,
    width: sizes.turn - 2 * sizes.inset,
    height: sizes.row - 2 * sizes.inset,
  };
};

/** Setting runs from the pour to the strip: within the box when both are in one session, else over the sessions between. */
const bandOf = (
  turn: TurnSpan,
  box: Rectangle,
  columns: TurnsGeometry['columns'],
  width: number,
  sizes: TurnsSizes,
): Rectangle => {
  const from = turn.pour === null ? 0 : box.x;
  const endsIn = turn.strip === boxSession(turn) ? box.x + box.width : null;
  const to = endsIn ?? (turn.strip === null ? width : columns[turn.strip]!.x + sizes.tail);
  return { x: from, y: box.y + box.height - sizes.band, width: to - from, height: sizes.band };
};

/**
 * Where everything of the chart of turns goes: sessions across, each as wide as its fullest row needs; moulds down; a box
 * for each turn, in order of time within its session. It knows no clock: nights, and hours without a turn, have no width.
 * `turns` are in order of time.
 *
 * Example: one mould with two turns in session 0 and none in session 1, boxes 100 wide, sessions at least 80 and gaps of 10,
 * without inset: the columns begin at 0 and 210, are 200 and 80 wide, and the boxes begin at 0 and 100.
 */
export const turnsGeometry = (
  sessions: number,
  rows: number,
  turns: readonly TurnSpan[],
  outs: readonly OutSpan[],
  sizes: TurnsSizes,
): TurnsGeometry => {
  const own = byRow(rows, turns);
  const columns = columnsOf(sessions, own, sizes);
  const last = columns.at(-1);
  const width = last ? last.x + last.width : 0;
  return {
    width,
    height: sizes.head + rows * sizes.row,
    columns,
    rows: Array.from({ length: rows }, (_, row) => ({ y: sizes.head + row * sizes.row, height: sizes.row })),
    turns: turns.map((turn) => {
      const box = boxOf(turn, own[turn.row] ?? [], columns, sizes);
      return { id: turn.id, box, band: bandOf(turn, box, columns, width, sizes) };
    }),
    outs: outs
      .filter(({ from, to }) => to > from)
      .map(({ row, from, to }) => {
        const [first, end] = [columns[from]!, columns[to - 1]!];
        const inside = { y: sizes.head + row * sizes.row + sizes.inset, height: sizes.row - 2 * sizes.inset };
        return { x: first.x + sizes.inset, width: end.x + end.width - first.x - 2 * sizes.inset, ...inside };
      }),
  };
};
