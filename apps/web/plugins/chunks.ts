import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Plugin, Rolldown } from 'vite';

type Context = Rolldown.ChunkingContext;

/**
 * What the crew's first page needs comes in few files, cut so that each can be made when it has come: what asks the office, the frame, the rules, the page.
 * Left to itself the build cuts along every import, and a phone waits for seventy small files.
 */
export function chunks(root: string): Rolldown.CodeSplittingOptions {
  const file = (name: string) => path.join(root, 'src', name);
  const sets = new Map<string, ReadonlySet<string>>();
  const needs = (context: Context, from: readonly string[], withLater = false): ReadonlySet<string> => {
    const key = from.join(' ');
    const known = sets.get(key) ?? reached(context, from.map(file), withLater);
    sets.set(key, known);
    return known;
  };
  const early = (context: Context) => needs(context, ['early.ts']);
  // What the first script imports at once is cut as it is: the order in which it runs matters.
  const atOnce = (context: Context) => needs(context, ['main.tsx']);
  const crew = (context: Context) => needs(context, ['app/App.tsx', 'app/pages/HomePage.tsx']);
  const others = (context: Context) => needs(context, ['app/CustomerApp.tsx', 'app/SendApp.tsx'], true);
  const group = (name: string, priority: number, has: (id: string, context: Context) => boolean) => ({
    name: (id: string, context: Context) => ((isOurs(id) || crewToo.test(id)) && !atOnce(context).has(id) && has(id, context) ? name : null), priority,
  });
  // What they import is in these files too, or in a larger one of a package.
  return {
    includeDependenciesRecursively: false,
    groups: [
      { name: 'frame', test: frameToo, priority: 4 },
      { name: 'rules', test: rulesToo, priority: 2.5 },
      { name: (id: string, context: Context) => (early(context).has(id) ? 'early' : null), priority: 3 },
      { name: 'asking', test: askingToo, priority: 2.5 },
      group('pages', 2, (id, context) => crew(context).has(id) && others(context).has(id)),
      group('crew', 1, (id, context) => crew(context).has(id) || crewToo.test(id)),
    ],
  };
}

// What the first pages take of packages, one by one: their index leads to all that they have. A test counts the files and bytes of both pages.
/** React and what asks: the frame of every page. */
const frameToo = /[/\\]node_modules[/\\](?:react|react-dom|scheduler|@tanstack[/\\](?:query-core|react-query))[/\\]/;
/** What a page says to the office and hears; imports nothing of the page, so that it is made before the rest is there. */
const askingToo = /[/\\]node_modules[/\\](?:zod|uuid)[/\\]|[/\\]src[/\\]lib[/\\](?:api|problem)\.ts$|[/\\]packages[/\\]contracts[/\\]src[/\\](?:jobs|identity|problem|common|access|endpoint|checklist[/\\](?:traits|wordings|types))\.ts$/;
/** Cut with the crew's pages. */
const crewToo = /[/\\]packages[/\\]text[/\\]src[/\\]lengths\.ts$/;
/** What the crew's home needs of the contracts, made ahead like the one above (`lib/ahead.ts`). */
const rulesToo = /[/\\]src[/\\]lib[/\\]ahead\.ts$|[/\\]packages[/\\]contracts[/\\]src[/\\](?:locate[/\\](?:privateLines|stops|verdict)|checklist[/\\](?:fold|failures|version|evidence|holdPoints|laidLine|marks|measures|ownLines|readings|stopped|digging|guards|causality|ties|asBuilt|names|cure|daily|keepOff)|checklists|found|foundFold|designs|document[/\\](?:schema|parts))\.ts$/;

/** The packages are cut by what is used of them: their index leads to all they have. */
const isOurs = (id: string): boolean => !/[/\\]packages[/\\]/.test(id);

/** Modules that these import, directly or through others; with what is asked for later, or without. */
function reached(context: Context, from: readonly string[], withLater: boolean): ReadonlySet<string> {
  const found = new Set<string>();
  const open = [...from];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    const info = context.getModuleInfo(id);
    open.push(...[...(info?.importedIds ?? []), ...(withLater ? (info?.dynamicallyImportedIds ?? []) : [])].filter(isOurs));
  }
  return found;
}

/**
 * Writes first.json: the files of a member's first page, each behind those that it imports, and the words of each language. The service names them
 * along with the page, so that they come beside its first script and not after it, and what others are made of comes and is made before them.
 */
export function firstFiles(): Plugin {
  return {
    name: 'first-files',
    apply: 'build',
    async writeBundle({ dir }, bundle) {
      const parts = Object.values(bundle).filter((item) => item.type === 'chunk');
      const first = imported(parts, parts.filter(({ isEntry, moduleIds }) => isEntry || moduleIds.some((id) => /[/\\]src[/\\](early|lib[/\\]ahead)\.ts$/.test(id))));
      const files = [...first.map(({ fileName }) => fileName), ...first.flatMap(({ viteMetadata }) => [...(viteMetadata?.importedCss ?? [])])];
      const words = parts.flatMap(({ fileName, moduleIds }) => moduleIds.flatMap((id) => {
        const language = /^\0words:(\w+)\/crew$/.exec(id)?.[1];
        return language === undefined ? [] : [[language, `/${fileName}`]];
      }));
      await writeFile(path.join(dir ?? 'dist', 'first.json'), JSON.stringify({ files: files.map((name) => `/${name}`), words: Object.fromEntries(words) as unknown }));
    },
  };
}

/** These and all that they import, each behind what it imports. */
function imported(parts: readonly Rolldown.OutputChunk[], from: readonly Rolldown.OutputChunk[]): readonly Rolldown.OutputChunk[] {
  const found = new Set<Rolldown.OutputChunk>();
  const open = new Set<Rolldown.OutputChunk>();
  const take = (part: Rolldown.OutputChunk): void => {
    if (open.has(part)) return;
    open.add(part);
    for (const name of part.imports) for (const one of parts) if (one.fileName === name) take(one);
    found.add(part);
  };
  // The smallest first: the one that asks the office is a small one.
  for (const part of [...from].sort((a, b) => a.code.length - b.code.length)) take(part);
  return [...found];
}

/** What is asked first has a script of its own, which runs before the rest has come. */
export function earlyScript(): Plugin {
  return {
    name: 'early-script',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (_, { bundle }) => {
        const early = Object.values(bundle ?? {}).find((item) => item.type === 'chunk' && item.moduleIds.some((id) => /[/\\]src[/\\]early\.ts$/.test(id)));
        if (early === undefined) throw new Error('the build has no early script');
        return [{ tag: 'script', attrs: { type: 'module', async: true, src: `/${early.fileName}` }, injectTo: 'head-prepend' }];
      },
    },
  };
}
