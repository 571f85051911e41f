import { add, type Vec3 } from '../../../base/vector.ts';
import type { LengthUnit } from '../../../base/length.ts';
import type { Mount } from '../../../optics/mount.ts';
import type { Editor } from '../../editor.ts';
import type { Ghost, Strip, StripField, ToolState } from '../chart.ts';
import { WALL_KINDS, type WallKind } from '../mount/mountAt.ts';
import { cornerNames } from '../mount/cornerNames.ts';
import { nudgeMount } from '../mount/nudge.ts';
import { mountWords } from '../mount/mountWords.ts';
import { resting } from '../rest/resting.ts';
import { aimingNew } from './aimingNew.ts';
import { candidateAt, candidateWith, faceCorners, placed, type Candidate } from './candidate.ts';
import { keyedSpot } from './keyedSpot.ts';

const START: Candidate = {
  fits: false,
  why: 'Point at a wall, or up under the eaves. Enter begins on the longest wall.',
};

/** The camera tool looks for a place: the ghost follows the pointer, a press fixes it there. */
export function seeking(editor: Editor, candidate: Candidate = START, kind: WallKind = 'flush'): ToolState {
  const { plan } = editor.store.getState();
  const fix = (from: Candidate): ToolState => {
    if (!from.fits) return seeking(editor, from, kind);
    return aimingNew(editor, from, () => seeking(editor));
  };
  const here: ToolState = {
    name: 'camera seeking',
    strip: stripOf(candidate, plan.settings.units),
    ghost: ghostOf(candidate),
    cursor: candidate.fits || candidate === START ? 'crosshair' : 'not-allowed',
    hover: (at) => seeking(editor, candidateAt(plan, at, kind), kind),
    takes: () => true,
    drag: (from, to) => {
      const next = fix(candidateAt(plan, from, kind));
      return next.name === 'camera seeking' ? next : (next.drag?.(from, to) ?? next);
    },
    // A drag that began where nothing fits ends with nothing.
    release: () => here,
    click: (at) => fix(candidateAt(plan, at, kind)),
    // Without a pointer the keys begin on a wall, move the spot along it and fix it.
    enter: () =>
      candidate.fits
        ? fix(candidate)
        : seeking(editor, keyedSpot(plan, editor.store.getState().selected, kind), kind),
    nudge: (way, large) => {
      const mount = candidate.fits ? nudgeMount(plan, candidate.mount, way, large) : null;
      return mount ? seeking(editor, placed(plan, mount, null), kind) : here;
    },
    escape: () => resting(editor),
    type: (key, value) =>
      candidate.fits ? seeking(editor, candidateWith(plan, candidate.mount, key, value), kind) : here,
    again: () => {
      const next = WALL_KINDS[(WALL_KINDS.indexOf(kind) + 1) % WALL_KINDS.length] ?? 'flush';
      return seeking(editor, START, next);
    },
  };
  return here;
}

const KIND_WORDS: Readonly<Record<Mount['kind'], string>> = {
  flush: 'flat on the wall',
  arm: 'on an arm',
  corner: 'on the corner',
  soffit: '',
  pole: '',
  loose: '',
};

function stripOf(candidate: Candidate, unit: LengthUnit): Strip {
  if (!candidate.fits) return { text: candidate.why, fields: [], trouble: candidate !== START };
  const { mount, face, snapped } = candidate;
  const fields: StripField[] = [];
  if ('height' in mount) fields.push({ key: 'height', label: 'Up', value: mount.height, measure: 'length' });
  if ('distance' in mount && face)
    fields.push({
      key: 'distance',
      label: `From the ${cornerNames(face)[mount.corner]} corner`,
      value: mount.distance,
      measure: 'length',
    });
  if (mount.kind === 'pole')
    fields.push({ key: 'diameter', label: 'Pole across', value: mount.diameter, measure: 'length' });
  const text = [KIND_WORDS[mount.kind], mountWords(mount, face, unit), snapped];
  return { text: text.filter(Boolean).join(' · '), fields, trouble: false };
}

function ghostOf(candidate: Candidate): Ghost | null {
  if (!candidate.fits) return null;
  const { eye, outward, face } = candidate;
  const level: Vec3 = outward && Math.hypot(outward[0], outward[1]) > 0.1 ? outward : [0, -1, 0];
  return { kind: 'camera', eye, towards: add(eye, level), face: face ? faceCorners(face) : [] };
}
