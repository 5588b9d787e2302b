import { readFileSync } from 'node:fs';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { DELIVERY_DAYS_IN_HAND } from '../../../src/engine/begin/empty-yard.ts';
import type { Ask } from './arrivals.ts';
import { daysAfter } from './clock.ts';
import { copingMoulds, type PanelYard, panelMoulds, panelYard, weekly } from './panel-yard.ts';
import { demoYard, type SeasonYard, yardOfFile } from './season-yard.ts';

const SPRING = '2027-04-05';

const KITS: readonly Ask[] = [
  { what: 'kit:kit-900', most: 2 },
  { what: 'kit:kit-1100', most: 1 },
  { what: 'casting:panel-900', most: 4 },
];
const WITH_COPING: readonly Ask[] = [...KITS, { what: 'kit:copings', most: 2 }];

const fourLengths = (each: number) => [1100, 900, 600, 450].flatMap((length) => panelMoulds(length, each));

interface Season {
  ordersAWeek: number;
  asks?: readonly Ask[];
  from?: string;
}

const panels = (of: PanelYard, { ordersAWeek, asks = KITS, from = SPRING }: Season, system?: 'US'): SeasonYard =>
  yardOfFile({ name: of.name, from, ordersAWeek, asks }, panelYard(of), system);

/** Mortar comes by itself every other week and cannot be bought. */
const RATIONS = Array.from({ length: 12 }, (_, i) => ({
  material: 'mortar',
  quantity: 9,
  on: daysAfter(SPRING, 4 + 14 * i),
}));

const exampleYard = (): SeasonYard => {
  const file = new URL('../../contract/example.yard.json', import.meta.url);
  const input = JSON.parse(readFileSync(file, 'utf8')) as YardFileInput;
  input.yard.deliveryDaysInHand = DELIVERY_DAYS_IN_HAND;
  const asks = input.kits.map(({ id }) => ({ what: `kit:${id}`, most: 1 }));
  return yardOfFile({ name: 'example', from: SPRING, ordersAWeek: 1, asks }, input);
};

const DEMO_ASKS = ['planter', 'trough', 'cold-frame', 'herb-square'].map((kit) => ({ what: `kit:${kit}`, most: 1 }));

/** The yards of the season bench, each of another kind. */
export const SEASON_YARDS: readonly SeasonYard[] = [
  panels(
    { name: 'small', work: [weekly('SA', '08:00', '12:00')], moulds: [...panelMoulds(900, 2), ...panelMoulds(450, 2)] },
    {
      ordersAWeek: 1,
      asks: [
        { what: 'kit:kit-900', most: 2 },
        { what: 'casting:panel-450', most: 4 },
      ],
    },
  ),
  panels({ name: 'saturdays', work: [weekly('SA', '08:00', '14:00')], moulds: fourLengths(2) }, { ordersAWeek: 2 }),
  panels(
    { name: 'evenings', work: [weekly('MO,WE,TH', '18:00', '21:00')], moulds: fourLengths(2) },
    { ordersAWeek: 2.5 },
  ),
  panels(
    {
      name: 'two mixes and a rack',
      ...{ work: [weekly('SA', '08:00', '13:30'), weekly('WE', '17:30', '20:30')], hasCoping: true },
      ...{ moulds: [...fourLengths(2), ...copingMoulds(3)], yard: { rackSpaces: 16 } },
    },
    { ordersAWeek: 2.5, asks: WITH_COPING },
  ),
  panels(
    {
      name: 'cold',
      ...{ work: [weekly('SA', '09:00', '14:00'), weekly('TU', '13:00', '16:00')], hasCoping: true },
      ...{ moulds: [...fourLengths(2), ...copingMoulds(2)], celsius: [6, 5, 7, 9, 11, 14, 16, 16, 14, 11, 8, 6] },
    },
    { ordersAWeek: 2, asks: WITH_COPING, from: '2027-01-11' },
  ),
  panels(
    {
      name: 'scarce material',
      ...{ work: [weekly('SA', '08:00', '14:00'), weekly('TU', '17:30', '20:00')], moulds: fourLengths(2) },
      ...{ materials: { mortar: { onHand: 9, leadDays: undefined, minimum: 0 } }, incoming: RATIONS },
    },
    { ordersAWeek: 1.8 },
  ),
  panels(
    {
      ...{
        name: 'US',
        timeZone: 'America/Chicago',
        work: [weekly('SA', '07:00', '12:30'), weekly('TH', '17:00', '20:00')],
      },
      ...{ moulds: fourLengths(2), yard: { handoverDays: ['FR', 'SA'] } },
    },
    { ordersAWeek: 2.5 },
    'US',
  ),
  exampleYard(),
  demoYard({ name: 'demo', from: SPRING, ordersAWeek: 1, asks: DEMO_ASKS }),
  panels(
    { name: 'busy evenings', work: [weekly('MO,TU,WE,TH,FR', '17:30', '20:30')], moulds: fourLengths(3) },
    { ordersAWeek: 5 },
  ),
  panels(
    {
      ...{ name: 'two people', work: [weekly('SA', '08:00', '13:00', 2), weekly('WE', '18:00', '20:30')] },
      ...{ moulds: fourLengths(2), panels: { stripCrew: 2 } },
    },
    { ordersAWeek: 2.5 },
  ),
  panels(
    {
      ...{ name: 'long lead times', work: [weekly('SA', '08:00', '13:30'), weekly('MO', '17:30', '20:00')] },
      ...{ moulds: fourLengths(2), thin: { attendMinutes: 45 } },
      materials: { mortar: { leadDays: 14, pack: 10 }, mesh: { leadDays: 28 }, rod: { leadDays: 35, onHand: 6 } },
    },
    { ordersAWeek: 2 },
  ),
  // Tasks lie in 95 minutes of an evening: a terrace is cast over several, and packed over two.
  panels(
    {
      ...{ name: 'large orders', work: [weekly('MO,WE,TH', '18:00', '20:00'), weekly('SA', '09:00', '11:00')] },
      ...{ moulds: fourLengths(2), terracePackMinutes: 150 },
    },
    {
      ordersAWeek: 1.2,
      asks: [
        { what: 'kit:terrace', most: 1 },
        { what: 'kit:kit-900', most: 1 },
        { what: 'casting:panel-450', most: 2 },
      ],
    },
  ),
];
