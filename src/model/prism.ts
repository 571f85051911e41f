import { cornerAt } from './ring.ts';
import { Shell, type Mesh } from './shell.ts';
import type { Ring } from './structure.ts';
import { addWall, levelTop } from './wall.ts';

/** The mesh of upright walls over rings (outline counter-clockwise, holes clockwise), closed below and above. */
export function prism(rings: readonly Ring[], foot: number, top: number): Mesh | null {
  const shell = new Shell();
  for (const ring of rings) {
    ring.forEach((a, k) => {
      const b = cornerAt(ring, k + 1);
      addWall(shell, a, b, foot, levelTop(a, b, top));
    });
  }
  shell.cap(foot, 'down');
  shell.cap(top, 'up');
  return shell.mesh();
}
