// @ts-check
// Runs the examples of one bundled test file in this very thread: no process, no module graph, so a mutant costs milliseconds.
import { createRequire } from 'node:module';
import vm from 'node:vm';
import { ASYMMETRIC_MATCHERS_OBJECT, chai, customMatchers, GLOBAL_EXPECT, JestAsymmetricMatchers, JestChaiExpect, JestExtend, setState } from '@vitest/expect';

/** @typedef {() => unknown} Body */
/** @typedef {{ before: Body[], started: boolean, each: Body[] }} Group */
/** @typedef {{ name: string, body: Body, groups: readonly Group[] }} Example */

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
const expect = Object.assign((/** @type {unknown} */ value, /** @type {string | undefined} */ message) => chai.expect(value, message), chai.expect, /** @type {Record<symbol, object>} */ (/** @type {unknown} */ (globalThis))[ASYMMETRIC_MATCHERS_OBJECT]);
Object.defineProperty(globalThis, GLOBAL_EXPECT, { value: expect, writable: true, configurable: true });
setState({ assertionCalls: 0 }, /** @type {never} */ (expect));
/** @type {{ extend: (on: object, matchers: object) => void }} */ (/** @type {unknown} */ (chai.expect)).extend(expect, customMatchers);

/** @param {readonly unknown[]} cases @param {(name: string, body: Body) => void} add */
const each = (cases, add) => (/** @type {string} */ name, /** @type {(...row: unknown[]) => unknown} */ body) => {
  cases.forEach((row, index) => { add(`${name} [${index}]`, () => (Array.isArray(row) ? body(...row) : body(row))); });
};

/** Generated cases among examples do not count either: they would kill by luck. */
const GENERATED = /fast_check/;

/** @param {Example[]} examples */
function standIn(examples) {
  /** @type {Group[]} */
  let groups = [{ before: [], started: false, each: [] }];
  let path = '';
  const innermost = () => /** @type {Group} */ (groups[groups.length - 1]);
  const describe = (/** @type {string} */ name, /** @type {Body} */ body) => {
    const outside = { groups, path };
    groups = [...groups, { before: [], started: false, each: [] }];
    path = `${path}${name} > `;
    try {
      body();
    } finally {
      ({ groups, path } = outside);
    }
  };
  const test = (/** @type {string} */ name, /** @type {Body} */ body) => {
    if (!GENERATED.test(String(body))) examples.push({ name: path + name, body, groups });
  };
  const withEach = Object.assign(test, { each: (/** @type {unknown[]} */ cases) => each(cases, test) });
  return {
    describe: Object.assign(describe, { each: (/** @type {unknown[]} */ cases) => each(cases, describe) }), test: withEach, it: withEach, expect,
    beforeAll: (/** @type {Body} */ body) => { innermost().before.push(body); }, beforeEach: (/** @type {Body} */ body) => { innermost().each.push(body); },
    vi: { setConfig: () => undefined },
  };
}

const require = createRequire(import.meta.url);

/**
 * @param {vm.Script} script `(function ($m, $g, require, exports, module) { ... })`
 * @param {(id: number) => boolean} on @param {() => void} guard
 * @returns {Example[]} the examples, collected but not run
 */
export function collect(script, on, guard) {
  /** @type {Example[]} */
  const examples = [];
  const vitest = standIn(examples);
  const load = (/** @type {string} */ name) => (name === 'vitest' ? vitest : require(name));
  script.runInThisContext()(on, guard, load, {}, { exports: {} });
  return examples;
}

/** @param {Example} example */
export async function carryOut({ body, groups }) {
  for (const group of groups) {
    if (!group.started) {
      group.started = true;
      for (const before of group.before) await before();
    }
    for (const before of group.each) await before();
  }
  await body();
}

/** @param {{ name: string, code: string }} script */
export const compiled = ({ name, code }) => new vm.Script(`(function ($m, $g, require, exports, module) {${code}\n})`, { filename: name });
