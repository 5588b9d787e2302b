import type { YardFile } from '../../../shared/yard-file.ts';

/** What a batch can be filled into, piece after piece, by R3 and R4. Minutes count from the start of the batch. */
export interface Filling {
  mix: number;
  pieces: { casting: number; fillEnd: number }[];
  lastFillEnd: number;
  end: number;
  bags: number;
}

const TOLERANCE = 1e-9;

/** Every filling of every mix that asks for no more of a casting than `wanted` has. */
export const fillingsOf = (yard: YardFile, wanted: number[]): Filling[] => {
  const fillings: Filling[] = [];
  yard.mixes.forEach((mix, m) => {
    const castings = yard.castings.flatMap((c, i) => (c.mix === mix.id ? [i] : []));
    const extend = (list: number[], kg: number, minutes: number) => {
      for (const c of castings) {
        const heavier = kg + yard.castings[c]!.kg;
        const longer = minutes + yard.castings[c]!.fillMinutes;
        const bags = Math.ceil(heavier / mix.yieldKgPerBag / mix.bagStep - TOLERANCE) * mix.bagStep;
        if (bags > mix.maxBags + TOLERANCE || longer > mix.workingMinutes) continue;
        const pieces = [...list, c];
        if (pieces.filter((x) => x === c).length > wanted[c]!) continue;
        fillings.push(fillingOf(yard, m, pieces, bags));
        extend(pieces, heavier, longer);
      }
    };
    extend([], 0, 0);
  });
  return fillings;
};

const fillingOf = (yard: YardFile, m: number, castings: number[], bags: number): Filling => {
  const mix = yard.mixes[m]!;
  let time = mix.mixMinutes;
  const pieces = castings.map((casting) => {
    time += yard.castings[casting]!.fillMinutes;
    return { casting, fillEnd: time };
  });
  return { mix: m, pieces, lastFillEnd: time, end: time + mix.washMinutes, bags };
};
