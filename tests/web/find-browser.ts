import { existsSync } from 'node:fs';
import path from 'node:path';

/** Where browsers of the Chromium family usually stand on Linux, macOS and Windows. */
function usualPlaces(): string[] {
  const windows = [
    process.env.PROGRAMFILES,
    process.env['PROGRAMFILES(X86)'],
    process.env.LOCALAPPDATA,
  ]
    .filter((folder) => folder !== undefined)
    .flatMap((folder) => [
      path.join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
      path.join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
      path.join(folder, 'Chromium', 'Application', 'chrome.exe'),
    ]);
  return [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/microsoft-edge',
    '/snap/bin/chromium',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ...windows,
  ];
}

/** The browser that the journeys run in: CHROMIUM_PATH first, then the usual places; null when there is none. */
export function findBrowser(): string | null {
  const asked = process.env.CHROMIUM_PATH;
  const places = asked === undefined ? usualPlaces() : [asked];
  return places.find((place) => existsSync(place)) ?? null;
}

/** What is said when no browser is found. */
export const NO_BROWSER =
  'no browser of the Chromium family was found: install one, or set CHROMIUM_PATH to where it stands';
