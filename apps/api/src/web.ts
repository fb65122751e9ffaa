import path from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import express, { type NextFunction, type Request, type Response } from 'express';

const year = 31_536_000;

/** The built web client: hashed files forever, everything else asked again; any page address gets the one page. */
export function serveWeb(app: NestExpressApplication, folder: string): void {
  app.use('/assets', express.static(path.join(folder, 'assets'), { immutable: true, maxAge: year * 1000, index: false, fallthrough: true }));
  app.use(express.static(folder, { index: false, setHeaders: (response: Response) => response.setHeader('Cache-Control', 'no-cache') }));
  app.use((request: Request, response: Response, next: NextFunction) => {
    if (!isPage(request)) {
      next();
      return;
    }
    response.setHeader('Cache-Control', 'no-cache');
    response.sendFile('index.html', { root: folder }, (error?: Error) => {
      if (error !== undefined && !response.headersSent) next(error);
    });
  });
}

function isPage(request: Request): boolean {
  const isOurs = /^\/(api|health|ready|assets)(\/|$)/.test(request.path);
  return request.method === 'GET' && !isOurs && request.accepts(['html', 'json']) === 'html';
}
