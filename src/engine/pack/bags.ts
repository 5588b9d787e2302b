/**
 * Bags of a batch (R4): its mass in kg over what a bag places, rounded up to whole steps. A sum of fractions that is a
 * hair over a step does not open another bag.
 *
 * Example: `bagsFor(24.9, 27.5, 0.5)` is 1, and `bagsFor(27.6, 27.5, 0.5)` is 1.5.
 */
export const bagsFor = (kg: number, yieldKgPerBag: number, bagStep: number): number =>
  Math.max(0, Math.ceil(kg / yieldKgPerBag / bagStep - 1e-9)) * bagStep;
