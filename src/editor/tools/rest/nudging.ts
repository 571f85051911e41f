import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import { moveThings } from '../../../plan/commands/moveThings.ts';
import { setLamp } from '../../../plan/commands/setLamp.ts';
import { setMount } from '../../../plan/commands/setMount.ts';
import { setOpening } from '../../../plan/commands/setOpening.ts';
import type { Lamp, PlanCamera } from '../../../plan/plan.ts';
import { faultText } from '../../../plan/faultText.ts';
import type { Editor, Selected } from '../../editor.ts';
import { openingPlace } from '../../grips/openingGrips.ts';
import { attempt, type Change } from '../../shaping/attempt.ts';
import { cornersSelected, thingsOf, wordsFor } from '../../shaping/selection.ts';
import { words, type Compass, type Nudge, type Strip } from '../chart.ts';
import { ahead, EAST_NORTH, fourOf } from '../drawing/axes.ts';
import { lampWords, nudged } from '../lamp/lampSpot.ts';
import { faceOf } from '../mount/faceOf.ts';
import { lengthWords, mountWords } from '../mount/mountWords.ts';
import { nudgeMount } from '../mount/nudge.ts';
import { placeWords } from '../placeWords.ts';

const STEP = 0.01;
const LARGE = 0.1;

/** Moves what is selected by an arrow key and says where it is now; null where there is nothing to move. */
export function nudge(
  editor: Editor,
  selection: readonly Selected[],
  way: Nudge,
  large: boolean,
  compass: Compass,
): Strip | null {
  const { plan } = editor.store.getState();
  const [only] = selection;
  if (only && selection.length === 1) {
    const lamp = only.kind === 'lamp' ? plan.lamps[only.id] : undefined;
    if (lamp) return nudgeLamp(editor, lamp, way, large);
    const camera = only.kind === 'camera' ? plan.cameras[only.id] : undefined;
    if (camera) return nudgeCamera(editor, camera, way, large);
    if (only.kind === 'opening') return nudgeOpening(editor, only, way, large);
  }
  const things = thingsOf(plan, selection);
  if (things.length === 0) return null;
  const size = large ? LARGE : STEP;
  const [east, north] = ahead(compass(way, fourOf(EAST_NORTH)));
  const by: Vec2 = [east * size, north * size];
  const name = wordsFor(plan, selection);
  const tried = run(editor, `Move ${name}`, (now) => moveThings(now, things, by), `move ${keyOf(selection)}`);
  if (tried !== null) return words(tried, true);
  const [corner] = cornersSelected(editor.store.getState().plan, selection);
  return corner ? words(placeWords(corner, plan.settings.units)) : null;
}

/** Tries a change and makes it a step; answers why it cannot be. */
function run(editor: Editor, name: string, change: Change, merge: string): string | null {
  const tried = attempt(editor.store.getState().plan, change);
  if (!tried.ok) return tried.words;
  editor.run(name, () => tried.plan, merge);
  return null;
}

const keyOf = (selection: readonly Selected[]): string =>
  selection.map((thing) => ('id' in thing ? thing.id : thing.kind)).join(' ');

function nudgeLamp(editor: Editor, lamp: Lamp, way: Nudge, large: boolean): Strip {
  const spot = nudged(lamp, way, large);
  editor.run(`Move ${lamp.name}`, (plan) => setLamp(plan, lamp.id, spot), `move ${lamp.id}`);
  return words(lampWords(spot, editor.store.getState().plan.settings.units));
}

function nudgeCamera(editor: Editor, camera: PlanCamera, way: Nudge, large: boolean): Strip {
  const { plan } = editor.store.getState();
  const mount = nudgeMount(plan, camera.mount, way, large);
  const placed = placeMount(mount, plan.structures, groundHeight(plan.ground));
  if (!placed.ok) return words(placed.faults.map(faultText).join(' '), true);
  editor.run(`Slide ${camera.name}`, (now) => setMount(now, camera.id, mount), `slide ${camera.id}`);
  const { plan: next } = editor.store.getState();
  const moved = next.cameras[camera.id]?.mount ?? camera.mount;
  return words(mountWords(moved, faceOf(next, moved), next.settings.units));
}

/** Right and left as seen from outside, up and down for a window's sill. */
function nudgeOpening(
  editor: Editor,
  { id, on }: { readonly id: string; readonly on: string },
  way: Nudge,
  large: boolean,
): Strip | null {
  const { plan } = editor.store.getState();
  const host = plan.structures[on];
  const opening = host && 'openings' in host ? host.openings.find((one) => one.id === id) : undefined;
  const place = host && opening ? openingPlace(host, opening) : null;
  if (!opening || !place) return null;
  const { along, outward } = place.face;
  const runsRight = along[1] * outward[0] - along[0] * outward[1] > 0 === place.asDrawn;
  const size = large ? LARGE : STEP;
  const right = way === 'right' ? size : way === 'left' ? -size : 0;
  const up = way === 'up' ? size : way === 'down' ? -size : 0;
  if (up !== 0 && opening.kind !== 'window')
    return words('It stands on the floor. Type a sill to lift it.', true);
  const change = {
    along: rounded(opening.along + (runsRight ? right : -right)),
    sill: rounded(opening.sill + up),
  };
  const trouble = run(
    editor,
    `Slide ${opening.name}`,
    (now) => setOpening(now, on, id, change),
    `slide ${id}`,
  );
  if (trouble !== null) return words(trouble, true);
  const say = (metres: number): string => lengthWords(metres, plan.settings.units);
  return words(`${say(change.along)} along · sill ${say(change.sill)}`);
}

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;
