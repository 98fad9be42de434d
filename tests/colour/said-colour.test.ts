import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import { ISCC_NBS } from '../../server/colour/iscc-nbs.ts';
import { nameOf } from '../../server/colour/names.ts';
import {
  allSaidColours,
  nearlySaid,
  saidColour,
  SPREAD_OF_NAME,
} from '../../server/colour/said-colour.ts';
import { labFromHex } from '../../server/colour/spaces.ts';

const FINE = new Map(
  ISCC_NBS.flatMap(([, , fine]) =>
    fine.map(([name, hex]) => [name.toLowerCase(), labFromHex(hex)] as const),
  ),
);

describe('a colour said in words', () => {
  // NBS Special Publication 440 (1976): 267 fine names; the shorter ones are those that screens show.
  test('is every fine name of ISCC-NBS, at its centroid, and every name that a screen shows', () => {
    for (const name of FINE.keys()) expect(saidColour(name)?.words).toBe(name);
    for (const lab of FINE.values()) expect(saidColour(nameOf(lab).words)).not.toBeNull();
    expect(
      difference(saidColour('dark reddish orange')!.lab, FINE.get('dark reddish orange')!),
    ).toBe(0);
  });

  // W3C, CSS Color Module Level 4, section 6.1: forestgreen is #228b22, teal is #008080.
  test('is a colour word of CSS, also with its words apart', () => {
    expect(saidColour('forest green')!.lab).toEqual(labFromHex('#228b22'));
    expect(saidColour('teal')!.lab).toEqual(labFromHex('#008080'));
  });

  test('is read in any spelling, and unknown words stand for none', () => {
    expect(saidColour('  Dark GREYISH   Blue ')?.words).toBe('dark grayish blue');
    expect(saidColour('dark-grayish-blue')?.words).toBe('dark grayish blue');
    for (const text of ['', ' ', 'constructor', '__proto__', 'moss and clay', '🟦'])
      expect(saidColour(text)).toBeNull();
  });

  test('each word stands for one colour, and a name of several regions is less sure', () => {
    const all = allSaidColours();
    expect(new Set(all.map(({ words }) => words)).size).toBe(all.length);
    expect(all.length).toBeGreaterThan(400);
    expect(saidColour('blue')!.uncertainty).toBeGreaterThan(SPREAD_OF_NAME + 2);
    expect(saidColour('dark blue')!.uncertainty).toBe(SPREAD_OF_NAME);
  });

  test('its spread is that of the colours of an even lattice in sRGB about the centroids of their names', () => {
    let [sum, count] = [0, 0];
    for (let r = 0; r <= 16; r++)
      for (let g = 0; g <= 16; g++)
        for (let b = 0; b <= 16; b++) {
          const byte = (part: number): string =>
            Math.round((part * 255) / 16)
              .toString(16)
              .padStart(2, '0');
          const lab = labFromHex(`#${byte(r)}${byte(g)}${byte(b)}`);
          sum += difference(lab, FINE.get(nameOf(lab).fine)!) ** 2;
          count += 1;
        }
    expect(Math.abs(Math.sqrt(sum / count) - SPREAD_OF_NAME)).toBeLessThan(0.1);
  });

  test('words that are not known bring those that share the most with them', () => {
    expect(nearlySaid('mossy dark green')[0]).toBe('dark green');
    expect(nearlySaid('bluish teal')).toContain('teal');
    expect(nearlySaid('xyzzy')).toEqual([]);
  });
});
