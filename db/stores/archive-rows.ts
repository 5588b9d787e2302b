import type { Archive } from '../../shared/archive.ts';
import { FLOAT_DAYS } from '../../shared/habits.ts';
import { NO_FORECAST } from './habits-store.ts';
import { filled, inside } from './row-lists.ts';
import { entryRows } from './stock-rows.ts';
import type { StoreRows, WantedRows } from './store-rows.ts';
import { yardRows } from './yard-rows.ts';

const inOrder = <T extends object>(entries: readonly T[]) => entries.map((entry, position) => ({ ...entry, position }));

const sizeRows = ({ castings, kits }: Archive): Pick<WantedRows, 'castingSizes' | 'kitSizes'> => ({
  castingSizes: castings.flatMap(({ id, size }) =>
    size === undefined
      ? []
      : [
          {
            ...{ casting: id, lengthMm: size.length.mm, heightMm: size.height.mm, thicknessMm: size.thickness.mm },
            ...{ lengthTyped: size.length.typed, heightTyped: size.height.typed },
            thicknessTyped: size.thickness.typed,
          },
        ],
  ),
  kitSizes: kits.flatMap(({ id, size }) => (size === undefined ? [] : [{ kit: id, size }])),
});

const keptOf = (entries: readonly { id: string; keptReady?: number | undefined }[]) =>
  entries.flatMap(({ id, keptReady }) => (keptReady === undefined ? [] : [{ id, count: keptReady }]));

const waterRows = ({ mixes }: Archive): WantedRows['mixWaters'] =>
  mixes.flatMap(({ id, waterLitresPerBag }) =>
    waterLitresPerBag === undefined ? [] : [{ mix: id, litresPerBag: waterLitresPerBag }],
  );

const orderRows = ({ orders, customers }: Archive) => ({
  customers: customers.map((one) => filled(one, 'phone', 'note')),
  orders: inOrder(orders).map(({ lines: _lines, customer, ...order }) => ({
    ...filled(
      order,
      'wantedOn',
      'notBefore',
      'promisedOn',
      'firstPromisedOn',
      'heldUntil',
      'note',
      'address',
      'takenAt',
      'handedOverOn',
      'partOf',
    ),
    ...filled({ packedAt: order.packedAt, packedMinutes: order.packedMinutes }, 'packedAt', 'packedMinutes'),
    customerId: customer ?? null,
  })),
  orderLines: inside(orders, 'order', ({ lines }) => lines).map((line) => filled(line, 'kit', 'casting', 'material')),
});

const FIGURES = [
  ...(['wageHour', 'sessionFixed', 'rejectPercent', 'marginPercent', 'mouldCost', 'mouldTurns'] as const),
  'holdingPercent',
] as const;

const moneyRows = ({ costs, kits, orderMoney = [] }: Archive) => ({
  yardCosts: costs === undefined ? [] : [{ id: 1, ...filled(costs, ...FIGURES) }],
  kitPrices: kits.flatMap(({ id, price }) => (price === undefined ? [] : [{ kit: id, price }])),
  orderMoney: orderMoney
    .map(({ payments: _payments, ...row }) => filled(row, 'price', 'deposit', 'estimate', 'quote', 'papers'))
    .filter(({ order: _order, ...said }) => Object.values(said).some((value) => value !== null)),
  orderPayments: inOrder(
    orderMoney.flatMap(({ order, payments }) => payments.map((one) => ({ ...filled(one, 'note'), order }))),
  ),
});

const noted = (archive: Archive, rows: WantedRows): Pick<WantedRows, 'materials' | 'moulds'> => {
  const materials = new Map(archive.materials.map((one) => [one.id, one]));
  const moulds = new Map(archive.moulds.map((one) => [one.id, one]));
  return {
    materials: rows.materials.map((row) => {
      const { openedNote = null, shortBy = 0 } = materials.get(row.id) ?? {};
      return { ...row, openedNote, shortBy };
    }),
    moulds: rows.moulds.map((row) => {
      const one = moulds.get(row.id);
      const { note = null, damageNote = null, emptiedAt = null, serviceEveryTurns = null } = one ?? {};
      const { cost = null, costTurns = null, parts = null } = one ?? {};
      return { ...row, note, damageNote, emptiedAt, serviceEveryTurns, cost, costTurns, parts };
    }),
  };
};

