import { describe, expect, test } from 'vitest';
import { hostFaces } from '../../src/model/faces.ts';
import {
  barrierWith,
  blockWith,
  buildingWith,
  canopyWith,
  flat,
  rectangle,
  treeWith,
  turned,
  vehicleWith,
} from './sampleStructures.ts';

describe('hostFaces', () => {
  test('names the walls of a building by compass, in the order of its edges', () => {
    const faces = hostFaces(buildingWith());
    expect(faces.map(({ face, sort, name }) => [face, sort, name])).toEqual([
      [0, 'wall', 'South wall'],
      [1, 'wall', 'East wall'],
      [2, 'wall', 'North wall'],
      [3, 'wall', 'West wall'],
    ]);
    expect(faces[0]).toMatchObject({
      start: [0, 0, 0],
      along: [1, 0, 0],
      outward: [0, -1, 0],
      width: 10,
      top: 3,
    });
    expect(faces[1]).toMatchObject({ start: [10, 0, 0], along: [0, 1, 0], outward: [1, 0, 0], width: 6 });
  });
  test('uses eight winds, and numbers walls that share one', () => {
    const turnedHouse = hostFaces(buildingWith({ outline: turned(rectangle(10, 6), 45) }));
    expect(turnedHouse.map(({ name }) => name)).toEqual([
      'South-east wall',
      'North-east wall',
      'North-west wall',
      'South-west wall',
    ]);
    const [south] = hostFaces(buildingWith({ outline: turned(rectangle(10, 6), 20) }));
    expect(south?.name).toBe('South wall');
    const outline = [
      [0, 0],
      [9, 0],
      [9, 4],
      [5, 4],
      [5, 8],
      [0, 8],
    ] as const;
    expect(hostFaces(buildingWith({ outline })).map(({ name }) => name)).toEqual([
      'South wall',
      'East wall',
      'North wall',
      'East wall 2',
      'North wall 2',
      'West wall',
    ]);
  });
  test('lists soffits where the roof overhangs: everywhere under a hip, at the eaves of a gable', () => {
    const soffits = (kind: 'hip' | 'gable') =>
      hostFaces(buildingWith({ roof: { ...flat, kind, overhang: 0.4 } }))
        .filter(({ sort }) => sort === 'soffit')
        .map(({ face, name, foot, top, depth }) => [face, name, foot, top, depth]);
    expect(soffits('hip')).toEqual([
      [0, 'Soffit over the south wall', 3, 3, 0.4],
      [1, 'Soffit over the east wall', 3, 3, 0.4],
      [2, 'Soffit over the north wall', 3, 3, 0.4],
      [3, 'Soffit over the west wall', 3, 3, 0.4],
    ]);
    expect(soffits('gable').map(([, name]) => name)).toEqual([
      'Soffit over the south wall',
      'Soffit over the north wall',
    ]);
  });
  test('lets a gable wall rise to its ridge', () => {
    const [, gable] = hostFaces(buildingWith({ roof: { ...flat, kind: 'gable', pitch: 45 } }));
    expect(gable?.top).toBeCloseTo(6, 12);
    expect(gable?.topLine.map((p) => p.map((v) => Math.round(v * 1e9) / 1e9))).toEqual([
      [0, 3],
      [3, 6],
      [6, 3],
    ]);
  });
  test('gives a barrier both long sides, the right-hand ones counted on', () => {
    const faces = hostFaces(barrierWith());
    expect(faces.map(({ face, name }) => [face, name])).toEqual([
      [0, 'North side'],
      [1, 'West side'],
      [2, 'South side'],
      [3, 'East side'],
    ]);
    // Mitred at the turn: the inner side is shorter by half the thickness, the outer longer.
    expect(faces.map(({ width }) => width)).toEqual([7.9, 4.9, 8.1, 5.1]);
    expect(faces[2]?.start).toEqual([0, -0.1, 0]);
  });
  test('gives the underside of a canopy along each edge, running in under the board', () => {
    const [south] = hostFaces(canopyWith());
    expect(south).toMatchObject({
      sort: 'soffit',
      name: 'Soffit at the south edge',
      outward: [0, 1, 0],
      depth: 5,
    });
    expect(south?.top).toBeCloseTo(2.45, 12);
  });
  test('gives the ceilings of a hollow building, one behind each wall, counted on', () => {
    const faces = hostFaces(buildingWith({ outline: rectangle(8, 6), wallThickness: 0.3, height: 3 }));
    const ceilings = faces.filter(({ name }) => name.startsWith('Ceiling'));
    expect(ceilings.map(({ face, name, width, depth }) => [face, name, width, depth])).toEqual([
      [4, 'Ceiling at the south wall', expect.closeTo(7.4, 9), expect.closeTo(5.4, 9)],
      [5, 'Ceiling at the east wall', expect.closeTo(5.4, 9), expect.closeTo(7.4, 9)],
      [6, 'Ceiling at the north wall', expect.closeTo(7.4, 9), expect.closeTo(5.4, 9)],
      [7, 'Ceiling at the west wall', expect.closeTo(5.4, 9), expect.closeTo(7.4, 9)],
    ]);
    // It lies 0.2 below the walls' height, and runs into the room.
    expect(ceilings[0]).toMatchObject({ sort: 'soffit', outward: [0, 1, 0] });
    expect(ceilings[0]?.top).toBeCloseTo(2.8, 12);
    expect(hostFaces(buildingWith({ outline: rectangle(8, 6) })).some(({ within }) => within)).toBe(false);
  });
  test('gives sides of blocks, and nothing of trees, vehicles and outlines that cannot be built', () => {
    expect(hostFaces(blockWith()).map(({ name }) => name)).toEqual([
      'South side',
      'East side',
      'North side',
      'West side',
    ]);
    expect(hostFaces(treeWith())).toEqual([]);
    expect(hostFaces(vehicleWith())).toEqual([]);
    expect(hostFaces(buildingWith({ outline: rectangle(0, 0) }))).toEqual([]);
  });
  test('counts faces as the corners were drawn, whatever their direction and repeats', () => {
    const outline = [
      [0, 0],
      [0, 0],
      [0, 6],
      [10, 6],
      [10, 0],
    ] as const;
    const faces = hostFaces(buildingWith({ outline }));
    expect(faces.map(({ face, name }) => [face, name])).toEqual([
      [3, 'East wall'],
      [2, 'North wall'],
      [1, 'West wall'],
      [4, 'South wall'],
    ]);
  });
});
