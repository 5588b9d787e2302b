import { type Context, Hono } from 'hono';
import { PhonePage } from '../../views/device/phone-page.tsx';
import { PHONE, WHO } from '../../views/device/this-device.tsx';
import { WhoPage } from '../../views/device/who-page.tsx';
import { showWho } from '../usecases/changes/show-who.ts';
import { whoTyped } from '../usecases/typed/who-form.ts';
import { errorsByField, readForm } from './form.ts';
import { ownPath, page } from './page.tsx';
import type { Screens } from './screens.ts';
import { rememberWho, whoIsAt } from './this-device.ts';

interface Typed {
  typed: string;
  back: string;
  errors: Record<string, string>;
}

/** Whose the device is, and how another one gets here. A device is no part of the yard: nothing here is a change of it. */
export const deviceRoutes = ({ context, addressOf }: Screens): Hono => {
  const routes = new Hono();
  const whoPage = async (c: Context, state: Typed) => {
    const model = await showWho(context());
    const frame = { title: 'Who is this?', yardName: model.yardName, place: 'yard' } as const;
    const status = Object.keys(state.errors).length > 0 ? 422 : 200;
    return page(c, frame, <WhoPage model={model} who={whoIsAt(c)} {...state} />, { status });
  };
  routes.get(WHO, (c) => whoPage(c, { typed: whoIsAt(c) ?? '', back: ownPath(c.req.query('back')), errors: {} }));
  routes.post(WHO, async (c) => {
    const { name = '', back } = await readForm(c);
    const who = whoTyped(name);
    if (!who.ok) return whoPage(c, { typed: name, back: ownPath(back), errors: errorsByField(who.faults) });
    rememberWho(c, who.value);
    return c.redirect(ownPath(back), 303);
  });
  routes.get(PHONE, async (c) => {
    const model = await showWho(context());
    const frame = { title: 'Open this on your phone', yardName: model.yardName } as const;
    return page(c, frame, <PhonePage model={model} address={addressOf(c, '/today')} />);
  });
  return routes;
};
