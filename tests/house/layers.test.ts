import { describe, expect, test } from 'vitest';
import { importsOf } from './imports.ts';
import { layerFaults } from './layers.ts';
import { filesBelow, textOfFile } from './projectFiles.ts';
import { rooms } from './rooms.js';

const faultsOf = (file: string, source: string): string[] => layerFaults(new Map([[file, source]])).faults;

describe('the house as it stands', () => {
  const files = filesBelow('src').filter((file) => /\.tsx?$/.test(file));
  const { modules, faults } = layerFaults(new Map(files.map((file) => [file, textOfFile(file)])));

  test('is read whole, and is not empty', () => {
    expect(modules).toBeGreaterThan(0);
    expect(modules).toBe(files.length);
  });

  test('imports downwards only', () => {
    expect(faults).toEqual([]);
  });
});

describe('the layer rule goes red', () => {
  test('on an import upwards', () => {
    expect(faultsOf('src/base/a.ts', "import { b } from '../model/b.ts';")).toEqual([
      'src/base/a.ts: base may not import model: src/model/b.ts',
    ]);
  });

  test('on an import sideways, even of a type', () => {
    expect(faultsOf('src/panels/a.ts', "import type { B } from '../view3d/b.ts';")).toHaveLength(1);
  });

  test('on a value where only types may come', () => {
    const [fault] = faultsOf('src/panels/a.tsx', "import { cover } from '../coverage/coverage.ts';");
    expect(fault).toContain('panels may take only types from coverage');
  });

  test.each([
    ["export * from '../../app/b.ts';"],
    ["export { b } from '../../app/b.ts';"],
    ["const b = await import('../../app/b.ts');"],
    ["type B = import('../../app/b.ts').B;"],
    ["const b = new Worker(new URL('../../app/b.ts', import.meta.url));"],
    ["import '../../app/b.ts?worker';"],
  ])('on %s from a folder inside a room', (source) => {
    expect(faultsOf('src/model/roof/a.ts', source)).toHaveLength(1);
  });

  test.each([
    ['base', 'react'],
    ['draw', 'three'],
    ['app', 'three/addons/controls/OrbitControls.js'],
    ['cli', 'zod'],
    ['coverage', 'earcut'],
    ['sight', 'node:fs'],
  ])('when %s uses %s', (room, name) => {
    expect(faultsOf(`src/${room}/a.ts`, `import * as x from '${name}';`)).toHaveLength(1);
  });

  test('on a file in no room', () => {
    expect(faultsOf('src/utils/a.ts', 'export {};')).toHaveLength(1);
    expect(faultsOf('src/a.ts', 'export {};')).toHaveLength(1);
  });

  test('on a circle of modules', () => {
    const { faults } = layerFaults(
      new Map([
        ['src/base/a.ts', "import { b } from './b.ts';"],
        ['src/base/b.ts', "import { a } from './a.ts';"],
      ]),
    );
    expect(faults).toContain('circle: src/base/a.ts → src/base/b.ts → src/base/a.ts');
  });
});

describe('the layer rule lets through', () => {
  test.each([
    ['src/view3d/a.ts', "import { Vector3 } from 'three';"],
    ['src/plan/a.ts', "import { z } from 'zod';"],
    ['src/exchange/a.ts', "import earcut from 'earcut';"],
    ['src/panels/a.tsx', "import type { Coverage } from '../coverage/coverage.ts';"],
    ['src/coverage/a.ts', "import table from '../../shared/tables/bands.json' with { type: 'json' };"],
    ['src/app/a.tsx', "import './a.css'; import { b } from '../view3d/B.tsx';"],
    ['src/base/a.ts', "// import { b } from '../app/b.ts';\nconst text = \"import '../app/b.ts'\";"],
  ])('%s: %s', (file, source) => {
    expect(faultsOf(file, source)).toEqual([]);
  });
});

test('a source that does not parse is refused by name', () => {
  expect(() => importsOf('src/base/a.ts', 'import {')).toThrow('src/base/a.ts');
});

test('every room lists only rooms above it', () => {
  rooms.forEach((room, index) => {
    const above = rooms.slice(0, index).map(({ name }) => name);
    expect(above).toEqual(expect.arrayContaining([...room.values, ...room.types]));
  });
});

test('the engine configuration covers exactly the pure rooms', () => {
  const configuration: unknown = JSON.parse(textOfFile('tests/house/engine.tsconfig.json'));
  const folders = rooms.filter((room) => room.pure).map((room) => `../../src/${room.name}`);
  expect(configuration).toHaveProperty('include', folders);
});
