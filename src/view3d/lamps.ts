import type { Scene } from '../assess/scene.ts';
import type { Plan } from '../plan/plan.ts';
import type { LampShown } from './labels/LampSigns.ts';

const made = new WeakMap<
  Plan['lamps'],
  { readonly scene: Scene; readonly order: Plan['lampOrder']; readonly shown: readonly LampShown[] }
>();

/**
 * The lamps of a plan as they are drawn: where the scene has them, else over the datum. The same list while nothing about
 * them changed.
 */
export function lampsOf({ lamps, lampOrder }: Plan, scene: Scene): readonly LampShown[] {
  const kept = made.get(lamps);
  if (kept?.scene === scene && kept.order === lampOrder) return kept.shown;
  const shown = lampOrder.flatMap((id): LampShown[] => {
    const lamp = lamps[id];
    if (!lamp) return [];
    const { name, at, height, light } = lamp;
    const [x, y] = at;
    const known = scene.night?.lamps.find((one) => one.id === id && one.eye[0] === x && one.eye[1] === y);
    const ground = known ? known.eye[2] - height : scene.ground;
    const reach = light.kind === 'range' ? Math.sqrt(Math.max(0, light.range ** 2 - height ** 2)) : null;
    return [{ id, name, eye: [x, y, ground + height], foot: [x, y, ground], reach }];
  });
  made.set(lamps, { scene, order: lampOrder, shown });
  return shown;
}

const STEPS = 96;

/** Circles on the ground to which lamps light it, as segments relative to the origin: six numbers each. */
export const reachCircles = (
  lamps: readonly LampShown[],
  [ox, oy, oz]: readonly [number, number, number],
): number[] =>
  lamps.flatMap(({ foot: [x, y, z], reach }) => {
    if (reach === null || reach === 0) return [];
    const at = (k: number): number[] => {
      const turn = (2 * Math.PI * k) / STEPS;
      return [x - ox + reach * Math.cos(turn), y - oy + reach * Math.sin(turn), z - oz];
    };
    return Array.from({ length: STEPS }, (_, k) => [...at(k), ...at(k + 1)]).flat();
  });
