import type { PlanSettings } from '../../plan/plan.ts';

/** A limit that a caution goes by: its default, what it may be, and what it is a number of. */
export interface Threshold {
  readonly row: number;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly unit:
    | 'm'
    | 'angle'
    | 'share'
    | 'count'
    | 'px'
    | 'mm'
    | 'W'
    | 'min'
    | 'speed'
    | 'ms'
    | 'factor'
    | 'year'
    | 'area';
}

const of = (
  row: number,
  value: number,
  unit: Threshold['unit'],
  [least, most]: readonly [number, number],
): Threshold => ({ row, value, unit, least, most });

const ANGLE = [0, 90] as const;
const SHARE = [0, 1] as const;
const NEAR = [0, 10] as const;

/** All of them by id. Common practice, no source, but where `draw/cautions/status.ts` names one. */
export const THRESHOLDS = {
  'side.tell': of(1, 30, 'angle', [0, 180]),
  'above.tell': of(2, 15, 'angle', ANGLE),
  'plate.pixels': of(3, 15, 'px', [1, 200]),
  'plate.angle': of(3, 30, 'angle', ANGLE),
  'smear.identify.tell': of(5, 8, 'mm', [0, 1000]),
  'smear.identify.fails': of(5, 20, 'mm', [0, 1000]),
  'smear.recognise.tell': of(5, 16, 'mm', [0, 1000]),
  'smear.recognise.fails': of(5, 40, 'mm', [0, 1000]),
  'smear.plate.fails': of(5, 5, 'mm', [0, 1000]),
  'smear.plate.speed': of(5, 2.8, 'speed', [0.1, 50]),
  'smear.night.exposure': of(5, 40, 'ms', [0.01, 1000]),
  'pictures.walking': of(6, 5, 'count', [0, 1000]),
  'pictures.running': of(6, 3, 'count', [0, 1000]),
  'pictures.runningSpeed': of(6, 4, 'speed', [0.1, 15]),
  'focus.circle': of(7, 0.003, 'mm', [0.0005, 0.1]),
  'range.end': of(8, 0.05, 'share', SHARE),
  'mode.shape': of(9, 0.01, 'share', SHARE),
  'mode.lost': of(9, 0.1, 'share', SHARE),
  'upright.ratio': of(11, 1.3, 'factor', [1, 20]),
  'glare.near': of(12, 0.3, 'm', NEAR),
  'glare.far': of(12, 1, 'm', NEAR),
  'glare.tell': of(12, 0.01, 'share', SHARE),
  'glare.tight': of(12, 0.05, 'share', SHARE),
  'ownWall.angle': of(13, 5, 'angle', ANGLE),
  'dome.cone': of(14, 45, 'angle', ANGLE),
  'spiders.cover': of(15, 1, 'm', NEAR),
  'spiders.leaves': of(15, 2, 'm', NEAR),
  'sun.outside': of(16, 10, 'angle', ANGLE),
  'sun.minutes': of(16, 30, 'min', [0, 1440]),
  'sky.tell': of(17, 0.15, 'share', SHARE),
  'sky.tight': of(17, 0.3, 'share', SHARE),
  'backlight.share': of(18, 0.05, 'share', SHARE),
  'lamp.far': of(19, 30, 'm', [0, 1000]),
  'lamp.angle': of(19, 20, 'angle', [0, 180]),
  'infrared.fine': of(20, 0.5, 'share', SHARE),
  'infrared.coarse': of(20, 0.7, 'share', SHARE),
  'infrared.beside': of(20, 0.05, 'share', SHARE),
  'clear.solid': of(23, 0.15, 'm', NEAR),
  'clear.leaves': of(23, 0.3, 'm', NEAR),
  'growth.hedge': of(24, 0.3, 'm', NEAR),
  'growth.tree': of(24, 0.5, 'm', NEAR),
  'growth.years': of(24, 3, 'year', [1, 50]),
  'growth.area': of(24, 1, 'area', [0, 1000]),
  'leaves.far': of(25, 10, 'm', [0, 1000]),
  'leaves.share': of(25, 0.1, 'share', SHARE),
  'parking.door': of(26, 2.1, 'm', NEAR),
  'parking.length': of(26, 5.5, 'm', [1, 20]),
  'closing.share': of(27, 0.01, 'share', SHARE),
  'reach.height': of(29, 2.5, 'm', NEAR),
  'reach.sideways': of(29, 1, 'm', NEAR),
  'hole.above': of(30, 0.3, 'm', NEAR),
  'hole.beside': of(30, 0.15, 'm', NEAR),
  'hole.edge': of(30, 0.1, 'm', NEAR),
  'services.band': of(32, 0.15, 'm', NEAR),
  'services.meter': of(32, 0.5, 'm', NEAR),
  'boards.year': of(33, 2000, 'year', [1800, 2100]),
  'ladder.from': of(34, 2, 'm', NEAR),
  'ladder.high': of(34, 5, 'm', [0, 100]),
  'ladder.slope': of(34, 3, 'angle', ANGLE),
  'sway.pole': of(35, 3, 'm', [0, 100]),
  'sway.arm': of(35, 0.5, 'm', NEAR),
  'sway.angle': of(35, 30, 'angle', [0, 180]),
  'flue.near': of(36, 1, 'm', NEAR),
  'cable.plug': of(37, 0.02, 'm', [0, 1]),
  'cable.fall': of(37, 5, 'angle', [0, 45]),
  'power.budget': of(39, 0, 'W', [0, 10_000]),
  'power.spare': of(39, 0.2, 'share', SHARE),
  'beyond.area': of(40, 0.1, 'area', [0, 1000]),
} as const satisfies Readonly<Record<string, Threshold>>;

export type ThresholdId = keyof typeof THRESHOLDS;

/** A threshold as the plan has it: its own, or the default. */
export const thresholdOf = ({ cautions }: Pick<PlanSettings, 'cautions'>, id: ThresholdId): number =>
  (Object.hasOwn(cautions, id) ? cautions[id] : undefined) ?? THRESHOLDS[id].value;
