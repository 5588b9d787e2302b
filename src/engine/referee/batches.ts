import { type Finding, finder, TOLERANCE } from './finding.ts';
import type { Ground, TimedBatch } from './ground.ts';
import { mostAtOnce } from './most-at-once.ts';

type Found = (message: string) => void;

/** R3: mixed, then filled piece after piece within the working time, then washed out, with somebody there after it. */
const checkFilling = (ground: Ground, x: TimedBatch, found: Found): void => {
  const name = `batch ${x.batch.id}`;
  const listed = [...x.batch.pours].sort().join();
  if (
    listed !==
    x.pours
      .map((p) => p.pour.id)
      .sort()
      .join()
  )
    found(`${name}: its pours are not those that name it`);
  if (x.pours.length === 0) found(`${name} fills nothing`);
  if (x.underWay) return;
  if (x.mixEnd !== x.start + x.mix.mixMinutes) found(`${name} is not mixed for ${x.mix.mixMinutes} minutes`);
  let filled = x.mixEnd;
  for (const p of x.pours) {
    if (p.casting.mix !== x.mix.id) found(`${p.name}: ${p.casting.id} is not of ${x.mix.id}`);
    if (p.fillStart !== filled) found(`${p.name} is not filled right after what comes before it`);
    if (p.fillEnd !== p.fillStart + p.casting.fillMinutes)
      found(`${p.name}: filling lasts ${p.casting.fillMinutes} min`);
    filled = p.fillEnd;
  }
  if (x.end !== filled + x.mix.washMinutes) found(`${name} does not end after washing out`);
  const age = ground.ageings.get(x.mix.id)!.ageBetween(x.mixEnd, filled);
  if (age > x.mix.workingMinutes + TOLERANCE) found(`${name} stiffens before it is all filled`);
  const session = ground.sessions.find((s) => s.start <= x.start && x.start < s.end);
  if (session && filled + x.mix.attendMinutes > session.end) found(`${name}: nobody is there to keep it wet`);
};

/** R4: the pieces' mass, and the bags for it. */
const checkBags = ({ batch, mix, pours }: TimedBatch, found: Found): void => {
  const kg = pours.reduce((sum, p) => sum + p.casting.kg, 0);
  if (Math.abs(kg - batch.kg) > TOLERANCE) found(`batch ${batch.id}: its pieces come to ${kg} kg, not ${batch.kg}`);
  const steps = Math.ceil(kg / mix.yieldKgPerBag / mix.bagStep - 1e-9);
  if (Math.abs(steps * mix.bagStep - batch.bags) > TOLERANCE)
    found(`batch ${batch.id} takes ${steps * mix.bagStep} bags`);
  if (batch.bags > mix.maxBags + TOLERANCE) found(`batch ${batch.id}: at most ${mix.maxBags} bags are mixed at once`);
};

/** R9: warm enough, and not too hot, while it is mixed and filled; warm enough while it has to be protected. */
const checkTemperature = ({ climate }: Ground, x: TimedBatch, found: Found): void => {
  const { minCelsius = -Infinity, maxCelsius = Infinity } = x.mix;
  const filled = x.pours.at(-1)?.fillEnd ?? x.mixEnd;
  const protectedUntil = filled + x.mix.protectHours * 60;
  for (let at = x.start; at <= protectedUntil; at = climate.nextStep(at)) {
    const celsius = climate.celsiusAt(at);
    if (celsius === null || (celsius >= minCelsius && (celsius <= maxCelsius || at > filled))) continue;
    found(
      `batch ${x.batch.id}: ${celsius.toFixed(1)} °C ${at > filled ? 'while it has to be protected' : 'while it is poured'}`,
    );
    break;
  }
};

/**
 * R2, R3, R4 and R9: mixers, how a batch is mixed and filled, its bags, and the temperatures it asks for. Of a batch under
 * way only that its pours are its own (R14).
 *
 * Example: a batch of three pieces of 13.6 kg from one bag that places 27.5 kg is found under R4: it takes 2 bags.
 */
export const checkBatches = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const mixing = mostAtOnce(
    ground.batches.map((x) => ({
      from: Math.max(x.start, x.underWay ? ground.now : x.start),
      to: x.mixEnd,
      amount: 1,
      given: x.underWay,
    })),
  );
  if (mixing > ground.yard.yard.mixers) finder(findings, 'R2')(`${mixing} batches are mixed at once`);
  for (const x of ground.batches) {
    checkFilling(ground, x, finder(findings, 'R3'));
    if (x.underWay) continue;
    checkBags(x, finder(findings, 'R4'));
    checkTemperature(ground, x, finder(findings, 'R9'));
  }
  return findings;
};
