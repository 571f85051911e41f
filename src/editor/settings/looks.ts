import type { Vec2 } from '../../base/vector.ts';
import type { Looks } from '../../coverage/target.ts';
import type { Editor } from '../editor.ts';

/** Towards the street, on most plans: the way that who comes to a door faces is the other one, °. */
const FIRST_BEARING = 180;

/** Faces look another way, or anywhere; nothing where coverage is asked for something else than faces. */
export function lookTo(editor: Editor, looks: Looks | null): void {
  const { target } = editor.store.getState();
  if (target.kind !== 'face') return;
  const { kind, height } = target;
  editor.ask(looks === null ? { kind, height } : { kind, height, looks });
}

/** The place that faces look to; until there is one, the middle of the client's own ground, else of the first building. */
export function placeLookedTo(editor: Editor): Vec2 {
  const { target, plan } = editor.store.getState();
  if (target.kind === 'face' && target.looks?.kind === 'place') return target.looks.at;
  const building = plan.structureOrder
    .map((id) => plan.structures[id])
    .find((one) => one?.kind === 'building');
  const ring = plan.boundary ?? (building?.kind === 'building' ? building.outline : []);
  if (ring.length === 0) return [0, 0];
  const middle = (axis: 0 | 1): number => {
    const values = ring.map((corner) => corner[axis]);
    return Math.round((Math.min(...values) + Math.max(...values)) * 50) / 100;
  };
  return [middle(0), middle(1)];
}

/** Which way faces look by default once it is asked for. */
export const firstLooks = (editor: Editor, kind: Looks['kind']): Looks =>
  kind === 'bearing' ? { kind, bearing: FIRST_BEARING } : { kind, at: placeLookedTo(editor) };
