import { readFileSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { makeScene } from '../../sample-swatches/scene/make-scene.ts';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import { demo, shoots } from '../../sample-swatches/shoots.ts';
import { legible } from '../../sample-swatches/truth-file.ts';
import type { TruthFile } from '../../sample-swatches/truth-file.ts';

const here = (name: string): string =>
  fileURLToPath(new URL(`../../sample-swatches/${name}`, import.meta.url));
const truth = JSON.parse(readFileSync(here('truth.json'), 'utf8')) as TruthFile;
const photos = readdirSync(here('')).filter((name) => name.endsWith('.jpg'));

describe('the sample photos', () => {
  it('take less than 12 MB together', () => {
    const bytes = photos.reduce((sum, name) => sum + statSync(here(name)).size, 0);
    expect(photos.length).toBeGreaterThan(0);
    expect(bytes).toBeLessThan(12e6);
  });

  it('are those of the script and of the truth file, of the size it tells', async () => {
    expect([...photos].sort()).toEqual(
      shoots()
        .map(({ file }) => file)
        .sort(),
    );
    expect(truth.photos.map(({ file }) => file).sort()).toEqual([...photos].sort());
    for (const { file, width, height } of truth.photos) {
      const found = await sharp(here(file)).metadata();
      expect([found.width, found.height]).toEqual([width, height]);
    }
  });

  it('hold nothing about a place, a person or a camera', async () => {
    for (const { exif, xmp, iptc } of await Promise.all(
      photos.map((name) => sharp(here(name)).metadata()),
    ))
      expect([exif, xmp, iptc]).toEqual([undefined, undefined, undefined]);
  });

  it('show what the generator draws today: one of them, drawn again smaller, has the same truth', async () => {
    const shoot = shoots().find(({ file }) => file === 'nightjar-front.jpg')!;
    const sides = shoot.scene.things.flatMap((thing) =>
      thing.kind === 'sheet' ? [thing.side] : [],
    );
    const again = await renderPhoto(
      makeScene(shoot.scene.seed, 'normal', sides, { pixels: 1300, surface: shoot.scene.surface }),
    );
    const kept = truth.photos.find(({ file }) => file === shoot.file)!;
    const by = kept.width / again.truth.width;
    kept.sheets.forEach((sheet, index) => {
      const other = again.truth.sheets[index]!;
      expect(other.pattern).toBe(sheet.pattern);
      sheet.corners.forEach(({ x, y }, corner) => {
        expect(other.corners[corner]!.x * by).toBeCloseTo(x, 0);
        expect(other.corners[corner]!.y * by).toBeCloseTo(y, 0);
      });
      for (const { lab, share } of sheet.palette)
        expect(
          other.palette.some(
            (colour) => Math.abs(colour.lab.l - lab.l) < 1 && Math.abs(colour.share - share) < 0.02,
          ),
        ).toBe(true);
    });
  });

  it('are named by the demo, with as many supplies as lie in each picture', () => {
    const kept = JSON.parse(readFileSync(here('demo.json'), 'utf8')) as typeof demo;
    expect(kept).toEqual(demo);
    for (const { file } of kept.photos) expect(photos).toContain(file);
    for (const { file, names } of kept.supplies) {
      const { squares, smears } = truth.photos.find((photo) => photo.file === file)!;
      expect([...squares, ...smears].map(({ name }) => name)).toEqual(names);
    }
  });
});

describe('a truth file', () => {
  it('is read as it was written, numbers to a ten thousandth', () => {
    const value = { list: [{ lab: { l: 1.23456789, a: -2, b: 0 }, corners: [[1, 2.00004]] }] };
    expect(JSON.parse(legible(value))).toEqual({
      list: [{ lab: { l: 1.2346, a: -2, b: 0 }, corners: [[1, 2]] }],
    });
  });
});
