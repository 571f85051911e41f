import { THRESHOLDS, thresholdOf, type ThresholdId } from '../../assess/cautions/thresholds.ts';
import type { PlanSettings } from '../../plan/plan.ts';

const LABEL: Readonly<Record<ThresholdId, string>> = {
  'side.tell': 'Told from the side above',
  'above.tell': 'Told from above past',
  'plate.pixels': 'Least height of a character',
  'plate.angle': 'Most off the plate',
  'smear.identify.tell': 'Smear told above, identify',
  'smear.identify.fails': 'Smear fails above, identify',
  'smear.recognise.tell': 'Smear told above, recognise',
  'smear.recognise.fails': 'Smear fails above, recognise',
  'smear.plate.fails': 'Smear fails above, plate',
  'smear.plate.speed': 'Speed of vehicles',
  'smear.night.exposure': 'Exposure at night, not stated',
  'pictures.walking': 'Least pictures, walking',
  'pictures.running': 'Least pictures, running',
  'pictures.runningSpeed': 'Running speed',
  'focus.circle': 'Least circle of confusion',
  'range.end': 'Near an end of the range',
  'mode.shape': 'Shapes differ above',
  'mode.lost': 'Width that may be missing',
  'upright.ratio': 'Tall and narrow above',
  'glare.near': 'Glares in any case nearer than',
  'glare.far': 'Glares by its share nearer than',
  'glare.tell': 'Share told above',
  'glare.tight': 'Share tight above',
  'ownWall.angle': 'Least off its own wall',
  'dome.cone': 'Cover asked within',
  'spiders.cover': 'Cover nearer than',
  'spiders.leaves': 'Leaves nearer than',
  'sun.outside': 'Beside the picture up to',
  'sun.minutes': 'Minutes a day above',
  'sky.tell': 'Sky told above',
  'sky.tight': 'Sky tight above',
  'backlight.share': 'Opening fills above',
  'lamp.far': 'Lamps nearer than',
  'lamp.angle': 'Headlamps within',
  'infrared.fine': 'Sure share of range, faces',
  'infrared.coarse': 'Sure share of range, else',
  'infrared.beside': 'Picture beside the beam above',
  'clear.solid': 'Least room past an edge',
  'clear.leaves': 'Least room past leaves',
  'growth.hedge': 'A hedge grows a year',
  'growth.tree': 'A tree grows a year',
  'growth.years': 'Years of growth',
  'growth.area': 'Ground hidden above',
  'leaves.far': 'Leaves nearer than',
  'leaves.share': 'Leaves fill above',
  'parking.door': 'Vehicle doors from a width of',
  'parking.length': 'Length of a van',
  'closing.share': 'Closed share above',
  'reach.height': 'Within reach below',
  'reach.sideways': 'Sideways up to',
  'hole.above': 'Above an opening up to',
  'hole.beside': 'Beside an opening up to',
  'hole.edge': 'From an edge below',
  'services.band': 'Beside a line or corner up to',
  'services.meter': 'From a meter up to',
  'boards.year': 'Boards from before',
  'ladder.from': 'Ladder told above',
  'ladder.high': 'High for a ladder above',
  'ladder.slope': 'Slope of its foot above',
  'sway.pole': 'Post higher than',
  'sway.arm': 'Arm longer than',
  'sway.angle': 'Lens narrower than',
  'flue.near': 'Flue nearer than',
  'cable.plug': 'Plug through the hole',
  'cable.fall': 'Fall of the hole',
  'power.budget': 'Power budget, 0: not known',
  'power.spare': 'Least to spare',
  'beyond.area': 'Ground beyond above',
};

/** A threshold as it is shown and typed: shares as per cent. */
export interface ShownThreshold {
  readonly id: ThresholdId;
  readonly label: string;
  /** What kind of number it is: a length in the plan's units, an angle, or a plain number with a unit. */
  readonly kind: 'length' | 'angle' | 'plain';
  readonly unit: string;
  readonly value: number;
  readonly usual: number;
  readonly least: number;
  readonly most: number;
  /** Of the plan's value that which is shown: 100 for a share. */
  readonly times: number;
}

const UNIT = {
  m: '',
  angle: '°',
  share: '%',
  count: '',
  px: 'px',
  mm: 'mm',
  W: 'W',
  min: 'min',
  speed: 'm/s',
  ms: 'ms',
  factor: '',
  year: '',
  area: 'm²',
} as const;

/** The threshold of an id as a plan has it. */
export function shownThreshold(settings: PlanSettings, id: ThresholdId): ShownThreshold {
  const { unit, value: usual, least, most } = THRESHOLDS[id];
  const times = unit === 'share' ? 100 : 1;
  return {
    id,
    label: LABEL[id],
    kind: unit === 'm' ? 'length' : unit === 'angle' ? 'angle' : 'plain',
    unit: UNIT[unit],
    value: thresholdOf(settings, id) * times,
    usual: usual * times,
    least: least * times,
    most: most * times,
    times,
  };
}
