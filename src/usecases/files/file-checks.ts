import type { Archive } from '../../../shared/archive.ts';

/** A figure of a material that is ten times what it was, or a tenth of it, or further off. */
interface LargeStep {
  name: string;
  figure: string;
  from: number;
  to: number;
}

/** What somebody has to look at before a file is loaded: it may have been read wrongly. */
export interface FileChecks {
  /** Cells whose letters were guessed. */
  guessed: readonly string[];
  steps: readonly LargeStep[];
}

/** A decimal sign that a spreadsheet took for thousands makes 12 of 0.012. */
const FACTOR = 10;

const FIGURES = { onHand: 'in the yard', pack: 'pack', minimum: 'always keep', unitPrice: 'price' } as const;

const isLarge = (from: number, to: number): boolean => from > 0 && to > 0 && Math.max(from / to, to / from) >= FACTOR;

/** Figures of materials that are ten times what they were, a tenth of it, or further off. */
export const largeSteps = (before: Pick<Archive, 'materials'>, after: Pick<Archive, 'materials'>): LargeStep[] => {
  const was = new Map(before.materials.map((material) => [material.id, material]));
  return after.materials.flatMap((material) =>
    (Object.keys(FIGURES) as (keyof typeof FIGURES)[]).flatMap((key): LargeStep[] => {
      const [from, to] = [was.get(material.id)?.[key] ?? 0, material[key] ?? 0];
      return isLarge(from, to) ? [{ name: material.name, figure: FIGURES[key], from, to }] : [];
    }),
  );
};

/** Whether there is anything to look at. */
export const asksFirst = ({ guessed, steps }: FileChecks): boolean => guessed.length + steps.length > 0;
