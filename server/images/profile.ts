import type { Picture } from '../photo/picture.ts';

/**
 * Whether an ICC profile is one whose pixels we take as they are, because our own loops know its
 * primaries: sRGB and Display P3, told by the primaries' colours in it and not by its name.
 *
 * Takes       the profile as embedded in the file.
 * Gives       the primaries, or null for any other profile (its pixels are converted to sRGB).
 * Source      ICC.1:2022, 7 (header and tag table), 10.31 (XYZType); the colours of the primaries under
 *             D50 are those of the published sRGB and Display P3 profiles.
 */
export function primariesOf(profile: Uint8Array): Picture['primaries'] | null {
  const colours = ['rXYZ', 'gXYZ', 'bXYZ'].map((tag) => xyzOf(profile, tag));
  if (colours.some((xyz) => xyz === null)) return null;
  const flat = colours.flatMap((xyz) => xyz ?? []);
  for (const [name, primaries] of Object.entries(PRIMARIES))
    if (flat.every((value, index) => Math.abs(value - primaries[index]!) < CLOSE))
      return name as Picture['primaries'];
  return null;
}

const CLOSE = 0.004;

const PRIMARIES: Record<Picture['primaries'], readonly number[]> = {
  srgb: [0.4361, 0.2225, 0.0139, 0.3851, 0.7169, 0.0971, 0.1431, 0.0606, 0.7141],
  'display-p3': [0.5151, 0.2412, -0.0011, 0.292, 0.6922, 0.0419, 0.1571, 0.0666, 0.7841],
};

function xyzOf(profile: Uint8Array, tag: string): number[] | null {
  const view = new DataView(profile.buffer, profile.byteOffset, profile.byteLength);
  if (profile.length < 132) return null;
  const count = Math.min(view.getUint32(128), 100);
  for (let entry = 132; entry + 12 <= Math.min(profile.length, 132 + 12 * count); entry += 12) {
    if (String.fromCharCode(...profile.subarray(entry, entry + 4)) !== tag) continue;
    const at = view.getUint32(entry + 4);
    if (at + 20 > profile.length) return null;
    return [8, 12, 16].map((offset) => view.getInt32(at + offset) / 65536);
  }
  return null;
}

/** The primaries of a code point: 12 are those of Display P3, all others are taken for sRGB (ITU-T H.273, table 2). */
export function primariesOfCode(code: number): Picture['primaries'] {
  return code === 12 ? 'display-p3' : 'srgb';
}
