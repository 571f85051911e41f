import { cos, degreesFromRad, sin, turn } from '../../../base/angle.ts';
import { dot, type Vec3 } from '../../../base/vector.ts';
import { litAt } from '../../../coverage/point.ts';
import type { Night } from '../../../coverage/light.ts';
import { axesOf, inFrame } from '../../../optics/projection.ts';
import { cautionId, placeOfCamera, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import { gap } from '../closest.ts';
import { shareOf, wayTo } from '../pictureRays.ts';

const UP: Vec3 = [0, 0, 1];

/** Headlamps stand so high, m. Common practice, no source. */
const HEADLAMP = 0.7;

const isFree = ({ obstacles, camera }: About, to: Vec3): boolean =>
  obstacles.segments.firstHit(camera.eye, to, 'solid') === null;

/** Row 19: lamps in the picture, and vehicles that stand with their headlamps towards the lens. */
export function dazzled(about: About): readonly Found[] {
  const { plan, camera, dark, scene, groundAt } = about;
  if (!dark) return [];
  const far = about.limit('lamp.far');
  const lamps = plan.lampOrder.flatMap((id): Found[] => {
    const lamp = plan.lamps[id];
    if (lamp === undefined) return [];
    const at: Vec3 = [lamp.at[0], lamp.at[1], groundAt(lamp.at) + lamp.height];
    const distance = gap(camera.eye, at);
    if (distance >= far || !inFrame(camera, at) || !isFree(about, at)) return [];
    return [
      {
        id: cautionId(19, id),
        severity: 'tell',
        weight: far / Math.max(1, distance),
        figures: { row: 19, what: 'lamp', thing: lamp.name, distance },
        places: [{ at, thing: { kind: 'lamp', id } }],
        thresholds: ['lamp.far'],
      },
    ];
  });
  const within = about.limit('lamp.angle');
  const standing = new Set(scene.solids.map(({ structure }) => structure));
  const vehicles = Object.values(plan.structures).flatMap((one): Found[] => {
    if (one.kind !== 'vehicle' || !standing.has(one.id)) return [];
    if (Math.abs(turn(one.heading + 180, camera.pan)) >= within) return [];
    // A hand's breadth before its front, so that it does not hide its own lamps.
    const reach = one.length / 2 + 0.1;
    const at: Vec3 = [
      one.at[0] + reach * sin(one.heading),
      one.at[1] + reach * cos(one.heading),
      one.base + HEADLAMP,
    ];
    if (!inFrame(camera, at) || !isFree(about, at)) return [];
    return [
      {
        id: cautionId(19, one.id),
        severity: 'tell',
        weight: 1,
        figures: { row: 19, what: 'vehicle', thing: one.name, distance: gap(camera.eye, at) },
        places: [{ at, thing: { kind: 'structure', id: one.id } }],
        thresholds: ['lamp.angle'],
      },
    ];
  });
  return [...lamps, ...vehicles];
}

/** Row 20: what must be seen at night lies beyond what the camera's own infrared is sure of, or beside its beam. */
export function infraredShort(about: About): readonly Found[] {
  const { set, camera, dark, asked, scene, obstacles, settings } = about;
  const own = set.infrared;
  if (!dark || own === null) return [];
  const lamps: Night | null = scene.night && {
    ...scene.night,
    infrared: new Map(),
    leastLux: settings.leastLux,
  };
  const { forward } = axesOf(camera);
  const short = asked.flatMap(({ requirement, density, served }): Found[] => {
    const share = about.limit(density >= 125 ? 'infrared.fine' : 'infrared.coarse');
    const sure = share * own.range;
    const places = served.map((spot) => {
      const distance = gap(camera.eye, spot.at);
      const off = degreesFromRad(
        Math.acos(Math.min(1, Math.max(-1, dot(wayTo(camera.eye, spot.at), forward)))),
      );
      const isLit = lamps !== null && litAt(camera, spot.at, UP, lamps, obstacles.segments);
      return { spot, distance, beside: off > own.beam / 2, isLit };
    });
    if (
      places.length === 0 ||
      places.some(({ isLit, beside, distance }) => isLit || (!beside && distance <= sure))
    )
      return [];
    const best = places.reduce((one, two) =>
      Number(two.beside) < Number(one.beside) || (two.beside === one.beside && two.distance < one.distance)
        ? two
        : one,
    );
    const { distance, beside, spot } = best;
    return [
      {
        id: cautionId(20, requirement.id),
        severity: beside || distance > own.range ? 'fails' : 'tight',
        weight: distance / sure,
        figures: { row: 20, requirement: requirement.name, distance, range: own.range, sure, beside },
        places: [{ at: spot.at, thing: null }],
        thresholds: [density >= 125 ? 'infrared.fine' : 'infrared.coarse'],
      },
    ];
  });
  return [...short, ...beamNarrow(about, own.beam)];
}

/** And where the picture is wider than the beam. */
function beamNarrow(about: About, beam: number): readonly Found[] {
  const { camera, picture } = about;
  const { forward } = axesOf(camera);
  const least = cos(Math.min(180, beam / 2));
  const share = shareOf(picture, ({ way }) => dot(way, forward) < least);
  const most = about.limit('infrared.beside');
  if (share <= most) return [];
  return [
    {
      id: cautionId(20, 'beam'),
      severity: 'tell',
      weight: share / Math.max(0.01, most),
      figures: { row: '20.beam', beam, share },
      places: [placeOfCamera(about, camera.eye)],
      thresholds: ['infrared.beside'],
    },
  ];
}
