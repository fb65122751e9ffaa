import type { Plugin } from 'vite';

/** The part of zod that writes JSON schemas: the API documents itself with it, a page never does. */
const part = /zod\/v4\/core\/(?:to-json-schema|json-schema-processors)\.js$/;

/** Leaves it out of the page; whoever called it there would be told. */
export function withoutJsonSchema(): Plugin {
  return {
    name: 'without-json-schema',
    enforce: 'pre',
    transform(code, id) {
      if (!part.test(id)) return null;
      const names = [...code.matchAll(/^export (?:const|function|class) (\w+)/gm)].map(([, name]) => name);
      if (names.length === 0) throw new Error(`${id} exports in another way now`);
      const none = "const none = () => () => { throw new Error('a page makes no JSON schema'); };";
      return { code: [none, ...names.map((name) => `export const ${name ?? ''} = none;`)].join('\n'), map: null };
    },
  };
}
