import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Plan, PlanCamera } from '../../plan/plan.ts';

/** What is tried beside how cameras of the plan stand, and how the two are compared. No history: only keeping one is a step. */
export interface TrialState {
  /** Of which plan. */
  readonly plan: string;
  /** The camera that is tried; null: none. */
  readonly of: string | null;
  /** By camera of the plan, its other settings: cameras with ids of their own. */
  readonly variants: Readonly<Record<string, readonly PlanCamera[]>>;
  /** The variant that handles and fields are for; null: the plan's own things. */
  readonly chosen: string | null;
  /** The one on the right of the divider; on its left is what stands. */
  readonly right: string | null;
  /** Where the divider stands, as a share of the width. */
  readonly at: number;
  /** It has been put somewhere already. */
  readonly placed: boolean;
  /** Index of the band at which ground is gained or lost. */
  readonly band: number;
  /** Where the numbers that go by distance are told, m from the point below the lens. */
  readonly distance: number;
  /** Whether ground gained and lost is marked in the picture. */
  readonly marked: boolean;
  /** Rises with each change of what is assessed. */
  readonly edits: number;
}

export type TrialStore = StoreApi<TrialState>;

/** Variants beside what stands; more cannot be told apart by their lines. */
export const MOST_VARIANTS = 3;

const LETTERS = ['B', 'C', 'D'] as const;
const MARK = '-trial-';

const variantId = (of: string, letter: string): string => `${of}${MARK}${letter}`;

/** "A" for what stands, else the letter of a variant. */
export const letterOf = (id: string): string => {
  const at = id.lastIndexOf(MARK);
  return at < 0 ? 'A' : id.slice(at + MARK.length);
};

/** Whether an id is that of a variant of a camera. */
export const isVariantOf = (of: string | null, id: string): boolean =>
  of !== null && id.startsWith(`${of}${MARK}`);

export const createTrial = (plan: Pick<Plan, 'id'>): TrialStore =>
  createStore<TrialState>(() => ({
    plan: plan.id,
    of: null,
    variants: {},
    chosen: null,
    right: null,
    at: 0.5,
    placed: false,
    band: 2,
    distance: 6,
    marked: true,
    edits: 0,
  }));

/** The variants of the camera that is tried. */
export const variantsIn = ({ of, variants }: Pick<TrialState, 'of' | 'variants'>): readonly PlanCamera[] =>
  (of === null ? undefined : variants[of]) ?? [];

/** The variant that stands right of the divider: the one chosen for it, else the first; null without any. */
export const rightOf = (state: Pick<TrialState, 'of' | 'variants' | 'right'>): string | null => {
  const all = variantsIn(state);
  return all.find(({ id }) => id === state.right)?.id ?? all[0]?.id ?? null;
};

/** Another setting of a camera, to begin with as it stands; null where there are as many as can be told apart. */
export function freshVariant(state: TrialState, camera: PlanCamera): PlanCamera | null {
  const taken = new Set((state.variants[camera.id] ?? []).map(({ id }) => letterOf(id)));
  const letter = LETTERS.find((one) => !taken.has(one));
  if (letter === undefined) return null;
  return { ...camera, id: variantId(camera.id, letter), name: letter, hidden: false, locked: false };
}

/** Puts other variants of a camera in; those that are gone are let go of. */
export function withVariants(state: TrialState, of: string, variants: readonly PlanCamera[]): TrialState {
  const isThere = (id: string | null): boolean => variants.some((one) => one.id === id);
  const gone = (id: string | null): boolean => id !== null && isVariantOf(of, id) && !isThere(id);
  return {
    ...state,
    variants: { ...state.variants, [of]: variants },
    chosen: gone(state.chosen) ? null : state.chosen,
    right: gone(state.right) ? null : state.right,
    edits: state.edits + 1,
  };
}
