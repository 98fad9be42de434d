import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { Service } from './edges.ts';

/**
 * Serves the page, if it is built: its files, and for every other address that a person may have open the
 * page itself, which reads the address.
 */
export async function servePage(app: Service, folder: string): Promise<void> {
  if (!existsSync(join(folder, 'index.html'))) return;
  await app.register(fastifyStatic, {
    root: folder,
    index: ['index.html'],
    dotfiles: 'ignore',
    cacheControl: false,
    setHeaders: (reply, path) => {
      const named = dirname(path).startsWith(join(folder, 'assets'));
      reply.setHeader('cache-control', named ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  app.addHook('onRequest', (request, reply, done) => {
    if (isPlaceInPage(request.method, request.url, request.headers.accept)) {
      void reply.sendFile('index.html');
      return;
    }
    done();
  });
}

function isPlaceInPage(method: string, url: string, accept = ''): boolean {
  const path = url.split('?')[0] ?? '';
  if (method !== 'GET' || path === '/' || !accept.includes('text/html')) return false;
  return !/^\/(?:api|problems|assets)(?:\/|$)/.test(path) && !/\.\w+$/.test(path);
}
