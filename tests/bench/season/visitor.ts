import type { Hono } from 'hono';
import { anotherDayOn, faultsOn, type PageButton, type PageForm, seenOn } from '../../support/page-form.ts';
import type { SeasonClock } from './clock.ts';

/** An act that the program refused, or could not do, in its own words. */
interface RefusedAct {
  at: string;
  status: number;
  act: string;
  words: string;
}

/** Where a form led to: the page after it, and its address. Null when it was refused. */
export interface After {
  location: string;
  /** The day that was given instead, where the page asked and another was taken; null where none was. */
  givenOn: string | null;
  /** The page it leads to, fetched when it is asked for. */
  page(): Promise<string>;
}

/** Somebody with a browser: looks at pages and sends the forms that stand on them. */
export interface Visitor {
  page(path: string): Promise<string>;
  /** The part of a page that its script would ask for. */
  part(path: string, target: string): Promise<string>;
  /** What the page asks about before it saves is saved all the same; or with the other day it offers, where that is taken. */
  send(
    form: PageForm,
    button?: PageButton,
    typed?: Record<string, string>,
    taking?: 'another day',
  ): Promise<After | null>;
  refused: RefusedAct[];
}

export const visitorOf = (app: Hono, clock: SeasonClock): Visitor => {
  const refused: RefusedAct[] = [];
  const note = (status: number, act: string, words: string) => refused.push({ at: clock.now(), status, act, words });
  const get = async (path: string, headers: Record<string, string> = {}): Promise<string> => {
    const answer = await app.request(path, { headers });
    const html = await answer.text();
    if (answer.status >= 400) note(answer.status, `GET ${path}`, faultsOn(html));
    return html;
  };
  const send: Visitor['send'] = async (form, button = form.buttons[0], typed = {}, taking = undefined) => {
    const pressed = button?.name ? { [button.name]: button.value } : {};
    const fields = { ...form.fields, ...pressed, ...typed };
    const action = button?.action ?? form.action;
    const answer = await app.request(action, { method: 'POST', body: new URLSearchParams(fields) });
    const html = await answer.text();
    const location = answer.headers.get('Location');
    const givenOn = typed['another-day']?.split(' ')[1] ?? null;
    if (answer.status === 303 && location) return { location, givenOn, page: () => get(location) };
    const another = answer.status === 200 && taking ? anotherDayOn(html) : undefined;
    if (another && !typed['another-day']) return send(form, button, { ...typed, 'another-day': another });
    const seen = answer.status === 200 ? seenOn(html) : undefined;
    if (seen && seen !== typed.seen) return send(form, button, { ...typed, seen });
    note(answer.status, `POST ${action} ${JSON.stringify(fields)}`, faultsOn(html));
    return null;
  };
  return {
    page: (path) => get(path),
    part: (path, target) => get(path, { 'HX-Request-Type': 'partial', 'HX-Target': target }),
    send,
    refused,
  };
};
