import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { DEMO, scratch, soffit } from './ran.ts';

const files = scratch();
afterAll(files.clear);

const demo = readFileSync(DEMO, 'utf8');
const kept = (name: string, text: string): string => {
  writeFileSync(files.file(name), text);
  return files.file(name);
};
const out = files.file('out.json');
const mountWords = [
  'mount',
  DEMO,
  '--id',
  'X',
  '--eye',
  '0,0,3',
  '--pan',
  '0',
  '--tilt',
  '20',
  '--focal',
  '4',
  '--sensor',
  '5x3',
  '--frame',
  '1920x1080',
  '--out',
  out,
];
const without = (name: string) =>
  mountWords.filter((_, index) => mountWords[index] !== name && mountWords[index - 1] !== name);
const instead = (name: string, value: string) =>
  mountWords.map((word, index) => (mountWords[index - 1] === name ? value : word));

describe('exit 2 with a message and nothing on the output', () => {
  test.each<[RegExp, string[]]>([
    [/no command “mesh”.*cover, cells/, ['mesh']],
    [/cover needs a plan/, ['cover']],
    [/takes one file, got 2/, ['cover', DEMO, DEMO]],
    [/no file “absent.json”/, ['cover', 'absent.json']],
    [/is not a file/, ['cover', 'shared']],
    [/Unknown option '--colour'/, ['cover', DEMO, '--colour']],
    [/no camera “C9”. It has: C1, C2, C3/, ['cover', DEMO, '--camera', 'C9']],
    [/no camera “constructor”/, ['cover', DEMO, '--camera', 'constructor']],
    [/no situation “dusk”. It has: as-drawn, night, bare/, ['cover', DEMO, '--situation', 'dusk']],
    [/--target-height is “tall”, which is no number/, ['cover', DEMO, '--target-height', 'tall']],
    [/--target-height is -1. Make it 0 to 1000/, ['cover', DEMO, '--target-height', '-1']],
    [/--target is “moon”/, ['cover', DEMO, '--target', 'moon']],
    [/Give one of --target-height/, ['cover', DEMO, '--target', 'face', '--target-height', '1']],
    [/cells needs --camera/, ['cells', DEMO]],
    [/--cell is 0. Make it/, ['cells', DEMO, '--camera', 'C1', '--cell', '0']],
    [/million/, ['cells', DEMO, '--camera', 'C1', '--cell', '0.002']],
    [/say where the cells go/, ['cells', DEMO, '--camera', 'C1', '--json']],
    [/cannot be written/, ['cells', DEMO, '--camera', 'C1', '--csv', files.file('no/such/folder.csv')]],
    [/cannot be written/, ['solids', DEMO, '--obj', files.file('no/such/folder.obj')]],
    [/takes “plan” or “devices”/, ['schema', DEMO]],
    [/import needs --out/, ['import', DEMO]],
    [/mount needs --id/, without('--id')],
    [/mount needs --frame/, without('--frame')],
    [/mount needs --out/, without('--out')],
    [/id “house” is taken/, instead('--id', 'house')],
    [/cannot be an id/, instead('--id', 'my camera')],
    [/--eye is “0,0”. Write X,Y,Z/, instead('--eye', '0,0')],
    [/--eye is “NaN”, which is no number/, instead('--eye', '0,NaN,0')],
    [/1e\+?308.*farther than 100 km/, instead('--eye', '0,1e308,0')],
    [/--tilt is 95/, instead('--tilt', '95')],
    [/--focal is 0/, instead('--focal', '0')],
    [/--sensor is “5”. Write WxH/, instead('--sensor', '5')],
    [/whole number/, instead('--frame', '1920.5x1080')],
    [/--k is 2. Make it -1 to 1/, [...mountWords, '--k', '2']],
  ])('%s', (message, words) => {
    const said = soffit(...words);
    expect(said).toMatchObject({ code: 2, out: '' });
    expect(said.err).toMatch(message);
    expect(said.err).toMatch(/^soffit/);
    expect(said.err).not.toMatch(/undefined|\n +at /);
  });

  test.each<[RegExp, string]>([
    [/stops half-way/, demo.slice(0, 3000)],
    [/newer Soffit/, demo.replace('"version": 4', '"version": 7')],
    [/NaN at line \d+/, demo.replace('"pan": 236', '"pan": NaN')],
    [/“House” has a coordinate of 1e\+308/, demo.replace('[11, 7], [0, 7]]', '[11, 1e308], [0, 7]]')],
    [/“House” is 10000 m across/, demo.replaceAll('[11, 7]', '[10000, 7]')],
    [
      /“House” crosses itself/,
      demo.replace('[[0, 0], [11, 0], [11, 7], [0, 7]]', '[[0, 0], [11, 7], [11, 0], [0, 7]]'),
    ],
    [/is empty/, ''],
  ])('a plan of which it must say: %s', (message, text) => {
    for (const command of [['cover'], ['solids'], ['cameras'], ['cells', '--camera', 'C1']]) {
      const [name = '', ...rest] = command;
      const said = soffit(name, kept('bad.json', text), ...rest);
      expect(said).toMatchObject({ code: 2, out: '' });
      expect(said.err).toMatch(message);
    }
  });

  test('a map of points only is not imported, and no plan is written', () => {
    const map = kept(
      'points.geojson',
      JSON.stringify({
        type: 'FeatureCollection',
        features: [{ type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [1, 2] } }],
      }),
    );
    const said = soffit('import', map, '--out', files.file('never.json'));
    expect(said).toMatchObject({ code: 2, out: '' });
    expect(said.err).toMatch(/only points \(1\)/);
    expect(readdirSync(path.dirname(map))).not.toContain('never.json');
  });
});

describe('help', () => {
  test.each(['cover', 'cells', 'solids', 'cameras', 'mount', 'import', 'schema'])(
    '%s says how it is typed',
    (name) => {
      const { code, out: text } = soffit(name, '--help');
      expect(code).toBe(0);
      expect(text).toMatch(new RegExp(`^soffit ${name} `));
      expect(soffit('--help').out).toContain(`soffit ${name}`);
    },
  );

  test('soffit alone says what there is, as an error', () => {
    expect(soffit()).toMatchObject({ code: 2, out: '' });
    expect(soffit('--help').code).toBe(0);
  });
});

test('a camera that is fixed to nothing is named, and the others still stand', () => {
  const lost = demo.replace('"host": "garage"', '"host": "barn"');
  const file = kept('lost.json', lost);
  const said = soffit('cameras', file, '--json');
  expect(said.code).toBe(0);
  expect(said.err).toMatch(/Note: “C2” lost its wall/);
  expect((JSON.parse(said.out) as { cameras: { id: string }[] }).cameras.map(({ id }) => id)).toEqual([
    'C1',
    'C3',
  ]);
  expect(soffit('cover', file, '--camera', 'C2')).toMatchObject({ code: 2, out: '' });
  expect(soffit('cells', file, '--camera', 'C2')).toMatchObject({ code: 2, out: '' });
});
