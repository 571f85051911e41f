import type { DrillFacts, NoCard } from '../../assess/card/drillFacts.ts';
import { FALL, type InsideEnd } from '../../assess/card/insideEnd.ts';
import { bearing } from '../../base/angle.ts';
import { fixed, type LengthUnit } from '../../base/length.ts';
import { anglesOf } from '../../optics/setting.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { tapeWithUnit } from './tape.ts';

/** Whole degrees, without a negative nought. */
const whole = (degrees: number): string => fixed(Math.round(degrees), 0);

/** "45° right", "straight out": as one stands with the back to the wall. */
export function turnedWords(turned: number): string {
  const rounded = Math.round(turned);
  if (rounded === 0) return 'straight out';
  return `${Math.abs(rounded)}° ${rounded > 0 ? 'right' : 'left'}`;
}

/** "24° down", "level". */
export function downWords(tilt: number): string {
  const rounded = Math.round(tilt);
  if (rounded === 0) return 'level';
  return `${Math.abs(rounded)}° ${rounded > 0 ? 'down' : 'up'}`;
}

const WINDS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** "225° (south-west)". */
function bearingWords(degrees: number): string {
  const way = bearing(degrees);
  return `${Math.round(way) % 360}° (${WINDS[Math.round(way / 45) % 8] ?? 'north'})`;
}

const MOUNTS: Readonly<Record<PlanCamera['mount']['kind'], string>> = {
  flush: 'flat on the wall',
  arm: 'on a bracket',
  soffit: 'under the soffit',
  pole: 'on a post',
  corner: 'around the corner',
  loose: 'fixed to nothing',
};

/** "South wall of House, on a bracket". */
export function placeWords({ spot, set }: DrillFacts, units: LengthUnit): string {
  const how = MOUNTS[set.mount.kind];
  switch (spot.kind) {
    case 'pole':
      return `On a post of ${tapeWithUnit(spot.diameter, units)}`;
    case 'corner': {
      const [left, right] = spot.walls.map(({ view }) => view);
      return `Corner of the ${left?.name.toLowerCase() ?? ''} and the ${right?.name.toLowerCase() ?? ''} of ${right?.structure ?? ''}`;
    }
    case 'soffit':
      return spot.under === 'canopy'
        ? `Under ${spot.wall.view.structure}, ${spot.wall.view.name.toLowerCase()}`
        : `${spot.wall.view.name} of ${spot.wall.view.structure}${spot.under === 'ceiling' ? '' : `, ${how}`}`;
    case 'wall':
      return `${spot.wall.view.name} of ${spot.wall.view.structure}, ${how}`;
  }
}

/** Why a camera has no card, and what to do. */
export function noCardWords(why: NoCard, name: string): string {
  switch (why) {
    case 'loose':
      return `${name} is fixed to nothing, so there is no hole to drill. Fix it to a wall, a soffit or a post.`;
    case 'lost':
      return `${name} does not fit where it is fixed: its wall has changed. Fix it to a wall again.`;
    case 'away':
      return `What ${name} is fixed to is away in these conditions. Choose conditions in which it stands.`;
  }
}

/** Sizes of a cable hole, and how far from an edge of brickwork plugs hold: common practice, no source. */
const HOLE = { plug: 0.02, bare: 0.01, loop: 0.1, edge: 0.1 } as const;

