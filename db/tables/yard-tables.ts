import { castingCuts, castingMaterials, castings } from './casting.ts';
import { castingSizes } from './casting-size.ts';
import { customers } from './customer.ts';
import { guesses, typedFigures } from './figure.ts';
import { yardHabits } from './habits.ts';
import { keptCastings, keptKits } from './kept-ready.ts';
import { kitCuts, kitParts, kitPieces, kits } from './kit.ts';
import { kitSizes } from './kit-size.ts';
import { incomings, materials } from './material.ts';
import { mixes, mixMaterials } from './mix.ts';
import { mixWaters } from './mix-water.ts';
import { mixWetCures } from './mix-wet-cure.ts';
import { kitPrices, orderMoney, orderPayments, yardCosts } from './money.ts';
import { finishedPieces, mouldMakes, moulds, piecesInMould } from './mould.ts';
import { offcuts } from './offcut.ts';
import { orderLines, orders } from './order.ts';
import { piecesToMend } from './piece-to-mend.ts';
import { stockEntries } from './stock-entry.ts';
import { materialBuyings, suppliers } from './supplier.ts';
import { temperatureSteps, weatherDays } from './temperature.ts';
import { yardUnits } from './units.ts';
import { closedDays, extraWindows, workWindows } from './work.ts';
import { workRecords } from './work-record.ts';
import { yards } from './yard.ts';

/** All that a yard holds, but its plan and its log. */
export const YARD_TABLES = {
  ...{
    yards,
    workWindows,
    closedDays,
    extraWindows,
    temperatureSteps,
    weatherDays,
    materials,
    offcuts,
    stockEntries,
    incomings,
    materialBuyings,
    suppliers,
    mixes,
    mixMaterials,
  },
  ...{ mixWaters, mixWetCures },
  ...{ castings, castingMaterials, castingCuts, castingSizes, moulds, mouldMakes, piecesInMould, finishedPieces },
  ...{ kits, kitPieces, kitParts, kitCuts, kitSizes, customers, orders, orderLines },
  ...{ keptKits, keptCastings },
  ...{ yardCosts, kitPrices, orderMoney, orderPayments },
  ...{ piecesToMend, workRecords, yardUnits, yardHabits, guesses, typedFigures },
};
