import type { Fault } from '../base/fault.ts';
import type { DataSheet, Device, PictureMode } from './device.ts';
import { angleOfView } from './lens.ts';
import { lawOf, pictureSensor, statedHeight, statedWidth } from './setting.ts';

/** A stated vertical angle may be rounded: so far off is still the same lens, °. */
const VERTICAL_WITHIN = 1;
/** How far the shape of a picture and that of its part of the sensor may differ, as a share. */
const SHAPE_WITHIN = 0.01;
/** A crop written with a few decimals is in the middle within this share of the sensor. */
const MIDDLE_WITHIN = 0.005;

/** What of a camera is held against itself. Exposures in ms. */
export interface Described {
  readonly device: Device;
  readonly sheet: DataSheet;
  readonly exposure: { readonly day: number; readonly night: number } | null;
}

/**
 * Where a data sheet contradicts itself, with what would be consistent. Paths begin at the described camera.
 * @param subject name of the camera or device
 */
export function sheetFaults({ device, sheet, exposure }: Described, subject: string): readonly Fault[] {
  const about = (code: string, path: readonly string[], given: string, allowed: string): Fault => ({
    code,
    path,
    given,
    allowed,
    subject,
  });
  const faults: Fault[] = [...lensFaults(device, about)];
  device.modes.forEach((mode) => faults.push(...modeFaults(device, mode, about)));
  if (sheet.imagesPerSecond !== null && exposure !== null) {
    const longest = 1000 / sheet.imagesPerSecond;
    for (const when of ['day', 'night'] as const)
      if (exposure[when] > longest * 1.001)
        faults.push(
          about(
            'sheet.exposure',
            ['exposure', when],
            `${short(exposure[when])} ms`,
            `${short(longest)} ms, or ${short(1000 / exposure[when])} pictures a second`,
          ),
        );
  }
  return faults;
}

type About = (code: string, path: readonly string[], given: string, allowed: string) => Fault;

function lensFaults(device: Device, about: About): readonly Fault[] {
  const { shortest, longest, statedHfov, statedVfov } = device.lens;
  const path = ['device', 'lens'];
  if (shortest > longest) {
    const given = `${short(shortest)} to ${short(longest)} mm`;
    return [about('sheet.reversed', path, given, `${short(longest)} to ${short(shortest)} mm`)];
  }
  const ends = longest > shortest ? (['atShortest', 'atLongest'] as const) : (['atShortest'] as const);
  if (statedHfov && ends.length === 2 && statedHfov.atLongest >= statedHfov.atShortest) {
    const given = `${short(statedHfov.atShortest)}° at ${short(shortest)} mm, ${short(statedHfov.atLongest)}° at ${short(longest)} mm`;
    const allowed = `${short(statedHfov.atLongest)}° at ${short(shortest)} mm, ${short(statedHfov.atShortest)}° at ${short(longest)} mm`;
    return [about('sheet.angles', [...path, 'statedHfov'], given, allowed)];
  }
  return ends.flatMap((end) => {
    const focal = end === 'atShortest' ? shortest : longest;
    const at = endLens(device, focal, end);
    const { k, faults } = lawOf(at, statedWidth(device), '');
    const nearest = faults[0]?.allowed;
    if (statedHfov && nearest !== undefined)
      return [
        about(
          'sheet.angle',
          [...path, 'statedHfov', end],
          `${short(statedHfov[end])}° at ${short(focal)} mm`,
          nearest,
        ),
      ];
    const follows = angleOfView(focal, k, statedHeight(device));
    if (!statedVfov || follows === null || Math.abs(follows - statedVfov[end]) <= VERTICAL_WITHIN) return [];
    return [
      about(
        'sheet.vertical',
        [...path, 'statedVfov', end],
        `${short(statedVfov[end])}° at ${short(focal)} mm`,
        `${follows.toFixed(1)}°`,
      ),
    ];
  });
}

/** The lens set to one end, as if it were a fixed one. */
function endLens({ lens }: Device, focal: number, end: 'atShortest' | 'atLongest'): Device['lens'] {
  const angle = lens.statedHfov?.[end];
  return {
    ...lens,
    shortest: focal,
    longest: focal,
    focalLength: focal,
    statedHfov: angle === undefined ? null : { atShortest: angle, atLongest: angle },
  };
}

function modeFaults(device: Device, mode: PictureMode, about: About): readonly Fault[] {
  const faults: Fault[] = [];
  const path = ['device', 'modes', mode.id];
  const { width, height } = pictureSensor(device, mode);
  const [pixels, area] = [mode.frame.width / mode.frame.height, width / height];
  if (Math.abs(pixels / area - 1) > SHAPE_WITHIN) {
    const given = `${mode.frame.width} × ${mode.frame.height} pixels on ${width.toFixed(2)} × ${height.toFixed(2)} mm`;
    const fitting =
      pixels > area
        ? `${width.toFixed(2)} × ${(width / pixels).toFixed(2)} mm`
        : `${(height * pixels).toFixed(2)} × ${height.toFixed(2)} mm`;
    faults.push({ ...about('sheet.shape', path, given, fitting), subject: mode.name });
  }
  const { crop } = mode;
  const off = Math.max(Math.abs(crop.x + crop.width / 2 - 0.5), Math.abs(crop.y + crop.height / 2 - 0.5));
  if (off > MIDDLE_WITHIN) {
    const given = `${(off * 100).toFixed(0)} %`;
    faults.push({ ...about('sheet.middle', path, given, 'the middle'), subject: mode.name });
  }
  return faults;
}

/** A number as a sheet prints it: at most two decimals, no zeros behind them. */
const short = (value: number): string => String(Math.round(value * 100) / 100);
