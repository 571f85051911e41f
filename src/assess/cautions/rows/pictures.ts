import type { Vec3 } from '../../../base/vector.ts';
import { imageFromSite } from '../../../optics/projection.ts';
import type { PictureMode } from '../../../optics/device.ts';
import { cautionId, placeOfCamera, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import type { FiguresOf } from '../figures.ts';

const recordedOf = ({ set }: About): PictureMode | undefined =>
  set.device.modes.find(({ id }) => id === set.device.recorded);

/** Row 9: the angle that the sheet states is of another picture than the recorded one, which may leave part of the sensor out. */
export function angleOfOther(about: About): readonly Found[] {
  const mode = recordedOf(about);
  if (mode === undefined) return [];
  const why = whyOther(about, mode);
  if (why === null) return [];
  return [
    {
      id: cautionId(9),
      severity: 'tight',
      weight: 1,
      figures: { row: 9, mode: mode.name, why, lost: about.limit('mode.lost') },
      places: [placeOfCamera(about, about.camera.eye)],
      thresholds: why === 'shape' ? ['mode.shape', 'mode.lost'] : ['mode.lost'],
    },
  ];
}

function whyOther(about: About, mode: PictureMode): FiguresOf<9>['why'] | null {
  const { sensor, lens, modes } = about.set.device;
  if (mode.use === 'rotated' || mode.use === 'stabilised') return mode.cropKnown ? null : mode.use;
  if (lens.statedHfov === null && lens.statedVfov === null) return null;
  const stated = modes.find(({ id }) => id === lens.statedIn);
  if (lens.statedIn !== null && lens.statedIn !== mode.id)
    return mode.cropKnown && stated?.cropKnown === true ? null : 'other';
  const part = (sensor.width * mode.crop.width) / (sensor.height * mode.crop.height);
  const shape = mode.frame.width / mode.frame.height;
  if (Math.abs(shape / part - 1) > about.limit('mode.shape')) return 'shape';
  return mode.cropKnown ? null : 'crop';
}

/** Pixels across a metre in one picture for one in another. */
const finer = (one: PictureMode, two: PictureMode): number =>
  one.frame.width / one.crop.width / (two.frame.width / two.crop.width);

/** Row 10: a lesser stream than what is asked for needs is recorded, or watched live. */
export function lesserStream(about: About): readonly Found[] {
  const recorded = recordedOf(about);
  if (recorded === undefined) return [];
  const { bands } = about.edition;
  const nameOf = (density: number) => bands.findLast((band) => density >= band.density)?.name ?? null;
  return about.asked.flatMap(({ requirement, density: wanted, seen }): Found[] => {
    const [best] = [...seen].sort((one, two) => (two.state.density ?? 0) - (one.state.density ?? 0));
    const density = best?.state.density ?? null;
    if (best === undefined || density === null) return [];
    const asked = bands.find(({ key }) => key === requirement.band)?.name ?? requirement.band;
    const found = (mode: PictureMode, isRecorded: boolean): Found => {
      const here = density * finer(mode, recorded);
      return {
        id: cautionId(10, mode.id, requirement.id),
        severity: isRecorded ? 'fails' : 'tell',
        weight: wanted / here,
        figures: {
          row: 10,
          requirement: requirement.name,
          mode: mode.name,
          density: here,
          band: nameOf(here),
          wanted: asked,
          recorded: isRecorded,
        },
        places: [{ at: best.at, thing: null }],
        thresholds: [],
      };
    };
    const { modes } = about.set.device;
    if (density < wanted)
      return modes.some((mode) => density * finer(mode, recorded) >= wanted) ? [found(recorded, true)] : [];
    return modes
      .filter((mode) => mode.use === 'live' && density * finer(mode, recorded) < wanted)
      .map((mode) => found(mode, false));
  });
}

/** Row 11: what is asked is tall and narrow in the picture. */
export function upright(about: About): readonly Found[] {
  const { camera } = about;
  const most = about.limit('upright.ratio');
  if (Math.abs(camera.roll) > 1e-9) return [];
  const { width, height } = camera.frame;
  return about.asked.flatMap(({ requirement, spots, served }): Found[] => {
    const [first] = served;
    if (requirement.shape === 'point' || first === undefined) return [];
    // Of an area its corners bound the picture of it, of a line the spots along it.
    const corners = requirement.at.map((place): Vec3 => [
      place[0],
      place[1],
      about.groundAt(place) + requirement.targetHeight,
    ]);
    const places = requirement.shape === 'area' ? corners : spots.map(({ at }) => at);
    const images = places.flatMap((at) => imageFromSite(camera, at) ?? []);
    if (images.length < places.length) return [];
    const [us, vs] = [images.map(({ u }) => u), images.map(({ v }) => v)];
    const clip = (low: number, value: number, high: number) => Math.min(high, Math.max(low, value));
    const wide = clip(0, Math.max(...us), width) - clip(0, Math.min(...us), width);
    const tall = clip(0, Math.max(...vs), height) - clip(0, Math.min(...vs), height);
    if (!(wide > 0) || !(tall / wide > most)) return [];
    // The share of a picture that just holds the box, before and after it is turned on its side.
    const share = (w: number, h: number) => (wide * tall) / (w * h * Math.max(wide / w, tall / h) ** 2);
    return [
      {
        id: cautionId(11, requirement.id),
        severity: 'tell',
        weight: tall / wide / most,
        figures: {
          row: 11,
          requirement: requirement.name,
          ratio: tall / wide,
          more: share(height, width) - share(width, height),
        },
        places: [{ at: first.at, thing: null }],
        thresholds: ['upright.ratio'],
      },
    ];
  });
}
