import type { Context, Hono } from 'hono';
import { BuyingPage } from '../../views/buying/buying-page.tsx';
import type { RefusedForm } from '../../views/buying/refused-form.ts';
import { buyMaterial } from '../usecases/buying/buy-material.ts';
import { countMaterial } from '../usecases/buying/count-material.ts';
import { giveUpPurchase } from '../usecases/buying/give-up-purchase.ts';
import { receiveMaterial } from '../usecases/buying/receive-material.ts';
import { showBuying } from '../usecases/buying/show-buying.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { amountIn } from '../usecases/typed/amount-typed.ts';
import { type FormFields, wholeTyped } from '../usecases/typed/form-fields.ts';
import { purchaseTyped } from '../usecases/typed/purchase-form.ts';
import { type Deed, type Done, deedRoutes } from './deed-routes.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

const PATH = '/buying';

const buyingPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const model = await showBuying(context);
  const content = <BuyingPage model={model} notice={await doneNotice(c, context)} refused={refused} />;
  const frame = { title: 'Buying', at: 'buying', yardName: model.yardName, place: 'yard' } as const;
  return page(c, frame, content, { status: refused ? 422 : 200 });
};

const bought = async (context: UseCaseContext, fields: FormFields): Done => {
  const read = purchaseTyped(fields);
  return read.ok ? buyMaterial(context, read.value) : read;
};

const DEEDS: Readonly<Record<string, Deed>> = {
  bought: { act: bought, form: ({ line }) => line ?? 'else' },
  arrived: {
    act: (context, typed) => receiveMaterial(context, wholeTyped(typed.goods) ?? 0, amountIn(typed, 'came')),
    form: ({ goods }) => `goods-${goods}`,
  },
  'not-coming': {
    act: (context, { goods }) => giveUpPurchase(context, wholeTyped(goods) ?? 0),
    form: ({ goods }) => `goods-${goods}`,
  },
  counted: {
    act: (context, typed) => countMaterial(context, typed.material ?? '', amountIn(typed, 'counted')),
    form: ({ line }) => `stock-${line}`,
  },
};

export const buyingRoutes = (screens: Screens): Hono => deedRoutes(screens, PATH, DEEDS, buyingPage);
