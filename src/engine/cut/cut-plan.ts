export interface CutDemand { lengthMm: number; count: number; at: number; for: string }
export interface OpenedStick { openedAt: number; cuts: { lengthMm: number; count: number; for: string }[] }
export const cutPlan = (m: { stickMm: number; kerfMm: number }, demands: CutDemand[], _by?: (t: number) => number): OpenedStick[] | null => {
  const out: (OpenedStick & { left: number })[] = [];
  for (const d of [...demands].sort((a, b) => a.at - b.at)) for (let i = 0; i < d.count; i++) {
    let s = out.filter((x) => x.left >= d.lengthMm).sort((a, b) => a.left - b.left)[0];
    if (!s) { s = { openedAt: d.at, cuts: [], left: m.stickMm }; out.push(s); }
    s.left -= d.lengthMm + m.kerfMm;
    const c = s.cuts.find((x) => x.lengthMm === d.lengthMm && x.for === d.for);
    if (c) c.count++; else s.cuts.push({ lengthMm: d.lengthMm, count: 1, for: d.for });
  }
  return out.map(({ openedAt, cuts }) => ({ openedAt, cuts }));
};
