import type { Context, Hono } from 'hono';
import type { Fault } from '../../shared/fault.ts';
import type { RefusedForm } from '../../views/buying/buying-facts.ts';
import { BuyingPage } from '../../views/buying/buying-page.tsx';
import { buyMaterial } from '../usecases/buy-material.ts';
import type { UseCaseContext } from '../usecases/context.ts';
import { countMaterial } from '../usecases/count-material.ts';
import { giveUpPurchase } from '../usecases/give-up-purchase.ts';
import { receiveMaterial } from '../usecases/receive-material.ts';
import { showBuying } from '../usecases/show-buying.ts';
import { amountTyped } from './amount-typed.ts';
import type { Screens } from './app.ts';
import { type Deed, type Done, deedRoutes } from './deed-routes.ts';
import { type Typed, wholeTyped } from './form.ts';
import { doneNotice } from './notice.ts';
import { dateTyped } from './order-form.ts';
import { page } from './page.tsx';

const PATH = '/buying';

const buyingPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const model = await showBuying(context);
  const content = <BuyingPage model={model} notice={await doneNotice(c, context)} refused={refused} />;
  return page(c, { title: 'Buying', at: 'buying', yardName: model.yardName }, content, { status: refused ? 422 : 200 });
};

const refusal = async (faults: Fault[]): Done => ({ ok: false, faults });

const bought = (context: UseCaseContext, typed: Typed): Done => {
  const [quantity, on, price] = [amountTyped(typed, 'quantity'), dateTyped(typed, 'on'), amountTyped(typed, 'price')];
  const faults = [...quantity.faults, ...on.faults, ...price.faults];
  if (quantity.faults.length === 0 && quantity.amount === null)
    faults.push({ path: 'quantity', message: 'How much was bought? Write a number.' });
  if (on.faults.length === 0 && on.date === null)
    faults.push({ path: 'on', message: 'When is it expected? Write a day.' });
  if (faults.length > 0 || quantity.amount === null || on.date === null) return refusal(faults);
  return buyMaterial(context, {
    material: typed.material ?? '',
    quantity: quantity.amount,
    on: on.date,
    price: price.amount,
  });
};

const arrived = (context: UseCaseContext, typed: Typed): Done => {
  const { amount, faults } = amountTyped(typed, 'came');
  if (faults.length > 0) return refusal(faults);
  return receiveMaterial(context, wholeTyped(typed.goods) ?? 0, amount);
};

const counted = (context: UseCaseContext, typed: Typed): Done => {
  const { amount, faults } = amountTyped(typed, 'counted');
  if (faults.length > 0) return refusal(faults);
  if (amount === null) return refusal([{ path: 'counted', message: 'How much is there? Write a number.' }]);
  return countMaterial(context, typed.material ?? '', amount);
};

const DEEDS: Readonly<Record<string, Deed>> = {
  bought: { act: bought, form: ({ line }) => line ?? 'else' },
  arrived: { act: arrived, form: ({ goods }) => `goods-${goods}` },
  'not-coming': {
    act: (context, { goods }) => giveUpPurchase(context, wholeTyped(goods) ?? 0),
    form: ({ goods }) => `goods-${goods}`,
  },
  counted: { act: counted, form: ({ line }) => `stock-${line}` },
};

export const buyingRoutes = (screens: Screens): Hono => deedRoutes(screens, PATH, DEEDS, buyingPage);
