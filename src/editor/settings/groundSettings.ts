import type { Ground } from '../../model/ground.ts';
import { setGround } from '../../plan/commands/setGround.ts';
import { setSpots } from '../../plan/commands/setSpots.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Editor } from '../editor.ts';
import { tryStep } from './changeSetting.ts';
import type { Setting } from './setting.ts';

/** The heights of the ground that can be typed: the one of flat ground, or each spot height; none of a grid. */
export function groundSettings(ground: Ground): readonly Setting[] {
  if (ground.kind === 'grid') return [];
  if (ground.kind === 'flat')
    return [
      {
        key: 'height',
        label: 'Height above z = 0',
        measure: 'length',
        bounds: LIMITS.level,
        value: ground.height,
        change: (plan, height) => setGround(plan, { kind: 'flat', height }),
      },
    ];
  return ground.spots.map((spot, index) => ({
    key: `spot ${index}`,
    label: `Spot ${index + 1}, at ${spot.at[0].toFixed(2)}, ${spot.at[1].toFixed(2)}`,
    measure: 'length',
    bounds: LIMITS.level,
    value: spot.height,
    change: (plan, height) =>
      setSpots(
        plan,
        ground.spots.map((other, k) => (k === index ? { ...other, height, got: 'measured' } : other)),
      ),
  }));
}

/** Takes a spot height away. */
export const removeSpot = (editor: Editor, index: number): void =>
  tryStep(editor, `Take spot height ${index + 1} away`, (plan) =>
    plan.ground.kind === 'spots'
      ? setSpots(
          plan,
          plan.ground.spots.filter((_, k) => k !== index),
        )
      : plan,
  );
