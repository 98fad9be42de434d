// @ts-check
/**
 * Who may import whom in server/. One table, read by the lint rule (.eslint.config.mjs)
 * and by the test beside this file.
 */

/** Folder of server/ -> the folders of server/ that it may import. Top files may import everything. */
export const HOUSE = {
  refusals: [],
  recall: [],
  lengths: ['refusals'],
  geometry: ['refusals'],
  colour: ['refusals'],
  photo: ['refusals', 'geometry', 'colour', 'pattern', 'lengths'],
  pattern: ['refusals', 'geometry', 'colour'],
  pad: ['refusals', 'geometry', 'colour', 'pattern', 'lengths'],
  layouts: ['refusals', 'lengths', 'geometry'],
  supplies: ['refusals', 'colour', 'pad'],
  cutting: ['refusals', 'geometry', 'layouts', 'lengths'],
  plan: [
    'refusals',
    'recall',
    'geometry',
    'lengths',
    'pad',
    'layouts',
    'supplies',
    'colour',
    'pattern',
    'cutting',
  ],
  guide: [
    'refusals',
    'geometry',
    'lengths',
    'pad',
    'layouts',
    'supplies',
    'colour',
    'pattern',
    'cutting',
    'plan',
  ],
  contract: [],
  images: ['refusals', 'photo', 'geometry', 'colour', 'guide'],
  printing: ['refusals', 'guide', 'geometry', 'lengths'],
  store: [
    'refusals',
    'pad',
    'supplies',
    'layouts',
    'cutting',
    'plan',
    'colour',
    'pattern',
    'geometry',
    'lengths',
    'photo',
  ],
  http: '*',
};

/** Folders that know no clock, no chance, no files, no network: only values in and values out. */
export const PURE = [
  'refusals',
  'recall',
  'lengths',
  'geometry',
  'colour',
  'photo',
  'pattern',
  'pad',
  'layouts',
  'supplies',
  'cutting',
  'plan',
  'guide',
];

/** Outside package -> the only folders of server/ that may import it ('top' stands for the top files). */
export const DOORS = {
  sharp: ['images'],
  'libheif-js': ['images'],
  '@libsql/client': ['store'],
  kysely: ['store'],
  pg: ['store'],
  '@aws-sdk/client-s3': ['store'],
  'tar-stream': ['store'],
  'prom-client': ['http'],
  pdfkit: ['printing'],
  culori: ['colour'],
  'ml-kmeans': ['colour'],
  'polyclip-ts': ['layouts', 'geometry'],
  'csv-parse': ['supplies'],
  'csv-stringify': ['supplies'],
  zod: ['contract', 'http', 'top'],
  fastify: ['http', 'top'],
  piscina: ['top'],
};

/**
 * What is wrong with one import, or null.
 * @param {string} file path from the project's root with forward slashes: `server/pad/pad.ts`
 * @param {string} specifier as written in the import
 * @returns {string | null}
 */
export function importFault(file, specifier) {
  const [top, ...rest] = file.split('/');
  if (top === 'web') return webFault(file, specifier);
  if (top !== 'server') return null;
  const folder = rest.length > 1 ? rest[0] : 'top';
  if (specifier.startsWith('.')) return directionFault(file, folder, specifier);
  if (specifier.startsWith('node:')) {
    return PURE.includes(folder) ? `${folder} is pure and may not import ${specifier}` : null;
  }
  const name = specifier.startsWith('@')
    ? specifier.split('/').slice(0, 2).join('/')
    : specifier.split('/')[0];
  const doors =
    name.startsWith('fastify') || name.startsWith('@fastify/') ? DOORS.fastify : DOORS[name];
  return doors !== undefined && !doors.includes(folder)
    ? `${name} may be imported only by ${doors.join(', ')}, not by ${folder}`
    : null;
}

function directionFault(file, folder, specifier) {
  const target = resolve(file, specifier);
  if (!target.startsWith('server/'))
    return folder === 'top' ? null : `${folder} may not import ${target}`;
  const [, targetFolder, ...more] = target.split('/');
  if (folder === 'top' || HOUSE[folder] === '*') return null;
  if (more.length === 0) return `${folder} may not import the top file ${target}`;
  if (targetFolder === folder || HOUSE[folder]?.includes(targetFolder)) return null;
  return `${folder} may not import ${targetFolder}`;
}

/** What the page shares with the service beside the contract: files that import nothing. */
export const SHARED = ['server/layouts/layer-names.ts', 'server/layouts/greeting-room.ts'];

/** The page takes types of the contract, and what it works out as the service does. */
function webFault(file, specifier) {
  if (!specifier.startsWith('.')) return null;
  const target = resolve(file, specifier);
  if (!target.startsWith('server/')) return null;
  return target.startsWith('server/contract/') || SHARED.includes(target)
    ? null
    : `web may import only server/contract and ${SHARED.join(', ')}, not ${target}`;
}

function resolve(file, specifier) {
  const parts = file.split('/').slice(0, -1);
  for (const step of specifier.split('/')) {
    if (step === '..') parts.pop();
    else if (step !== '.') parts.push(step);
  }
  return parts.join('/');
}