/** Where the hole comes out and how the cable goes, a line or two each. */
export function insideWords({ inside, spot }: DrillFacts, units: LengthUnit): readonly string[] {
  const say = (metres: number): string => tapeWithUnit(metres, units);
  const hole = `Hole ${say(HOLE.plug)} to pass a fitted plug, ${say(HOLE.bare)} for bare cable, falling ${FALL}° outwards.`;
  const entry = `Loop the cable at least ${say(HOLE.loop)} below its entry. Seal outside; leave the weep hole open.`;
  const fixings = `Fix the plate with plugs and screws that suit this wall, ${say(HOLE.edge)} or more from any edge of it.`;
  switch (inside.kind) {
    case 'wall':
      return [endWords(inside, say), ...cornerWords(inside, say), hole, entry, fixings];
    case 'through':
      return [
        inside.rise === null
          ? 'Where it comes out is not known: no thickness is given.'
          : `On the other side it comes out ${say(inside.rise)} higher.`,
        hole,
        entry,
        fixings,
      ];
    case 'eaves':
      return [
        'The cable goes up through the soffit into the roof space. Fix to timber behind the board, not to the board.',
        `Hole ${say(HOLE.plug)} to pass a fitted plug, ${say(HOLE.bare)} for bare cable, under the plate.`,
        'Where it comes out: look in the roof space first. Joists, insulation and cables are not drawn.',
      ];
    case 'ceiling':
      return [
        'The cable goes up through the ceiling. Fix to a joist or to timber between joists, not to the board.',
        `Hole ${say(HOLE.plug)} to pass a fitted plug, ${say(HOLE.bare)} for bare cable, under the plate.`,
        'Look above the ceiling first. Joists, insulation and cables are not drawn.',
      ];
    case 'board':
      return [
        'Fix to timber behind the board, not to the board. Run the cable under it, or up through it and seal the top.',
        `Hole ${say(HOLE.plug)} to pass a fitted plug, ${say(HOLE.bare)} for bare cable.`,
      ];
    case 'corner':
      return [
        'The bracket goes around the corner: take the cable through one of the two walls beside it, not through the edge.',
        hole,
        entry,
        fixings,
      ];
    case 'post':
      return [
        'Cable inside the post where it is hollow, else in conduit up its back. Nothing is drilled but the entry below the bracket.',
        entry,
        ...(spot.kind === 'pole' ? [`Clamp or straps for a post of ${say(spot.diameter)}.`] : []),
      ];
  }
}

function endWords(
  { floor, rise, aboveBase }: Extract<InsideEnd, { kind: 'wall' }>,
  say: (metres: number) => string,
): string {
  const higher = rise === null ? 'Wall thickness not known.' : `Inside it comes out ${say(rise)} higher:`;
  if (floor === null)
    return aboveBase === null
      ? `${higher} Floor levels not known: go in and look before you drill.`
      : `${higher} ${say(aboveBase)} above the foot of the wall. Floor levels not known: go in and look.`;
  const about = rise === null ? 'about ' : '';
  switch (floor.where) {
    case 'below':
      return `${higher} ${about}${say(-floor.above)} BELOW the lowest floor (${floor.name}). Go in and look.`;
    case 'void':
      return `${higher} ${about}${say(floor.above)} above the floor of ${floor.name}, which is ABOVE its ceiling of ${say(floor.ceiling)}: among joists. Go in and look.`;
    case 'room':
      return `${higher} ${about}${say(floor.above)} above the floor of ${floor.name}.`;
  }
}

const cornerWords = (
  { corners }: Extract<InsideEnd, { kind: 'wall' }>,
  say: (metres: number) => string,
): readonly string[] =>
  corners === null
    ? []
    : [
        `Facing it from inside: ${say(Math.max(0, corners.left))} from the corner on the left, ${say(Math.max(0, corners.right))} on the right, if no wall stands between.`,
      ];

/** A row of the settings: what, and how it is set. */
export type SettingRow = readonly [what: string, value: string];

/** How the camera is set, as an installer enters it. */
export function settingRows(facts: DrillFacts, units: LengthUnit): readonly SettingRow[] {
  const { camera, set, lens, spot, turned } = facts;
  const say = (metres: number): string => tapeWithUnit(metres, units);
  const { device, exposure, infrared, sheet } = set;
  const mode = device.modes.find(({ id }) => id === device.recorded);
  const rows: (SettingRow | null)[] = [
    ['Lens above the ground below it', say(lens.height)],
    spot.kind === 'pole'
      ? ['Lens from the middle of the post', say(lens.out)]
      : ['Lens from the hole: out, down', `${say(lens.out)}, ${say(lens.below)}`],
    ...turnRows(facts, turned),
    ['Tilt from level', exact(camera.tilt, downWords(camera.tilt))],
    ['Roll', rollWords(set.roll)],
    ['Lens', lensWords(facts)],
    [
      'Recorded picture',
      `${mode?.name ?? ''} ${camera.frame.width} × ${camera.frame.height}${sheet.imagesPerSecond === null ? '' : `, ${sheet.imagesPerSecond}/s`}`.trim(),
    ],
    exposure === null
      ? null
      : ['Longest exposure, day; night', `${shutter(exposure.day)}; ${shutter(exposure.night)}`],
    [
      'Infrared',
      infrared === null ? 'none, or off' : `on, ${fixed(infrared.range, 0)} m, beam ${whole(infrared.beam)}°`,
    ],
    sheet.focusDistance === null ? null : ['Focus on', say(sheet.focusDistance)],
  ];
  return rows.filter((row) => row !== null);
}

