import { describe, expect, it } from 'vitest';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { DAMAGES, damagePlan } from '../../support/damage-plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { randomYard } from '../../support/random-yard.ts';

const YARDS = 60;
const planned = yardSeeds(YARDS).map((seed) => {
  const yard = seed % 2 === 0 ? datedYard(randomYard(seed), seed) : randomYard(seed);
  return { seed, yard, plan: planYard(yard, { effort: 'quick' }) };
});

/** Whatever the independent check rejects the referee rejects as well, and the other way round. */
describe('plans spoilt a little', { timeout: 120_000 }, () => {
  it.each(Object.entries(DAMAGES))('are judged as the independent check judges them: %s', (_, way) => {
    let rejected = 0;
    for (const { seed, yard, plan } of planned) {
      const spoilt = damagePlan(yard, plan, way, diceOf(seed));
      const faults = audit(yard, spoilt).faults;
      const findings = refereePlan(yard, spoilt);
      expect({ seed, inOrder: findings.length === 0, faults, findings }).toEqual({
        seed,
        inOrder: faults.length === 0,
        faults,
        findings,
      });
      if (findings.length > 0) rejected++;
    }
    expect(rejected).toBeGreaterThan(0);
  });
});
