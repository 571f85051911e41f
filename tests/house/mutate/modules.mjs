import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import vm from 'node:vm';
import { transformWithOxc } from 'vite';

/** @typedef {import('node:vm').Module} Module */

/** Plain JavaScript of a file of the project. @param {string} file @param {string} text */
export const plainCode = async (file, text) =>
  file.endsWith('.ts') ? (await transformWithOxc(text, file, { sourcemap: false })).code : text;

/** @type {Map<string, Promise<string>>} */
const codes = new Map();
/** @param {string} file */
const codeOf = (file) => {
  const known = codes.get(file);
  if (known !== undefined) return known;
  const made = plainCode(file, readFileSync(file, 'utf8'));
  codes.set(file, made);
  return made;
};

/** A module that hands out what is there already. @param {string} name @param {Record<string, unknown>} values */
const given = (name, values) =>
  new vm.SyntheticModule(
    Object.keys(values),
    function () {
      for (const [key, value] of Object.entries(values)) this.setExport(key, value);
    },
    { identifier: name },
  );

/**
 * Loads a test file with all files of the project that it needs, everything anew, so that no run leaves anything behind
 * for the next; packages are shared. Needs Node's `--experimental-vm-modules`.
 * @param {string} file
 * @param {Record<string, unknown>} testApi  what stands in for vitest
 * @param {ReadonlyMap<string, string>} replaced  plain JavaScript of files that are not as on the disk
 */
export const loadFresh = async (file, testApi, replaced) => {
  /** @type {Map<string, Promise<Module>>} */
  const loaded = new Map();

  /** @param {string} name @returns {Promise<Module>} */
  const make = async (name) => {
    if (name === 'vitest') return given(name, testApi);
    if (!path.isAbsolute(name)) return given(name, await import(name));
    if (name.endsWith('.json')) return given(name, { default: JSON.parse(await codeOf(name)) });
    return new vm.SourceTextModule(replaced.get(name) ?? (await codeOf(name)), {
      identifier: name,
      initializeImportMeta: (meta) => {
        const url = pathToFileURL(name).href;
        Object.assign(meta, { url, dirname: path.dirname(name), filename: name });
      },
      importModuleDynamically: async (wanted) => {
        const module = await find(wanted, name);
        if (module.status === 'unlinked') await module.link(link);
        await module.evaluate();
        return module;
      },
    });
  };
  /** @param {string} wanted @param {string} from */
  const find = (wanted, from) => {
    const near = wanted.startsWith('.') || path.isAbsolute(wanted);
    const package_ = () =>
      wanted.startsWith('node:') || wanted === 'vitest' ? wanted : resolved(wanted, from);
    const name = near ? path.resolve(path.dirname(from), wanted) : package_();
    const known = loaded.get(name);
    if (known !== undefined) return known;
    const made = make(name);
    loaded.set(name, made);
    return made;
  };
  /** @param {string} wanted @param {Module} from */
  const link = (wanted, from) => find(wanted, from.identifier);

  const module = await find(file, file);
  await module.link(link);
  await module.evaluate();
};

/** The name of a package that `import` of this very file understands. @param {string} wanted @param {string} from */
const resolved = (wanted, from) => {
  try {
    return import.meta.resolve(wanted);
  } catch {
    return pathToFileURL(createRequire(from).resolve(wanted)).href;
  }
};