function turnRows({ spot, camera }: DrillFacts, turned: number): readonly SettingRow[] {
  switch (spot.kind) {
    case 'wall':
      return [['Turn, back to the wall', exact(turned, turnedWords(turned))]];
    case 'soffit':
      return [
        [
          spot.under === 'canopy' ? 'Turn, looking out over the edge' : 'Turn, back to the wall',
          exact(turned, turnedWords(turned)),
        ],
      ];
    case 'corner':
      return [
        ['Turn from the corner’s middle', exact(turned, turnedWords(turned))],
        ['From straight out of each wall', `${turnedWords(spot.turned[0])}; ${turnedWords(spot.turned[1])}`],
      ];
    case 'pole':
      return [
        ['Bracket points to', bearingWords(spot.facing)],
        ['Turn from the bracket', exact(turned, turnedWords(turned))],
        ...(spot.fromLine === null
          ? []
          : [['Camera from the line to A', turnedWords(spot.fromLine)] as const]),
        ['Camera points to', bearingWords(camera.pan)],
      ];
  }
}

/** The whole degree, and the plan's own where that is another. */
const exact = (degrees: number, words: string): string =>
  Math.abs(degrees - Math.round(degrees)) < 0.05 ? words : `${words} (${fixed(Math.abs(degrees), 1)}°)`;

const rollWords = (roll: number): string => {
  if (Math.round(roll) === 0) return 'level';
  const quarter = Math.abs(Math.round(roll)) === 90 ? ', picture upright' : '';
  return `${Math.abs(Math.round(roll))}° ${roll > 0 ? 'clockwise' : 'anticlockwise'} from behind${quarter}`;
};

function lensWords({ camera, set }: DrillFacts): string {
  const { lens } = set.device;
  const { horizontal } = anglesOf(camera);
  const angle = horizontal === null ? '' : `, ${fixed(horizontal, 0)}° across`;
  const range =
    lens.longest > lens.shortest ? `, of ${figure(lens.shortest)} to ${figure(lens.longest)} mm` : '';
  return `${figure(lens.focalLength)} mm${angle}${range}`;
}

const figure = (value: number): string => String(Math.round(value * 100) / 100);

/** "1/100 s", "0.5 s": of milliseconds. */
function shutter(milliseconds: number): string {
  if (milliseconds >= 400) return `${figure(milliseconds / 1000)} s`;
  return `1/${Math.round(1000 / milliseconds)} s`;
}

/** Whether a lens is set on site. */
export const isVarifocal = ({ set }: DrillFacts): boolean =>
  set.device.lens.longest > set.device.lens.shortest;

/** How a varifocal lens is set by two marks on the ground; one line for each that can be seen, and what to do. */
export function markWords({ marks, spot }: DrillFacts, units: LengthUnit): readonly string[] {
  const say = (metres: number): string => tapeWithUnit(metres, units);
  const from = spot.kind === 'pole' ? 'the post' : 'the wall';
  const lines = marks.map(({ side, out, beside, down }) => {
    const beyond =
      Math.abs(beside) < 0.005
        ? 'straight out'
        : `${say(Math.abs(beside))} to the ${beside > 0 ? 'right' : 'left'}`;
    const where = out >= 0 ? `${say(out)} out from ${from}` : `${say(-out)} behind it`;
    return `${side === 'left' ? 'Left' : 'Right'} mark: ${where}, ${beyond}; on that edge ${Math.round(down * 100)} % down.`;
  });
  if (lines.length === 0)
    return ['No ground in sight within 20 m lies on the picture’s edges: set the lens by the picture.'];
  return [
    `Put a mark on the ground for each edge of the picture, ${spot.kind === 'pole' ? 'facing as the bracket points' : 'from below the hole with your back to the wall'}, and turn the lens until each just touches its edge.`,
    ...lines,
  ];
}
