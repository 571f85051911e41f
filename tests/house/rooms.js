/**
 * The house as data: which room may import from which, and which packages it
 * may use. The lint configuration and the layer test both read it.
 */

/**
 * @typedef {object} Room
 * @property {string} name
 * @property {boolean} pure        no DOM, React, three, clock or chance
 * @property {readonly string[]} values    rooms it may import at run time
 * @property {readonly string[]} types     rooms it may `import type` from
 * @property {readonly string[] | 'any'} packages  packages it may use; 'any' means all that `keepers` leaves open
 */

/**
 * Packages that live in few rooms only, types included.
 * @type {Readonly<Record<string, readonly string[]>>}
 */
export const keepers = {
  zod: ['plan', 'exchange', 'worker'],
  three: ['view3d'],
  'three-mesh-bvh': [],
  'playwright-core': [],
};

/**
 * @typedef {object} Plan
 * @property {string} name
 * @property {true} [pure]
 * @property {readonly string[]} [values]     only these rooms
 * @property {readonly string[]} [valuesBut]  every room above, except these
 * @property {'pure'} [types]                 only rooms above the line; without it, every room above
 * @property {readonly string[]} [typesBut]   every room above, except these
 * @property {readonly string[]} [packages]
 */

/** @type {readonly Plan[]} */
const floors = [
  { name: 'base', pure: true, values: [] },
  { name: 'optics', pure: true, values: ['base'] },
  { name: 'model', pure: true, values: ['base'], packages: ['earcut', 'clipper2-ts', 'delaunator'] },
  { name: 'kit', pure: true, values: ['base'] },
  {
    name: 'sight',
    pure: true,
    values: ['base', 'optics', 'model'],
    packages: ['earcut', 'clipper2-ts'],
  },
  { name: 'coverage', pure: true, valuesBut: ['kit'] },
  { name: 'brief', pure: true, valuesBut: ['kit'] },
  { name: 'plan', pure: true, values: ['base', 'model'], packages: ['zod'] },
  { name: 'assess', pure: true, valuesBut: [] },
  { name: 'mend', pure: true, valuesBut: [] },
  {
    name: 'exchange',
    pure: true,
    values: ['base', 'model', 'plan', 'assess'],
    packages: ['zod', 'fflate', 'earcut', 'clipper2-ts', '@cantoo/pdf-lib'],
  },
  {
    name: 'draw',
    pure: true,
    values: ['base', 'optics', 'plan', 'assess'],
  },
  { name: 'handover', pure: true, valuesBut: ['exchange'] },
  { name: 'cli', valuesBut: [] },
  { name: 'worker', valuesBut: ['cli'] },
  { name: 'editor', values: ['plan', 'model', 'optics', 'base'], typesBut: ['cli'] },
  { name: 'answers', values: [], types: 'pure' },
  { name: 'fittings', values: ['base', 'draw'], typesBut: ['cli'] },
  {
    name: 'view3d',
    values: ['editor', 'answers', 'fittings', 'draw', 'base', 'optics'],
    typesBut: ['cli'],
  },
  {
    name: 'panels',
    values: ['editor', 'answers', 'fittings', 'draw', 'base', 'optics', 'handover'],
    typesBut: ['cli', 'view3d'],
  },
  { name: 'app', valuesBut: ['cli'] },
];

/** @type {readonly Room[]} */
export const rooms = floors.map((floor, index) => {
  const above = floors.slice(0, index);
  const names = above.map((room) => room.name);
  const open = above.filter((room) => floor.types !== 'pure' || room.pure === true);
  return {
    name: floor.name,
    pure: floor.pure === true,
    values: floor.values ?? names.filter((name) => !floor.valuesBut?.includes(name)),
    types: open.map((room) => room.name).filter((name) => !floor.typesBut?.includes(name)),
    packages: floor.packages ?? (floor.pure === true ? [] : 'any'),
  };
});
