import type { Vec3 } from '../../base/vector.ts';
import { windOf } from '../../model/wind.ts';
import type { Opening, Structure } from '../../model/structure.ts';
import { setOpening } from '../../plan/commands/setOpening.ts';
import { LIMITS, type Limit } from '../../plan/limits.ts';
import { openingPlace } from '../grips/openingGrips.ts';
import { endWord } from '../tools/mount/cornerNames.ts';
import { dimension, type Dimension } from './dimension.ts';

const FROM_CORNER: Limit = { least: 0, most: LIMITS.size.most };

/** An opening's distance to both ends of its wall, its width, height, sill and how far it is set back. */
export function openingDimensions(host: Structure, opening: Opening): readonly Dimension[] {
  const place = openingPlace(host, opening);
  if (!place) return [];
  const { face, from, asDrawn, base } = place;
  const { along, width, height, sill, setBack } = opening;
  const foot = base + sill;
  const at = (s: number, z: number): Vec3 => [
    face.start[0] + face.along[0] * s,
    face.start[1] + face.along[1] * s,
    z,
  ];
  const make = (
    key: string,
    label: string,
    value: number,
    bounds: Limit,
    between: readonly [Vec3, Vec3],
    change: (value: number) => Partial<Opening>,
  ): Dimension =>
    dimension({
      key,
      label,
      measure: 'length',
      value,
      bounds,
      between,
      change: (next) => (plan) => setOpening(plan, host.id, opening.id, change(next), 'measured'),
    });
  // As drawn, the first corner is where `along` counts from; the far end takes what is left of the wall.
  const [near, far] = asDrawn ? [from, from + width] : [from + width, from];
  const [start, end] = asDrawn ? [0, face.width] : [face.width, 0];
  const rest = face.width - along - width;
  const [x, y] = face.along;
  const towardsEnd = asDrawn ? windOf([x, y]) : windOf([0 - x, 0 - y]);
  const towardsStart = asDrawn ? windOf([0 - x, 0 - y]) : windOf([x, y]);
  const half = foot + height / 2;
  const corner = (wind: string): string => `From the ${wind} ${endWord(host)}`;
  return [
    make('along', corner(towardsStart), along, FROM_CORNER, [at(start, half), at(near, half)], (next) => ({
      along: next,
    })),
    make('rest', corner(towardsEnd), rest, FROM_CORNER, [at(end, half), at(far, half)], (next) => ({
      along: along + rest - next,
    })),
    make('width', 'Width', width, LIMITS.size, [at(near, foot), at(far, foot)], (next) => ({ width: next })),
    make('height', 'Height', height, LIMITS.height, [at(far, foot), at(far, foot + height)], (next) => ({
      height: next,
    })),
    make(
      'sill',
      'Sill',
      sill,
      { least: 0, most: LIMITS.height.most },
      [at(near, base), at(near, foot)],
      (next) => ({
        sill: next,
      }),
    ),
    make(
      'setBack',
      'Set back',
      setBack,
      LIMITS.setBack,
      [at(near, foot), set(at(near, foot), face.outward, setBack)],
      (next) => ({ setBack: next }),
    ),
  ];
}

const set = ([x, y, z]: Vec3, [ox, oy]: Vec3, back: number): Vec3 => [x - ox * back, y - oy * back, z];
