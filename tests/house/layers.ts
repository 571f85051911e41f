import path from 'node:path';
import { importsOf } from './imports.ts';
import { keepers, rooms } from './rooms.js';

/** Source by file name, from the project's root, with forward slashes: `src/base/vector.ts`. */
export type Sources = ReadonlyMap<string, string>;

const roomByName = new Map(rooms.map((room) => [room.name, room]));

const roomOf = (file: string): string | undefined => /^src\/([^/]+)\/./.exec(file)?.[1];

const covers = (names: readonly string[], specifier: string): boolean =>
  names.some((name) => specifier === name || specifier.startsWith(`${name}/`));

const packageFault = (home: string, specifier: string): string | undefined => {
  const room = roomByName.get(home);
  if (room === undefined) return undefined;
  const keeper = Object.entries(keepers).find(([name]) => covers([name], specifier));
  const isKept = keeper !== undefined && !keeper[1].includes(home);
  const isListed = room.packages === 'any' || covers(room.packages, specifier);
  return isKept || !isListed ? `${home} may not use the package ${specifier}` : undefined;
};

const targetFault = (home: string, target: string, isType: boolean): string | undefined => {
  const room = roomByName.get(home);
  const other = roomOf(target);
  if (room === undefined || other === home) return undefined;
  if (other === undefined) {
    // Tables, schemas and demo plans are for every room, pictures and letters for the window.
    const isOpen = target.startsWith('shared/') || (target.startsWith('assets/') && !room.pure);
    return isOpen ? undefined : `${home} may not import ${target}, which is in no room`;
  }
  if (room.values.includes(other) || (isType && room.types.includes(other))) return undefined;
  const isHalfOpen = room.types.includes(other);
  return `${home} may ${isHalfOpen ? 'take only types from' : 'not import'} ${other}: ${target}`;
};

/** The circle that comes back to `start` through imports of values, or undefined. */
const circleFrom = (start: string, values: ReadonlyMap<string, readonly string[]>): string | undefined => {
  const seen = new Set<string>();
  const waiting = [[start]];
  for (let way = waiting.pop(); way !== undefined; way = waiting.pop()) {
    for (const next of values.get(way.at(-1) ?? start) ?? []) {
      if (next === start) return [...way, start].join(' → ');
      if (!seen.has(next)) waiting.push([...way, next]);
      seen.add(next);
    }
  }
  return undefined;
};

/**
 * What breaks the house in these sources, a sentence each: an import upwards or
 * sideways, a package out of its room, a file in no room, a circle of modules.
 * `modules` is how many were read, so that a check of nothing can be seen.
 */
export const layerFaults = (sources: Sources): { readonly modules: number; readonly faults: string[] } => {
  const faults: string[] = [];
  const values = new Map<string, readonly string[]>();
  for (const [file, source] of sources) {
    const home = roomOf(file);
    if (home === undefined || !roomByName.has(home)) {
      faults.push(`${file}: src holds only the rooms of tests/house/rooms.js`);
      continue;
    }
    const reached: string[] = [];
    for (const { specifier, isType } of importsOf(file, source)) {
      const isRelative = /^\.{1,2}\//.test(specifier);
      const target = path.posix.join(path.posix.dirname(file), specifier.replace(/\?.*$/, ''));
      const fault = isRelative ? targetFault(home, target, isType) : packageFault(home, specifier);
      if (fault !== undefined) faults.push(`${file}: ${fault}`);
      if (isRelative && !isType) reached.push(target);
    }
    values.set(file, reached);
  }
  for (const file of values.keys()) {
    const circle = circleFrom(file, values);
    if (circle !== undefined) faults.push(`circle: ${circle}`);
  }
  return { modules: values.size, faults };
};
