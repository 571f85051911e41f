import type { Leaf, OpeningKind } from '../../../model/structure.ts';
import type { OpeningDraft } from '../../../plan/commands/addOpening.ts';

/** What an opening begins with, m: common practice, no source. */
interface FirstSizes {
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly sill: number;
  readonly setBack: number;
  readonly leaf: Leaf;
}

const FIRST: Readonly<Record<OpeningKind, FirstSizes>> = {
  door: { label: 'Door', width: 0.9, height: 2.05, sill: 0, setBack: 0.1, leaf: 'closed' },
  window: { label: 'Window', width: 1.25, height: 1.2, sill: 0.9, setBack: 0.1, leaf: 'glazed' },
  gate: { label: 'Gate', width: 1, height: 1.8, sill: 0, setBack: 0, leaf: 'closed' },
  archway: { label: 'Archway', width: 1, height: 2.1, sill: 0, setBack: 0.1, leaf: 'open' },
};

/** What may be cut into a wall of a building, and into a fence, a wall or a hedge. */
export const ON_WALL: readonly OpeningKind[] = ['door', 'window', 'archway'];
export const ON_LINE: readonly OpeningKind[] = ['gate', 'archway'];

export const labelOf = (kind: OpeningKind): string => FIRST[kind].label;

/** What stays above the head of an opening in a wall, m: common practice, no source. */
const HEADROOM = 0.1;

/** A new opening's sizes on a thing of a height, m: a gate and an archway in a line reach all the way up. */
export function firstOpening(
  kind: OpeningKind,
  host: { readonly height: number; readonly isLine: boolean },
): Omit<OpeningDraft, 'name' | 'face' | 'along'> {
  const { label: _, ...first } = FIRST[kind];
  const room = host.height - HEADROOM;
  // On a low wall a window keeps its share of it.
  const scale = host.isLine ? 1 : Math.min(1, room / (first.sill + first.height));
  const cm = (value: number): number => Math.floor(value * 100 + 1e-6) / 100;
  return {
    ...first,
    kind,
    height: host.isLine ? host.height : scale < 1 ? cm(first.height * scale) : first.height,
    sill: scale < 1 ? cm(first.sill * scale) : first.sill,
    passage: 'solid',
    got: 'guessed',
  };
}
