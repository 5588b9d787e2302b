/** Half-open. */
interface Spell {
  start: number;
  end: number;
}

/**
 * Work that goes on at the same time stands in lanes below each other, as few as it takes. `spells` by their start.
 *
 * Example: 0 to 10 and 10 to 20 share a lane; 5 to 15 beside them needs a second.
 */
export const inLanes = <T extends Spell>(spells: readonly T[]): T[][] => {
  const lanes: T[][] = [];
  for (const spell of spells) {
    const free = lanes.find((lane) => lane.at(-1)!.end <= spell.start);
    if (free) free.push(spell);
    else lanes.push([spell]);
  }
  return lanes;
};
