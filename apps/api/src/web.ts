import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import express, { type NextFunction, type Request, type Response } from 'express';

const year = 31_536_000;

/** The built web client: hashed files forever, everything else asked again; any page address gets the one page. */
export function serveWeb(app: NestExpressApplication, folder: string): void {
  const first = firstOf(folder);
  app.use(compressed(folder));
  app.use('/assets', express.static(path.join(folder, 'assets'), { immutable: true, maxAge: year * 1000, index: false, fallthrough: true }));
  app.use(express.static(folder, { index: false, setHeaders: (response: Response) => response.setHeader('Cache-Control', 'no-cache') }));
  app.use((request: Request, response: Response, next: NextFunction) => {
    if (!isPage(request)) {
      next();
      return;
    }
    response.setHeader('Cache-Control', 'no-cache');
    if (!otherApps.includes(request.path)) response.setHeader('Link', linksTo(first, request));
    response.sendFile('index.html', { root: folder }, (error?: Error) => {
      if (error !== undefined && !response.headersSent) next(error);
    });
  });
}

/** Pages that are apps of their own. */
const otherApps = ['/drain', '/send'];

/** What a member's page needs next (first.json of the build); without a build nothing. */
interface First {
  readonly files: readonly string[];
  readonly words: Readonly<Record<string, string>>;
}

function firstOf(folder: string): First {
  const list = path.join(folder, 'first.json');
  return existsSync(list) ? (JSON.parse(readFileSync(list, 'utf8')) as First) : { files: [], words: {} };
}

/** Named with the page itself, so that it comes beside the first script and not after it. */
function linksTo({ files, words }: First, request: Request): string[] {
  const language = request.acceptsLanguages(Object.keys(words));
  const known = language === false ? undefined : words[language];
  return [...files, ...(known === undefined ? [] : [known])].map((file) => (file.endsWith('.css') ? `<${file}>; rel=preload; as=style; crossorigin` : `<${file}>; rel=modulepreload`));
}

const types: Readonly<Record<string, string>> = { '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8', '.svg': 'image/svg+xml' };

/** The build puts a compressed copy beside each file of text; whoever takes it gets that one. */
function compressed(folder: string) {
  // While the page is being developed there is no build.
  const files = existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : [];
  const copies = new Set(files.filter((name) => name.endsWith('.br')).map((name) => `/${name.split(path.sep).join('/')}`));
  return (request: Request, response: Response, next: NextFunction): void => {
    const type = types[path.extname(request.path)];
    if (type === undefined || !copies.has(`${request.path}.br`)) {
      next();
      return;
    }
    response.vary('Accept-Encoding');
    if (request.acceptsEncodings('br') === 'br') {
      request.url = request.url.replace(request.path, `${request.path}.br`);
      response.setHeader('Content-Encoding', 'br');
      response.setHeader('Content-Type', type);
    }
    next();
  };
}

function isPage(request: Request): boolean {
  const isOurs = /^\/(api|health|ready|assets)(\/|$)/.test(request.path);
  return request.method === 'GET' && !isOurs && request.accepts(['html', 'json']) === 'html';
}