/** Without what only an archive says of them: the entries as a yard file has them. */
const asFile = ({ materials, mixes, castings, moulds, kits, suppliers: _suppliers, ...archive }: Archive) => ({
  ...archive,
  format: 'mould-rota/yard' as const,
  version: 2 as const,
  ...{ incoming: [], finished: [], inMould: [], orders: [] },
  materials: materials.map(({ openedNote: _note, shortBy: _short, buying: _buying, ...one }) => one),
  mixes: mixes.map(({ waterLitresPerBag: _water, wetCureHours: _wet, ...one }) => one),
  castings: castings.map(({ size: _size, keptReady: _kept, ...one }) => one),
  moulds: moulds.map(
    ({ note: _note, damageNote: _damageNote, emptiedAt: _emptied, serviceEveryTurns: _service, ...one }) => {
      const { cost: _cost, costTurns: _turns, parts: _parts, ...mould } = one;
      return mould;
    },
  ),
  kits: kits.map(({ size: _size, keptReady: _kept, price: _price, ...one }) => one),
});

/** Numbers of lines from which none is taken. */
const firstFree = ({ stockEntries }: StoreRows): number =>
  1 + stockEntries.reduce((last, { id }) => Math.max(last, id), 0);

/** The rows of a yard as an archive has it: nothing of what is held now stays that the archive does not say as well. */
export const archiveRows = (held: StoreRows, archive: Archive): WantedRows => {
  const { fixedHours, ...yard } = archive.yard;
  const rows = yardRows(held, { ...asFile(archive), yard });
  const incomings = archive.incoming.map((goods) =>
    filled(goods, 'firstOn', 'boughtOn', 'price', 'arrivedOn', 'useBy'),
  );
  const finished = archive.finished.map((pieces) => filled(pieces, 'readyAt', 'order', 'mould', 'filledAt'));
  return {
    ...rows,
    ...noted(archive, rows),
    ...sizeRows(archive),
    mixWaters: waterRows(archive),
    mixWetCures: archive.mixes.flatMap(({ id, wetCure, wetCureHours: hours = wetCure?.hours }) =>
      hours === undefined ? [] : [{ mix: id, hours, minutes: wetCure?.minutes ?? 0 }],
    ),
    keptKits: keptOf(archive.kits).map(({ id, count }) => ({ kit: id, count })),
    keptCastings: keptOf(archive.castings).map(({ id, count }) => ({ casting: id, count })),
    yards: rows.yards.map((row) => ({ ...row, fixedHours })),
    incomings: inOrder(incomings),
    suppliers: (archive.suppliers ?? []).map(({ name, ...facts }) => ({ name, facts })),
    materialBuyings: archive.materials.flatMap(({ id, buying }) =>
      buying === undefined ? [] : [{ material: id, facts: buying }],
    ),
    finishedPieces: inOrder(finished),
    piecesInMould: inOrder(archive.inMould.map((piece) => filled(piece, 'order'))),
    stockEntries: entryRows(archive.stockBook ?? [], firstFree(held)),
    workRecords: (archive.workDone ?? []).map((record) => ({ record })),
    piecesToMend: inOrder((archive.toMend ?? []).map((piece) => filled(piece, 'reason'))),
    ...orderRows(archive),
    ...moneyRows(archive),
    yardUnits: archive.units === undefined ? [] : [{ id: 1, system: archive.units, english: archive.english ?? null }],
    yardHabits:
      archive.habits === undefined
        ? []
        : [{ id: 1, floatDays: FLOAT_DAYS, ...NO_FORECAST, ...filled(archive.habits, 'spares') }],
    guesses: archive.guesses,
    typedFigures: archive.typed,
  };
};
