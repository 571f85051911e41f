import { surfaceKey, surfacesOf } from '../assess/surfaces.ts';
import type { Looks, Target } from '../coverage/target.ts';
import type { FlatSurface } from '../model/surface.ts';
import type { Solid } from '../model/solid.ts';
import type { Plan } from '../plan/plan.ts';
import { numberOf, numbersOf, type Typed } from './options.ts';
import { BadInput } from './terminal.ts';

const KINDS = ['ground', 'plate', 'face'] as const;

/** Options by which a command is told what coverage is asked for. */
export const TARGET_OPTIONS = ['target-height', 'target', 'surface', 'looks'] as const;

export const TARGET_HELP = `  --target-height H   metres above the ground; 0 without it
  --target face       face height, with its limits on the angle from above
  --looks 180         which way the face looks, as a bearing, or --looks X,Y for
                      the place that it looks to: then from the side counts too
  --surface KEY       a wall, a roof face or a patch, as soffit surfaces lists them`;

/**
 * What coverage is asked for: a surface of the plan; or the ground, the height typed, or the plate or face of the plan's
 * settings. A face carries its limits; a bare height does not.
 * @throws BadInput on a height that is no number, a surface that is not there, or two ways of asking at once
 */
export function targetOf(plan: Plan, solids: readonly Solid[], options: Typed): Target {
  const [height, kind, surface, looks] = TARGET_OPTIONS.map((name) => options.text(name));
  if ([height, kind, surface].filter((given) => given !== undefined).length > 1)
    throw new BadInput('Give one of --target-height, --target and --surface.');
  if (looks !== undefined && kind !== 'face')
    throw new BadInput('--looks says which way a face looks: give it with --target face.');
  if (surface !== undefined) return surfaceTarget(plan, solids, surface);
  if (height !== undefined) return { kind: 'height', height: numberOf(height, 'target-height', 0, 1000) };
  const known = KINDS.find((one) => one === (kind ?? 'ground'));
  if (!known)
    throw new BadInput(`--target is “${kind}”. Write ${KINDS.join(', ')}; or give --target-height.`);
  const { plateHeight, faceHeight } = plan.settings;
  if (known !== 'face') return { kind: known, height: known === 'plate' ? plateHeight : 0 };
  return looks === undefined
    ? { kind: known, height: faceHeight }
    : { kind: known, height: faceHeight, looks: looksOf(looks) };
}

function looksOf(text: string): Looks {
  if (!text.includes(',')) return { kind: 'bearing', bearing: numberOf(text, 'looks') };
  const [x = 0, y = 0] = numbersOf(text, 'looks', /,/, 'X,Y');
  return { kind: 'place', at: [x, y] };
}

/** A surface as it is typed: "house/wall/2", "house/roof/0", or the id of a patch. */
export const surfaceText = ({ of, owner, face }: FlatSurface): string =>
  of === 'patch' ? owner : `${owner}/${of}/${face}`;

function surfaceTarget(plan: Plan, solids: readonly Solid[], typed: string): Target {
  const all = surfacesOf(plan, solids);
  const found = all.find((one) => surfaceText(one) === typed);
  if (found) return { kind: 'surface', height: 0, surface: surfaceKey(found) };
  const first = all.slice(0, 5).map(surfaceText).join(', ');
  throw new BadInput(
    `The plan has no surface “${typed}”. It has ${first === '' ? 'none' : first}${all.length > 5 ? ' and more' : ''}; soffit surfaces lists them.`,
  );
}
