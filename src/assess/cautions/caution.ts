import type { Vec3 } from '../../base/vector.ts';
import type { Figures } from './figures.ts';
import type { ThresholdId } from './thresholds.ts';

/**
 * stop: the Drill card is not ready until a person ticks that they looked; fails: what is asked cannot count as met; tight:
 * it may be met, never surely; tell: said once.
 */
export type Severity = 'stop' | 'fails' | 'tight' | 'tell';

/** Worst first. */
export const SEVERITIES: readonly Severity[] = ['stop', 'fails', 'tight', 'tell'];

/** Where on a wall, on the ground or in the air a caution holds, to be marked; and the thing of the plan that it concerns. */
export interface Place {
  readonly at: Vec3;
  readonly thing: CautionThing | null;
}

/** A thing of the plan, as the editor selects it. */
export type CautionThing =
  | { readonly kind: 'structure' | 'camera' | 'lamp' | 'patch'; readonly id: string }
  | { readonly kind: 'opening' | 'service'; readonly id: string; readonly on: string }
  | { readonly kind: 'boundary' };

/** What a row found. */
export interface Found {
  /** The row and what it is about: "30.lintel.front-door". The same caution keeps its id, so that a tick holds. */
  readonly id: string;
  readonly severity: Severity;
  /** How far past its limit, as a factor: of one severity the greatest comes first. */
  readonly weight: number;
  readonly figures: Figures;
  readonly places: readonly Place[];
  /** The settings that it hangs on; the first is the one that it crossed. */
  readonly thresholds: readonly ThresholdId[];
}

/** One caution about a camera. */
export interface Caution extends Found {
  /** Number in the table of cautions. */
  readonly row: number;
  /** Ids of the conditions in which it holds; empty: in all that were looked at. */
  readonly situations: readonly string[];
  /** A stop that a person has looked at. */
  readonly ticked: boolean;
}

/** What is not given, so that some cautions cannot be told. */
export type Lack =
  | 'requirements'
  | 'night'
  | 'origin'
  | 'boundary'
  | 'housing'
  | 'focus'
  | 'imagesPerSecond'
  | 'exposure'
  | 'floors'
  | 'thickness'
  | 'budget';

/** All cautions about a camera, worst first, and what could not be told. */
export interface CautionReport {
  /** Id. */
  readonly camera: string;
  readonly cautions: readonly Caution[];
  readonly lacks: readonly Lack[];
}
