import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { groupsOf } from './objGroups.ts';
import { DEMO, scratch, soffit, soffitJson } from './ran.ts';

const files = scratch();
afterAll(files.clear);

describe('solids', () => {
  test('writes every structure under its id and passage, closed, with a positive volume', () => {
    const file = files.file('demo.obj');
    expect(soffit('solids', DEMO, '--obj', file)).toMatchObject({ code: 0, err: '' });
    const groups = groupsOf(readFileSync(file, 'utf8'));
    expect(groups.get('mesh-fence')?.passage).toBe('screen');
    expect(groups.get('hedge')?.passage).toBe('solid');
    expect([...groups.keys()].filter((id) => id.startsWith('tree'))).toHaveLength(2);
    for (const { corners, triangles } of groups.values()) {
      const edges = new Map<string, number>();
      let volume = 0;
      for (const triangle of triangles) {
        const [p, q, r] = triangle.map((index) => corners[index]);
        if (!p || !q || !r) throw new Error('a triangle names a corner that is not there');
        volume +=
          (p[0] * (q[1] * r[2] - q[2] * r[1]) -
            p[1] * (q[0] * r[2] - q[2] * r[0]) +
            p[2] * (q[0] * r[1] - q[1] * r[0])) /
          6;
        triangle.forEach((from, at) => {
          const to = triangle[(at + 1) % 3] ?? NaN;
          edges.set(`${from} ${to}`, (edges.get(`${from} ${to}`) ?? 0) + 1);
        });
      }
      expect(volume).toBeGreaterThan(0);
      for (const [edge, count] of edges) {
        expect(count).toBe(1);
        expect(edges.get(edge.split(' ').toReversed().join(' '))).toBe(1);
      }
    }
  });

  test('the chain-link fence has the volume that its sizes give', () => {
    const file = files.file('fence.obj');
    soffit('solids', DEMO, '--obj', file);
    const fence = groupsOf(readFileSync(file, 'utf8')).get('mesh-fence');
    const used = fence?.triangles.flat().map((index) => fence.corners[index] ?? [NaN, NaN, NaN]) ?? [];
    const size = ([0, 1, 2] as const).map(
      (axis) => Math.max(...used.map((p) => p[axis])) - Math.min(...used.map((p) => p[axis])),
    );
    expect(size.map((value) => value.toFixed(3))).toEqual(['0.050', '17.800', '1.500']);
  });

  test('lists them as JSON by the same ids', () => {
    const { solids } = soffitJson('solids', DEMO) as {
      solids: { id: string; passage: string; triangles: number }[];
    };
    expect(solids.find(({ id }) => id === 'hedge.front-gate')?.passage).toBe('screen');
    expect(solids.every(({ triangles }) => triangles >= 12)).toBe(true);
  });
});
