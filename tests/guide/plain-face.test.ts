import { expect, test } from 'vitest';
import { hexFromLab } from '../../server/colour/spaces.ts';
import { picturesIn } from '../../server/guide/drawing.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { plainFace } from '../../server/guide/plain-face.ts';
import { textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const ask = guideWorld(layoutsOf('us').slice(0, 2));

test('a side without a picture is drawn in its colours, each as broad as its share', () => {
  const { front } = ask.pad.sheets[0]!;
  const bands = plainFace(front, 10, 20, { width: 40, height: 50 });
  const said = bands.map((mark) => {
    if (mark.kind !== 'area') return [mark.kind];
    const ys = mark.corners.map(({ y }) => y);
    return [mark.fill, Math.min(...ys), Math.max(...ys)];
  });
  const [ground, accent] = front!.palette.colours;
  expect(said).toEqual([
    [hexFromLab(ground!.lab), 20, 50],
    [hexFromLab(accent!.lab), 50, 70],
  ]);
});

test('the guide says whose picture is missing, names what to do, and asks for no such picture', () => {
  const lost = guidePages({ ...ask, picture: (id) => (id === 'back-2' ? null : id) });
  const marks = lost.flatMap((page) => page.marks);
  expect(picturesIn(marks)).not.toContain('back-2');
  expect(picturesIn(marks)).toContain('front-2');
  const first = textOf(lost[0]!.marks).join(' ');
  expect(first).toMatch(
    /A picture of Sheet 2 is missing: .* plain colours.* delete the photo that it came from/,
  );
  const captions = textOf(lost.find(({ name }) => name.startsWith('First'))!.marks);
  expect(captions.filter((text) => text === 'back: no picture')).toHaveLength(1);
  const whole = guidePages(ask).flatMap((page) => textOf(page.marks));
  expect(whole.join(' ')).not.toMatch(/is missing|no picture/);
});
