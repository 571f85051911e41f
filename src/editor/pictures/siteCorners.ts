import type { Vec2, Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import type { Plan } from '../../plan/plan.ts';
import { siteFromPicture } from '../../plan/sitePicture.ts';

/** A picture that lies on the ground, as it is shown. */
export interface LaidPicture {
  readonly id: string;
  readonly sha: string;
  /** Upper left, upper right, lower right, lower left of the picture, site frame. */
  readonly corners: readonly [Vec3, Vec3, Vec3, Vec3];
  /** 0 to 1. */
  readonly strength: number;
}

/** The pictures laid on the ground of a plan, undermost first; those left out of the picture are not there. */
export function laidPictures({ pictures, pictureOrder, ground }: Plan): readonly LaidPicture[] {
  const level = groundHeight(ground);
  const up = ([x, y]: Vec2): Vec3 => [x, y, level];
  return pictureOrder.flatMap((id): LaidPicture[] => {
    const picture = pictures[id];
    if (!picture || picture.hidden || picture.use.kind !== 'site') return [];
    const { file, use } = picture;
    const at = (u: number, v: number): Vec3 => up(siteFromPicture({ file, use }, [u, v]));
    const corners = [at(0, 0), at(file.width, 0), at(file.width, file.height), at(0, file.height)] as const;
    return [{ id, sha: file.sha, corners, strength: use.strength }];
  });
}
