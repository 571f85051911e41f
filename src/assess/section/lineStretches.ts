import type { Plane } from '../../base/plane.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Night } from '../../coverage/light.ts';
import { pointState } from '../../coverage/point.ts';
import type { BandRule } from '../../coverage/rule.ts';
import { COVERED, STATES, TOO_COARSE } from '../../coverage/state.ts';
import type { Camera } from '../../optics/camera.ts';
import { PixelField } from '../../optics/pixelField.ts';
import type { Segments } from '../../sight/segment.ts';
import { breakpoints, solidsAround } from './breakpoints.ts';
import type { CutSolid, Stretch } from './section.ts';
import type { FrameEdges } from '../../optics/frameEdges.ts';
import { siteFromSection } from './sectionPlane.ts';
import { constantBetween } from './stepChanges.ts';

/** By what the targets of a line are judged. */
export interface LineJudge {
  readonly camera: Camera;
  readonly plane: Plane;
  readonly cuts: readonly CutSolid[];
  readonly frame: FrameEdges;
  readonly segments: Segments;
  readonly lensInside: number | null;
  readonly night: Night | null;
  /** Sine of the angle to its sheet below which a screen closes up. */
  readonly closing: number;
  readonly rule: BandRule;
}

/** Samples along a line for what has no corner: bands and light. */
const STEPS = 500;
/** Of a stretch without a corner: no solid is entered or left there, only the nearest can change. */
const FEW = 3;

/** Above all numbers of a band, a loss or a state. */
const RADIX = 64;

/** The stretches of targets along a line of straight parts, from left to right. */
export function lineStretches(line: readonly Vec2[], judge: LineJudge): Stretch[] {
  const { camera, plane, rule } = judge;
  const lens = camera.eye[2] - plane.origin[2];
  const field = new PixelField(camera);
  const step = ((line.at(-1)?.[0] ?? 0) - (line[0]?.[0] ?? 0)) / STEPS;
  const found: Stretch[] = [];
  line.slice(1).forEach((right, k) => {
    const left = line[k] ?? right;
    if (!(right[0] > left[0])) return;
    const slope = (right[1] - left[1]) / (right[0] - left[0]);
    const place = (t: number): Vec2 => [t, left[1] + slope * (t - left[0])];
    const sight = (t: number): number => sightAt(judge, place(t));
    const band = (t: number): number => {
      const [dx, dy] = [t * plane.u[0], t * plane.u[1]];
      const rise = lens - place(t)[1];
      field.at(dx, dy, -rise);
      const reached = rule.band(field.density, dx, dy, rise);
      return reached * RADIX + rule.lost;
    };
    const changes = breakpoints(left, right, lens, judge.cuts, judge.frame, judge.closing);
    for (let at = 1; at < changes.length; at += 1) {
      const [from, to] = [changes[at - 1] ?? 0, changes[at] ?? 0];
      if (solidsAround(judge.cuts, place((from + to) / 2))) {
        put(found, { ...NOTHING, from, to, state: 'inside' });
        continue;
      }
      const fine = judge.night !== null ? step : (to - from) / FEW;
      for (const one of constantBetween(sight, from, to, fine)) {
        const [code, hider] = [one.value % RADIX, Math.floor(one.value / RADIX) - 1];
        const state = STATES[code] ?? 'out of frame';
        if (code !== COVERED)
          put(found, { ...NOTHING, from: one.from, to: one.to, state, hider: hider < 0 ? null : hider });
        else
          for (const { from: start, to: end, value } of constantBetween(band, one.from, one.to, step)) {
            const reached = Math.floor(value / RADIX);
            const seen = STATES[reached > 0 ? COVERED : TOO_COARSE] ?? 'covered';
            put(found, {
              from: start,
              to: end,
              state: seen,
              band: reached,
              hider: null,
              lost: value % RADIX,
            });
          }
      }
    }
  });
  return found;
}

const NOTHING = { band: 0, hider: null, lost: 0 };

/** State and hider of a target that lies in no solid, as one number; seen at any density is COVERED. */
function sightAt({ camera, plane, segments, rule, lensInside, night }: LineJudge, place: Vec2): number {
  const told = pointState(
    camera,
    siteFromSection(plane, place),
    [],
    segments,
    rule,
    lensInside,
    undefined,
    night,
  );
  const state = STATES.indexOf(told.state);
  return (state === TOO_COARSE ? COVERED : state) + RADIX * ((told.hider ?? -1) + 1);
}

/** Adds a stretch, to the last one where that is of the same. */
function put(found: Stretch[], next: Stretch): void {
  const last = found.at(-1);
  if (last && isSame(last, next)) found[found.length - 1] = { ...last, to: next.to };
  else found.push(next);
}

const isSame = (one: Stretch, two: Stretch): boolean =>
  one.state === two.state && one.band === two.band && one.hider === two.hider && one.lost === two.lost;
