import { materialBuying, type Supplier, supplier } from '../../shared/supplier.ts';
import { setMaterialBuying, setSupplier } from '../stores/supplier-store.ts';
import type { Tx } from '../transaction.ts';
import { MAIL_ORDER, MERCHANT } from './larch-row-yard.ts';

/** Rules without an interval: where they are anchored makes no difference. */
const rule = (days: string): Supplier['opens'] => ({ rule: `FREQ=WEEKLY;BYDAY=${days}`, from: '2026-01-05' });

/** When they are open and what they ask for, as such suppliers commonly do: no source. */
export const seedSuppliers = async (tx: Tx): Promise<void> => {
  await setSupplier(
    tx,
    supplier.parse({
      ...{ name: MERCHANT, fetched: false, opens: rule('MO,TU,WE,TH,FR,SA'), delivers: rule('MO,TU,WE,TH,FR') },
      ...{ deliveryPrice: 15, carriesKg: 900 },
    }),
  );
  await setSupplier(
    tx,
    supplier.parse({
      ...{ name: MAIL_ORDER, fetched: false, opens: rule('MO,TU,WE,TH,FR'), delivers: rule('TU,WE,TH,FR') },
      ...{ deliveryPrice: 4.9, aheadDays: 30 },
    }),
  );
  await setMaterialBuying(
    tx,
    'fast-setting-mortar',
    materialBuying.parse({ kgPerUnit: 25, breaks: [{ from: 40, unitPrice: 19.9 }] }),
  );
  await setMaterialBuying(tx, 'coping-concrete', materialBuying.parse({ kgPerUnit: 25 }));
};
