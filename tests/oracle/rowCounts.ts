import type { Solid } from '../../src/model/solid.ts';
import type { PlainCamera } from './plainCamera.ts';
import { breaksOf, OPEN } from './rowAreas.ts';
import { BandRow, type Wanted } from './rowBands.ts';
import { RowScene, type RowWindow } from './rowScene.ts';
import { sumOfRows, type Lengths, type Row } from './rowSums.ts';

/** A camera, and what it is asked for. */
export interface Asked {
  readonly camera: PlainCamera;
  readonly wanted: Wanted;
  readonly samples: number;
}

/**
 * Areas that several cameras cover, by rows (see rowBands.ts): at each band or better by any of them, then at the lowest by
 * at least 1, 2, … of them. On a row each camera's stretches are found for itself and then counted.
 */
export function countsByRows(
  solids: readonly Solid[],
  asked: readonly Asked[],
  z: number,
  window: RowWindow,
): number[] {
  const scenes = asked.map(({ camera }) => new RowScene(solids, camera, z, window));
  const row = new CountRow(asked, scenes);
  const breaks = scenes
    .flatMap((scene) => breaksOf(scene).map((y) => y + (scene.eye[1] ?? 0)))
    .sort((one, two) => one - two)
    .filter((y, at, all) => at === 0 || y - (all[at - 1] ?? y) > 1e-9);
  return sumOfRows(row, breaks);
}

class CountRow implements Row {
  readonly size: number;
  private readonly rows: readonly { readonly row: BandRow; readonly eye: readonly number[] }[];
  private readonly bands: number;

  constructor(asked: readonly Asked[], scenes: readonly RowScene[]) {
    this.rows = asked.flatMap(({ camera, wanted, samples }, at) => {
      const scene = scenes[at];
      return scene ? [{ row: new BandRow(scene, camera, wanted, samples), eye: scene.eye }] : [];
    });
    this.bands = asked[0]?.wanted.densities.length ?? 0;
    this.size = this.bands + asked.length;
  }

  at(y: number): Lengths {
    const ends = Array.from({ length: this.bands }, () => new Array<readonly [number, number, number]>());
    this.rows.forEach(({ row, eye: [ex = 0, ey = 0] }, camera) => {
      for (const { from, to, owner, held } of row.pieces(y - ey)) {
        if (owner !== OPEN) continue;
        for (let band = 0; band < this.bands; band += 1)
          if (held[band + 1]) ends[band]?.push([from + ex, 1, camera], [to + ex, -1, camera]);
      }
    });
    const lengths = new Array<number>(this.size).fill(0);
    let sign = '';
    ends.forEach((list, band) => {
      list.sort((one, two) => one[0] - two[0]);
      let count = 0;
      list.forEach(([x, step, camera], at) => {
        count += step;
        sign += `${step > 0 ? '+' : '-'}${camera}`;
        const length = (list[at + 1]?.[0] ?? x) - x;
        if (count > 0) lengths[band] = (lengths[band] ?? 0) + length;
        for (let least = 0; band === 0 && least < count; least += 1)
          lengths[this.bands + least] = (lengths[this.bands + least] ?? 0) + length;
      });
      sign += ';';
    });
    return { lengths, sign };
  }
}
