import { expect, expectTypeOf } from 'vitest';

/** @typedef {() => unknown} Step */
/**
 * @typedef {object} Suite
 * @property {Suite | null} outer
 * @property {string} name
 * @property {Record<'beforeAll' | 'afterAll' | 'beforeEach' | 'afterEach', Step[]>} hooks
 */
/** @typedef {{ name: string, suite: Suite, run: Step }} Test */

/** Milliseconds of work so far, which on a busy machine tell more than the clock. */
export const spent = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/**
 * As much of vitest as the tests of pure rooms use, so that chosen tests run at once in the thread that asks for them:
 * vitest itself needs a second for a run. What is expected is judged by vitest's own `expect`.
 */
export const gathering = () => {
  /** @type {Test[]} */
  const tests = [];
  /** @param {Suite | null} outer @param {string} name @returns {Suite} */
  const newSuite = (outer, name) => ({
    outer,
    name,
    hooks: { beforeAll: [], afterAll: [], beforeEach: [], afterEach: [] },
  });
  let current = newSuite(null, '');
  /** @type {Promise<unknown>[]} */
  const open = [];

  /** @param {string} name @param {Step} inside */
  const describe = (name, inside) => {
    const outer = current;
    current = newSuite(outer, `${outer.name}${name} › `);
    const result = inside();
    if (result instanceof Promise) open.push(result);
    current = outer;
  };
  /** @param {string} name @param {...unknown} rest  options, if any, stand on either side of the step */
  const test = (name, ...rest) => {
    const run = rest.find((part) => typeof part === 'function');
    if (typeof run !== 'function') throw new TypeError(`${name}: no step`);
    const known = tests.filter((other) => other.name === current.name + name).length;
    tests.push({
      name: current.name + name + (known > 0 ? ` #${known + 1}` : ''),
      suite: current,
      run: () => run(),
    });
  };
  /** @param {(name: string, step: Step, ...rest: unknown[]) => void} declare */
  const each =
    (declare) =>
    (/** @type {readonly unknown[]} */ rows) =>
    (
      /** @type {string} */ name,
      /** @type {(...row: unknown[]) => unknown} */ step,
      /** @type {unknown} */ options,
    ) => {
      rows.forEach((row, index) =>
        declare(`${name} [${index}]`, () => (Array.isArray(row) ? step(...row) : step(row)), options),
      );
    };
  /** @param {keyof Suite['hooks']} kind */
  const hook = (kind) => (/** @type {Step} */ step) => void current.hooks[kind].push(step);

  const api = {
    describe: Object.assign(describe, { each: each(describe) }),
    test: Object.assign(test, { each: each(test) }),
    it: Object.assign(test, { each: each(test) }),
    expect,
    expectTypeOf,
    beforeAll: hook('beforeAll'),
    afterAll: hook('afterAll'),
    beforeEach: hook('beforeEach'),
    afterEach: hook('afterEach'),
  };

  /** @param {Suite | null} suite @returns {Suite[]} */
  const outward = (suite) => (suite === null ? [] : [suite, ...outward(suite.outer)]);
  /** @param {readonly Suite[]} suites @param {keyof Suite['hooks']} kind */
  const all = async (suites, kind) => {
    for (const suite of suites) for (const step of suite.hooks[kind]) await step();
  };

  /**
   * Runs tests one after the other.
   * @param {(name: string) => boolean} isWanted
   * @param {(name: string, fault: unknown, ms: number) => boolean} after  whether to go on
   * @param {() => void} [shared]  told after steps that more than one test stands on
   */
  const run = async (isWanted, after, shared) => {
    await Promise.all(open);
    /** @type {Set<Suite>} */
    const entered = new Set();
    for (const { name, suite, run: step } of tests) {
      if (!isWanted(name)) continue;
      const inwards = outward(suite).reverse();
      const started = spent();
      /** @type {unknown} */
      let fault = null;
      try {
        const fresh = inwards.filter((one) => !entered.has(one));
        for (const one of fresh) entered.add(one);
        await all(fresh, 'beforeAll');
        shared?.();
        await all(inwards, 'beforeEach');
        await step();
        await all(outward(suite), 'afterEach');
      } catch (error) {
        fault = error ?? new Error('thrown: nothing');
      }
      if (!after(name, fault, spent() - started)) break;
    }
    await all([...entered].reverse(), 'afterAll');
  };
  return { api, run };
};
