import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';

interface PartRowsProps {
  state: FormState;
  /** What the form is filled in from. */
  stored: Readonly<Record<string, string>>;
  materials: readonly { id: string; name: string; unit: string }[];
  /** Rows that are filled in already. */
  filled: number;
}

interface CutRowsProps extends PartRowsProps {
  materials: readonly (PartRowsProps['materials'][number] & { isCut: boolean })[];
}

const SPARE_ROWS = 2;
const MOST_ROWS = 200;
/** Enough for what most kits are made of. */
const LEAST_PIECES = 4;

/** As many rows as are filled in, by what is stored or was typed, and two more. */
export const rowCount = (state: FormState, name: string, filled: number): number => {
  const typed = Object.entries(state.typed ?? {}).filter(([key, text]) => key.startsWith(`${name}-`) && text !== '');
  const least = name === 'piece' ? LEAST_PIECES : SPARE_ROWS;
  return Math.min(MOST_ROWS, Math.max(least, Math.max(filled, typed.length) + SPARE_ROWS));
};

/** Where more is to go in than there are rows. */
export const MoreRows: FC = () => <p class="hint">Once these are saved, there is room for more.</p>;

const rowsOf = (count: number): number[] => Array.from({ length: count }, (_, row) => row);

const NONE = { value: '', text: 'None' };

/** Materials with how much of each goes in. */
export const PartRows: FC<PartRowsProps> = ({ state, stored, materials, filled }) => (
  <>
    {rowsOf(rowCount(state, 'part', filled)).map((row) => (
      <div class="yard-part">
        <SelectField
          name={`part-${row}`}
          label={row === 0 ? 'Material' : `Material ${row + 1}`}
          options={[NONE, ...materials.map(({ id, name, unit }) => ({ value: id, text: `${name} (${unit})` }))]}
          value={shownIn(state, `part-${row}`, stored[`part-${row}`])}
          errors={state.errors}
        />
        <TextField
          name={`partQuantity-${row}`}
          label="How much"
          width="short"
          value={shownIn(state, `partQuantity-${row}`, stored[`partQuantity-${row}`])}
          errors={state.errors}
        />
      </div>
    ))}
  </>
);

/** Lengths that are cut from what is sold as lengths. */
export const CutRows: FC<CutRowsProps> = ({ state, stored, materials, filled }) => {
  const cut = materials.filter(({ isCut }) => isCut);
  if (cut.length === 0)
    return (
      <p class="hint">
        Nothing in the stock book is sold as lengths that are cut. <a href="/yard/stock/new">Add rod or pipe</a>
      </p>
    );
  return (
    <>
      {rowsOf(rowCount(state, 'cut', filled)).map((row) => (
        <div class="yard-cut">
          <SelectField
            name={`cut-${row}`}
            label={row === 0 ? 'Cut from' : `Cut from, ${row + 1}`}
            options={[NONE, ...cut.map(({ id, name }) => ({ value: id, text: name }))]}
            value={shownIn(state, `cut-${row}`, stored[`cut-${row}`])}
            errors={state.errors}
          />
          <TextField
            name={`cutLength-${row}`}
            label="Length"
            width="short"
            value={shownIn(state, `cutLength-${row}`, stored[`cutLength-${row}`])}
            errors={state.errors}
          />
          <TextField
            name={`cutCount-${row}`}
            label="How many"
            width="short"
            value={shownIn(state, `cutCount-${row}`, stored[`cutCount-${row}`])}
            errors={state.errors}
          />
        </div>
      ))}
    </>
  );
};

interface SheetRowsProps extends PartRowsProps {
  materials: readonly (PartRowsProps['materials'][number] & { isSheet: boolean })[];
  example: string;
}

const TURNS = [
  { value: '', text: 'May be turned' },
  { value: 'no', text: 'Lies as it is written' },
];

/** Pieces that are cut from sheets or rolls; nothing where none are in the stock book. */
export const SheetRows: FC<SheetRowsProps> = ({ state, stored, materials, filled, example }) => {
  const sheets = materials.filter(({ isSheet }) => isSheet);
  if (sheets.length === 0) return null;
  return (
    <>
      {rowsOf(rowCount(state, 'sheet', filled) - 1).map((row) => (
        <div class="yard-cut">
          <SelectField
            name={`sheet-${row}`}
            label={row === 0 ? 'Cut from sheets of' : `Cut from sheets of, ${row + 1}`}
            options={[NONE, ...sheets.map(({ id, name }) => ({ value: id, text: name }))]}
            value={shownIn(state, `sheet-${row}`, stored[`sheet-${row}`])}
            errors={state.errors}
          />
          <TextField
            name={`sheetSizes-${row}`}
            label="Pieces, across by along"
            value={shownIn(state, `sheetSizes-${row}`, stored[`sheetSizes-${row}`])}
            errors={state.errors}
          />
          <SelectField
            name={`sheetTurn-${row}`}
            label="Turned"
            options={TURNS}
            value={shownIn(state, `sheetTurn-${row}`, stored[`sheetTurn-${row}`])}
            errors={state.errors}
          />
        </div>
      ))}
      <p class="hint">
        As in {example}. How sheets are cut up for a session stands in its evening before; what is bought is counted by
        the amounts above.
      </p>
    </>
  );
};
