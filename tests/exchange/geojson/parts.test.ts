import { describe, expect, test } from 'vitest';
import { signedArea } from '../../../src/model/ring.ts';
import { at, found, polygon, square } from '../opened.ts';

const box = (x: number, y: number, width: number, depth: number) => [
  at(x, y),
  at(x + width, y),
  at(x + width, y + depth),
  at(x, y + depth),
  at(x, y),
];
const outline = (tags: Record<string, string> = {}) =>
  polygon([square(0, 0, 20)], { building: 'yes', name: 'Mill', height: '12', ...tags }, 'way/1');
const part = (ring: unknown, tags: Record<string, string>, id: string) =>
  polygon([ring], { 'building:part': 'yes', ...tags }, id);

/** Ground that each structure stands on, m². */
const areas = (...features: unknown[]) =>
  found(...features).structures.map((one) => {
    const holes = one.kind === 'building' ? one.holes : [];
    const rings = 'outline' in one ? [one.outline, ...holes] : [];
    return [one.id, Math.round(rings.reduce((sum, ring) => sum + signedArea(ring), 0))] as const;
  });

describe('an outline', () => {
  test('gives way to parts that cover it', () => {
    const halves = [
      part(box(0, 0, 10, 20), { height: '12' }, 'way/2'),
      part(box(10, 0, 10, 20), { height: '6' }, 'way/3'),
    ];
    expect(areas(outline(), ...halves)).toEqual([
      ['way-2', 200],
      ['way-3', 200],
    ]);
    expect(found(outline(), ...halves).report.left).toContainEqual({
      code: 'left.forParts',
      count: 1,
      names: ['Mill'],
    });
  });

  test('keeps what its parts leave of it, so that no ground is missing and none is doubled', () => {
    expect(areas(outline(), part(box(0, 0, 10, 20), { height: '12' }, 'way/2'))).toEqual([
      ['way-1', 200],
      ['way-2', 200],
    ]);
  });

  test('stays whole below a tower that begins at its top', () => {
    const tower = part(box(5, 5, 10, 10), { height: '40', min_height: '12' }, 'way/2');
    const { structures } = found(outline(), tower);
    expect(structures).toMatchObject([
      { id: 'way-1', base: 0, height: 12 },
      { id: 'way-2', base: 12, height: 28 },
    ]);
    expect(areas(outline(), tower)).toEqual([
      ['way-1', 400],
      ['way-2', 100],
    ]);
  });

  test('gives way to a part that begins below its top: an arch stays open', () => {
    const arch = [
      part(box(0, 0, 8, 20), { height: '12' }, 'way/2'),
      part(box(8, 0, 4, 20), { height: '12', min_height: '4' }, 'way/3'),
      part(box(12, 0, 8, 20), { height: '12' }, 'way/4'),
    ];
    expect(found(outline(), ...arch).structures.map((one) => ('base' in one ? one.base : null))).toEqual([
      0, 4, 0,
    ]);
  });

  test('is cut out where a part inside it begins below its top', () => {
    const court = part(box(5, 5, 10, 10), { height: '6' }, 'way/2');
    expect(areas(outline(), court)).toEqual([
      ['way-1', 300],
      ['way-2', 100],
    ]);
  });

  test('does not give way to the part of a neighbour that overlaps it a little', () => {
    expect(areas(outline(), part(box(18, 0, 20, 20), { height: '9' }, 'way/2'))).toEqual([
      ['way-1', 400],
      ['way-2', 400],
    ]);
  });
});

test('a part without a name is called after its building', () => {
  const { structures } = found(outline(), part(square(0, 0, 20), { height: '9' }, 'way/2'));
  expect(structures.map(({ name }) => name)).toEqual(['Mill, part 1']);
});

test('parts without an outline stand by themselves', () => {
  expect(areas(part(square(0, 0, 10), { height: '9' }, 'way/2'))).toEqual([['way-2', 100]]);
});
