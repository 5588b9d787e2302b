/** What a maker calls the fields of a file. One that is not here goes by its own name. */
export const FIGURE_WORDS: Readonly<Record<string, string>> = {
  ...{
    id: 'number',
    name: 'name',
    note: 'note',
    damageNote: 'what is damaged',
    openedNote: 'note',
    emptiedAt: 'emptied',
    shortBy: 'taken beyond the book',
    phone: 'phone',
  },
  ...{ timeZone: 'clock of', horizonDays: 'planned ahead', mixers: 'mixers', rackSpaces: 'places to cure' },
  ...{ setUpMinutes: 'to get going', clearUpMinutes: 'to clear up', handoverDays: 'handed over on' },
  ...{
    sessionsInHand: 'sessions in hand',
    deliveryDaysInHand: 'days in hand for deliveries',
    batchWorthDays: 'a mix saved is worth',
    bagWorthDays: 'a bag saved is worth',
  },
  ...{ fixedHours: 'fixed ahead', currency: 'money', weekStart: 'week begins', demo: 'demo yard', units: 'units' },
  ...{ unit: 'counted in', onHand: 'in the yard', pack: 'pack', leadDays: 'days to arrive', minimum: 'always keep' },
  ...{
    unitPrice: 'price',
    supplier: 'supplier',
    shelfLifeDays: 'keeps',
    stickMm: 'length of a stick',
    kerfMm: 'saw cut',
  },
  ...{ yieldKgPerBag: 'one bag fills', bagStep: 'steps of', maxBags: 'most bags at once', crew: 'people' },
  ...{ mixMinutes: 'mixing', workingMinutes: 'can be worked', washMinutes: 'washing', attendMinutes: 'stay with it' },
  ...{ demouldMinutes: 'can be stripped after', cureHours: 'fit to go out after', referenceCelsius: 'at' },
  ...{
    activationKelvin: 'rate with warmth',
    minCelsius: 'coldest',
    maxCelsius: 'warmest',
    protectHours: 'keep from frost',
  },
  waterLitresPerBag: 'water to a bag',
  wetCureHours: 'kept wet after the strip',
  keptReady: 'to stand ready',
  ...{ perBag: 'in a bag', mix: 'mix', kg: 'weight', fillMinutes: 'filling', stripMinutes: 'stripping' },
  ...{ stripCrew: 'people to strip', cleanMinutes: 'cleaning', prepMinutes: 'setting up', perPiece: 'in a piece' },
  ...{ cuts: 'cuts', size: 'size', makes: 'makes', setFor: 'set for', condition: 'condition', prepped: 'set up' },
  ...{ repairedOn: 'mended on', turnsSinceOil: 'turns since the sealing coat', oilEveryTurns: 'sealing coat every' },
  ...{ oilMinutes: 'sealing coat takes', oilDryMinutes: 'sealing coat dries', pieces: 'panels', parts: 'parts' },
  ...{
    packMinutes: 'packing',
    status: 'standing',
    partOf: 'part of',
    customer: 'customer',
    wantedOn: 'wanted',
    notBefore: 'not before',
    promisedOn: 'promised',
  },
  ...{ heldUntil: 'held until', weight: 'can it slip', takenAt: 'taken', handedOverOn: 'handed over on' },
  ...{ packedAt: 'packed', packedMinutes: 'packed so far', lines: 'asked for' },
};

const UNITS: readonly [RegExp, string][] = [
  [/Minutes$/, 'minutes'],
  [/Hours$/, 'hours'],
  [/Days$/, 'days'],
  [/Celsius$/, '°C'],
  [/Mm$/, 'mm'],
  [/^(kg|yieldKgPerBag)$/, 'kg'],
  [/^waterLitresPerBag$/, 'l'],
  [/Turns$/, 'turns'],
];

/** `unitOfFigure('mixMinutes')` is 'minutes'; most figures have none. */
export const unitOfFigure = (figure: string): string | null => UNITS.find(([name]) => name.test(figure))?.[1] ?? null;
