import type { Plugin } from 'vite';
import { SHELF } from './shelf-name.ts';

/** Writes shelf.json: the addresses that the offline worker lays by so that the page opens without the service. */
export function shelf(): Plugin {
  return {
    name: SHELF,
    apply: 'build',
    generateBundle(_options, bundle) {
      const files = Object.keys(bundle).filter((name) => /\.(js|css|woff2)$/.test(name));
      this.emitFile({
        type: 'asset',
        fileName: 'shelf.json',
        source: JSON.stringify(['/', ...files.map((name) => `/${name}`)]),
      });
    },
  };
}
