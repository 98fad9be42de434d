/** Where code stands that runs in processes and threads of its own, compiled or from its sources. */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const COMPILED = import.meta.url.endsWith('.js');

/** Words for Node.js before the name of a module, so that it can be read as it stands. */
export const READING: readonly string[] = COMPILED ? [] : ['--import', readsSources()];

/** A file beside this one, compiled or not. */
export function beside(name: string): URL {
  return new URL(`./${name}.${COMPILED ? 'js' : 'ts'}`, import.meta.url);
}

/** A worker does not inherit the reading of .ts sources, so it is told to learn it first. */
function readsSources(): string {
  const api = pathToFileURL(createRequire(import.meta.url).resolve('tsx/esm/api')).href;
  const script = `import { register } from '${api.replace(/cjs$/, 'mjs')}'; register();`;
  return `data:text/javascript,${encodeURIComponent(script)}`;
}
