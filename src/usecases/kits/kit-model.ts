import type { Fault } from '../../../shared/fault.ts';
import type { KitSize } from '../../../shared/kit-size.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { Load } from '../../engine/kits/loads.ts';
import type { PageHead } from '../core/page-parts.ts';
import type { HeaviestPiece } from '../typed/heavy-piece.ts';
import type { KitTyped } from '../typed/kit-size-form.ts';
import type { KitDrawing } from './kit-drawing.ts';
import type { KitSide } from './kit-side.ts';

/** Panels of one length in a kit, and what they weigh in the yard's units. */
export interface KitPanels {
  name: string;
  count: number;
  each: string;
  together: string;
}

/** The pins of a kit, lengths in the yard's units. */
export interface KitPins extends Record<'count' | 'corners' | 'joints' | 'ends', number> {
  length: string;
  /** How much of it the courses take, and how much goes into the ground. */
  above: string;
  ground: string;
  /** What they are cut from; null: the yard has nothing to cut them from. */
  from: string | null;
  /** Why they can't be cut; null when they can. */
  tooLong: string | null;
}

/** What is cut for the panels as they are cast. */
export interface KitSleeves {
  count: number;
  length: string;
  from: string;
}

/** How a kit goes on pallets or cars of a payload; no loads when a single piece is too heavy for it. */
export interface KitLoads {
  payload: string;
  count: number;
  loads: readonly KitLoad[];
}

/** Loads that are alike. */
export interface KitLoad extends Pick<Load, 'times' | 'pieces'> {
  mass: string;
}

/** Everything there is to say of a kit that can be made, in the yard's units. */
export interface KitFacts extends Pick<KitSize, 'shape' | 'courses' | 'faces'> {
  /** As it was typed. */
  asked: string;
  /** Null where that is what was asked for. */
  comesOut: string | null;
  outside: string;
  /** Null for a row. */
  inside: string | null;
  height: string;
  panelCount: number;
  panels: readonly KitPanels[];
  pins: KitPins;
  sleeves: readonly KitSleeves[];
  mass: string;
  heaviest: HeaviestPiece;
  /** Null without a payload. */
  loads: KitLoads | null;
  drawing: KitDrawing;
  side: KitSide;
  /** Offered as its name and its minutes where it is added. */
  name: string;
  packMinutes: number;
  /** A kit that the yard has already and that takes the same; null for none. */
  same: { id: string; name: string } | null;
}

/** A size that can be made: in words, how it differs from what was asked for, and what to type for it by field. */
export interface NearSize {
  text: string;
  difference: string;
  typed: Readonly<Record<string, string>>;
}

interface Choice {
  value: string;
  text: string;
}

/** What stands in the form of a size, and what can be chosen there. */
export interface KitFormFacts {
  typed: KitTyped;
  kinds: readonly Choice[];
  pinMaterials: readonly Choice[];
  /** Names of the panels of the kind that is chosen. */
  panels: readonly string[];
}

/** What comes of a size: the kit, or the nearest sizes where it can't be made. */
export interface KitFoundFacts {
  asked: string;
  made: KitFacts | null;
  nearest: readonly NearSize[];
}

interface KitPageHead extends PageHead {
  system: UnitSystem;
}

/** A form that was worked out; nothing is found while it has faults. */
export interface KitWorkedOut extends KitPageHead {
  form: KitFormFacts;
  faults: readonly Fault[];
  found: KitFoundFacts | null;
}

/** Without a form: no panel has a size yet. */
export type KitBySizeModel = KitWorkedOut | (KitPageHead & { form: null });
