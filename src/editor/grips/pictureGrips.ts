import type { Vec2, Vec3 } from '../../base/vector.ts';
import { cos, sin } from '../../base/angle.ts';
import { groundHeight } from '../../model/ground.ts';
import type { Picture, Plan } from '../../plan/plan.ts';
import { siteFromPicture } from '../../plan/sitePicture.ts';
import type { PlacedGrip } from './placedGrip.ts';

/** How far before a pinned photo its way is held, m. */
const BEFORE_PHOTO = 1.5;

/** The places of a site picture that are held: its middle, its upper left and its lower right corner. */
export function heldPlaces(picture: Picture): {
  readonly body: Vec2;
  readonly first: Vec2;
  readonly second: Vec2;
} | null {
  const { file, use } = picture;
  if (use.kind !== 'site') return null;
  const at = (across: number, down: number): Vec2 =>
    siteFromPicture({ file, use }, [file.width * across, file.height * down]);
  return { body: at(0.5, 0.5), first: at(0, 0), second: at(1, 1) };
}

/**
 * The handles of a picture. One of the site has its body and, once it has a scale, two corners that turn and scale it about
 * one another; a pinned photo its body and the way that it looks. On a wall the sheet has the four points.
 */
export function pictureGrips(plan: Plan, picture: Picture): readonly PlacedGrip[] {
  const { id, name, use, locked } = picture;
  const common = { facing: null, bar: null, locked } as const;
  const grip = (point: 'first' | 'second' | 'body') => ({ part: 'picture', picture: id, point }) as const;
  if (use.kind === 'photo') {
    const [x, y, z] = use.at;
    const heading = use.heading ?? 0;
    const ahead: Vec3 = [x + BEFORE_PHOTO * sin(heading), y + BEFORE_PHOTO * cos(heading), z];
    return [
      { ...common, grip: grip('body'), at: use.at, way: 'ground', cursor: 'move', words: name },
      {
        ...common,
        grip: grip('first'),
        at: ahead,
        way: 'turn',
        cursor: 'grab',
        words: `The way that ${name} looks`,
      },
    ];
  }
  const places = heldPlaces(picture);
  if (!places || use.kind !== 'site') return [];
  const level = groundHeight(plan.ground);
  const placed = (point: 'first' | 'second' | 'body', words: string): PlacedGrip => ({
    ...common,
    grip: grip(point),
    at: [...places[point], level],
    way: 'ground',
    cursor: point === 'body' ? 'move' : 'resize',
    words,
  });
  const body = placed('body', name);
  if (use.metresPerPixel === null) return [body];
  return [
    body,
    placed('first', `Upper left corner of ${name}`),
    placed('second', `Lower right corner of ${name}`),
  ];
}
