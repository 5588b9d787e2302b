import type { PlanFile } from '../../shared/plan.ts';
import type { TaskKind } from '../../shared/work.ts';
import type { YardFile } from '../../shared/yard-file.ts';

/** Types of the independent check of a plan; dates are `YYYY-MM-DD`, instants minutes since 1970-01-01T00:00Z. */
interface AuditCalendar {
  dateOf(minute: number): string;
  minuteAt(date: string, clock: string): number;
}
interface AuditWindow {
  date: string;
  start: number;
  end: number;
  crew: number;
  allows: TaskKind[];
}
interface AuditSession {
  date: string;
  start: number;
  end: number;
  from: number;
  to: number;
  windows: AuditWindow[];
}
interface AuditWeather {
  steps: { from: number; celsius: number }[];
  at(minute: number): number;
  index(minute: number): number;
}
type AuditMix = { referenceCelsius?: number; activationKelvin?: number };

export function calendar(timeZone: string): AuditCalendar;
export function ruleDates(
  window: { rule: string; from: string; until?: string | undefined },
  lastDay: number,
): number[];
export function sessions(yard: YardFile): AuditSession[];
export function weather(yard: Pick<YardFile, 'temperatures' | 'weather'>, calendar: AuditCalendar): AuditWeather | null;
export function ageGained(weather: AuditWeather | null, mix: AuditMix, from: number, to: number): number;
export function whenAged(weather: AuditWeather | null, mix: AuditMix, from: number, age: number): number;
export function audit(
  yard: YardFile,
  plan: PlanFile,
): { faults: string[]; notes: string[]; score: PlanFile['score'] | null };
export function handoverOn(yard: Pick<YardFile, 'yard'>, date: string): string;
export function needs(
  yard: Pick<YardFile, 'kits'>,
  order: YardFile['orders'][number],
): {
  pieces: Map<string, number>;
  parts: Map<string, number>;
  cuts: { material: string; lengthMm: number; count: number }[];
  packMinutes: number;
};
