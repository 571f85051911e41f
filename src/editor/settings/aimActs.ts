import type { Fault } from '../../base/fault.ts';
import { isCorridor, setCorridor } from '../../plan/commands/setModes.ts';
import { turnCamera } from '../../plan/commands/aimWithin.ts';
import { heldAim, straightOut } from '../../plan/heldAim.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Editor } from '../editor.ts';
import { tryStep } from './changeSetting.ts';

/** The bearing straight out of what carries a camera, °; null where nothing does. */
export const straightOf = (plan: Plan, { mount }: PlanCamera): number | null => straightOut(plan, mount);

/** Where a camera looks past what its mount lets it turn to, as after another mount. */
export const aimTrouble = (plan: Plan, camera: PlanCamera): readonly Fault[] =>
  heldAim(plan, camera, camera).stops;

/** Pan straight out of the wall. */
export const lookStraightOut = (editor: Editor, { id, name }: PlanCamera, straight: number): void =>
  tryStep(editor, `Straight out with ${name}`, (plan) => turnCamera(plan, id, { pan: straight }));

/** The axis level, and the picture not turned, but for the corridor format. */
export const lookLevel = (editor: Editor, { id, name, device, roll }: PlanCamera): void =>
  tryStep(editor, `Level ${name}`, (plan) =>
    turnCamera(plan, id, { tilt: 0, roll: isCorridor(device) ? (roll < 0 ? -90 : 90) : 0 }),
  );

/** Whether a camera records in the corridor format. */
export const inCorridor = ({ device }: PlanCamera): boolean => isCorridor(device);

/** Turns a camera on its side and its picture upright, or back. */
export const switchCorridor = (editor: Editor, camera: PlanCamera): void =>
  tryStep(editor, `Corridor format of ${camera.name}`, (plan) =>
    setCorridor(plan, camera.id, !isCorridor(camera.device)),
  );
