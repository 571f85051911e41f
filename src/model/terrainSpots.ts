import Delaunator from 'delaunator';
import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE, SAME_POINT } from '../base/tolerance.ts';
import type { Spot } from './ground.ts';
import { modelFault } from './modelFault.ts';
import type { MadeTerrain, TerrainBoard } from './terrain.ts';
import { terrainOfGrid } from './terrainGrid.ts';
import { goneOnLevel } from './terrainRim.ts';
import { heightsOf, solidBelow } from './terrainSolid.ts';
import { TriangleBins } from './terrainBins.ts';

type Height = Pick<Spot, 'at' | 'height'>;

/**
 * The ground between spot heights, by the Delaunay triangulation; beyond the outermost of them it goes on level at the height
 * of the nearest point between them. Of spots at one place the mean holds, and a note names them; with fewer than three
 * places, or all on one line, the ground is flat at the mean height, and a fault says so.
 */
export function terrainOfSpots(spots: readonly Height[], board: TerrainBoard): MadeTerrain {
  const { places, faults } = apart(spots);
  const triangulation = onOneLine(places)
    ? null
    : new Delaunator(Float64Array.from(places.flatMap(({ at }) => at)));
  if (triangulation === null || triangulation.triangles.length === 0) {
    const mean = spots.reduce((sum, { height }) => sum + height / spots.length, 0);
    const code = places.length < 3 ? 'ground.spots-few' : 'ground.spots-line';
    const fault = modelFault(code, 'the ground', ['spots'], { given: places.length });
    return { terrain: levelTerrain(mean, board), faults: [...faults, fault] };
  }
  const corners = places.flatMap(({ at: [x, y], height }) => [x, y, height]);
  const surface = goneOnLevel(corners, triangulation.triangles, triangulation.halfedges, board);
  const bins = new TriangleBins(surface.positions, surface.triangles, board);
  return {
    terrain: {
      ...heightsOf(surface.positions),
      solid: solidBelow(surface),
      surface: surface.triangles.length / 3,
      heightAt: (x, y) => bins.heightAt(x, y),
    },
    faults,
  };
}

/** Ground of one height as a terrain. */
function levelTerrain(height: number, { left, bottom, right, top }: TerrainBoard): MadeTerrain['terrain'] {
  const cell = Math.max(right - left, top - bottom, LEAST_SIZE);
  return terrainOfGrid(
    { left, bottom, cell, columns: 1, rows: 1, heights: [height] },
    { left, bottom, right, top },
  ).terrain;
}

/** Spots no two of which are at one place, and notes on those that were. */
function apart(spots: readonly Height[]): {
  readonly places: readonly Height[];
  readonly faults: readonly Fault[];
} {
  const byPlace = new Map<string, { readonly first: number; readonly at: Height['at']; heights: number[] }>();
  const faults: Fault[] = [];
  spots.forEach(({ at, height }, index) => {
    const key = at.map((n) => Math.round(n / SAME_POINT)).join(' ');
    const there = byPlace.get(key);
    if (there === undefined) {
      byPlace.set(key, { first: index, at, heights: [height] });
      return;
    }
    there.heights.push(height);
    faults.push(
      modelFault('ground.spots-repeated', 'the ground', ['spots', index], {
        given: `${there.first + 1} and ${index + 1}`,
      }),
    );
  });
  const places = [...byPlace.values()].map(({ at, heights }) => ({
    at,
    height: heights.reduce((sum, height) => sum + height / heights.length, 0),
  }));
  return { places, faults };
}

/** Whether places lie within LEAST_SIZE of a line: a slope across it would be made of nothing. */
function onOneLine(places: readonly Height[]): boolean {
  const [first] = places;
  if (first === undefined || places.length < 3) return true;
  const away = (from: Height, to: Height) => Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]);
  const farthest = (from: Height) =>
    places.reduce((best, one) => (away(from, one) > away(from, best) ? one : best), from);
  const one = farthest(first);
  const two = farthest(one);
  const length = away(one, two);
  const [ux, uy] = [(two.at[0] - one.at[0]) / length, (two.at[1] - one.at[1]) / length];
  const offs = places.map(({ at: [x, y] }) => ux * (y - one.at[1]) - uy * (x - one.at[0]));
  return Math.max(...offs) - Math.min(...offs) < LEAST_SIZE;
}
