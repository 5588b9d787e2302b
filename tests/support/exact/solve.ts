import loadHighs, { type Highs, type ModelData } from 'highs';
import type { LinearModel } from './linear-model.ts';

export interface Solved {
  /** `stopped`: the processor time was up; objective and values are then the best found, if any. */
  status: 'optimal' | 'infeasible' | 'stopped';
  objective: number;
  /** No solution is below this. */
  bound: number;
  values: Float64Array | null;
  seconds: number;
}

let loading: Promise<Highs> | null = null;
const highsOnce = (): Promise<Highs> => {
  loading ??= loadHighs();
  return loading;
};

const dataOf = (lp: LinearModel, { constants }: Highs, fixed?: Map<number, number>): ModelData => {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of lp.rows) {
    for (const [column, factor] of merged(row.terms)) {
      indices.push(column);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  const numCols = lp.cost.length;
  const numRows = lp.rows.length;
  const { continuous, integer } = constants.variableType;
  return {
    numCols,
    numRows,
    colCost: lp.cost,
    colLower: lp.lower.map((x, i) => fixed?.get(i) ?? x),
    colUpper: lp.upper.map((x, i) => fixed?.get(i) ?? x),
    rowLower: lp.rows.map((r) => r.lower),
    rowUpper: lp.rows.map((r) => r.upper),
    integrality: lp.isWhole.map((whole) => (whole ? integer : continuous)),
    matrix: { format: 'csr', numRows, numCols, starts, indices, values },
  };
};

/** A column twice in a row counts once, with the sum of its factors. */
const merged = (terms: readonly (readonly [number, number])[]): [number, number][] => {
  const sums = new Map<number, number>();
  for (const [column, factor] of terms) sums.set(column, (sums.get(column) ?? 0) + factor);
  return [...sums].filter(([, factor]) => factor !== 0);
};

interface Options {
  /** Of processor time, so that a busy machine proves as much as an idle one. */
  seconds: number;
  /** Values of all whole columns of a solution known before. */
  start?: Map<number, number> | undefined;
  /** Columns held at a value. */
  fixed?: Map<number, number>;
}

const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Minimises a program. An objective of whole numbers is taken for granted: a gap under one is none. */
export const solve = async (lp: LinearModel, { seconds, start, fixed }: Options): Promise<Solved> => {
  const highs = await highsOnce();
  const { modelStatus, solutionStatus } = highs.constants;
  return highs.withModel(dataOf(lp, highs, fixed), (model): Solved => {
    model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.99 });
    if (start) model.setSolution({ indices: [...start.keys()], values: [...start.values()] });
    const spentBefore = processorSeconds();
    const spent = () => processorSeconds() - spentBefore;
    model.run({
      [highs.constants.callbackType.mipInterrupt]: (event) => {
        if (spent() > seconds) event.interrupt();
        return undefined;
      },
    });
    const ended = model.getModelStatus();
    const hasValues = model.info.get('primal_solution_status') === solutionStatus.feasible;
    const found = {
      objective: hasValues ? model.getObjectiveValue() : Number.POSITIVE_INFINITY,
      values: hasValues ? model.getSolution().colValue : null,
      bound: Number(model.info.get('mip_dual_bound')),
      seconds: spent(),
    };
    if (ended === modelStatus.optimal && hasValues) return { status: 'optimal', ...found };
    if (ended === modelStatus.infeasible) return { status: 'infeasible', ...found };
    if (ended === modelStatus.interrupted) return { status: 'stopped', ...found };
    throw new Error(`the solver ended with status ${ended}`);
  });
};
