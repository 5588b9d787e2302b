import type { Context, Hono } from 'hono';
import { BuyingPage } from '../../views/buying/buying-page.tsx';
import { IfLate } from '../../views/buying/if-late.tsx';
import { buyMaterial } from '../usecases/buying/buy-material.ts';
import { buyTrip } from '../usecases/buying/buy-trip.ts';
import { countMaterial } from '../usecases/buying/count-material.ts';
import { giveUpPurchase } from '../usecases/buying/give-up-purchase.ts';
import { ifNotOrdered } from '../usecases/buying/if-not-ordered.ts';
import { moveDelivery } from '../usecases/buying/move-delivery.ts';
import { notToBeHad } from '../usecases/buying/not-to-be-had.ts';
import { receiveMaterial } from '../usecases/buying/receive-material.ts';
import { showBuying } from '../usecases/buying/show-buying.ts';
import { bagsTyped, spoilBags } from '../usecases/buying/spoil-bags.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { arrivedTyped, countTyped, goodsTyped, purchaseTyped } from '../usecases/typed/purchase-form.ts';
import { tripTyped } from '../usecases/typed/trip-form.ts';
import { atOnce, effectFirst } from './form-route.tsx';
import { formsOnPage, type PageForm } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

const PATH = '/buying';

const buyingPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const model = await showBuying(context);
  const frame = { title: 'Buying', at: 'buying', yardName: model.yardName, place: 'yard' } as const;
  const from = wholeTyped(c.req.query('from')) ?? 0;
  const content = <BuyingPage model={model} from={from} notice={await doneNotice(c, context)} refused={refused} />;
  return { frame, content };
};

const FORMS: Readonly<Record<string, PageForm>> = {
  bought: { save: atOnce(purchaseTyped, buyMaterial), form: ({ line }) => line ?? 'else' },
  arrived: {
    save: atOnce(arrivedTyped, (context, { goods, came }) => receiveMaterial(context, goods, came)),
    form: ({ goods }) => `goods-${goods}`,
  },
  'trip-bought': { save: atOnce(tripTyped, buyTrip), form: ({ trip }) => trip ?? '' },
  'not-to-be-had': { save: effectFirst(notToBeHad), form: ({ line }) => `none-${line}` },
  spoiled: { save: atOnce(bagsTyped, spoilBags), form: ({ line }) => `stock-${line}` },
  'not-coming': { save: atOnce(goodsTyped, giveUpPurchase), form: ({ goods }) => `goods-${goods}` },
  'new-day': { save: effectFirst(moveDelivery), form: ({ goods }) => `goods-${goods}` },
  counted: {
    save: atOnce(countTyped, (context, { material, counted, ...also }) =>
      countMaterial(context, material, counted, also),
    ),
    form: ({ line }) => `stock-${line}`,
  },
};

/** What happens if a line is not ordered by its day; nothing where that is not to be known. */
const ifLate = async (c: Context, screens: Screens) => {
  const asked = { material: c.req.query('material') ?? '', orderBy: c.req.query('by') ?? '' };
  const context = screens.context();
  const slips = await ifNotOrdered(context, asked);
  const { today } = await dateReading(context);
  return slips === null ? c.body('') : c.html(<IfLate {...asked} slips={slips} today={today} />);
};

export const buyingRoutes = (screens: Screens): Hono =>
  formsOnPage(screens, { path: PATH, show: buyingPage, next: () => PATH }, FORMS).get(`${PATH}/if-late`, (c) =>
    ifLate(c, screens),
  );
