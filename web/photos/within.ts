import type { Corners } from '../../server/contract/values.ts';

/** Whether a place on a photo lies within four corners: a line from it to the right crosses their border once or thrice. */
export function within(corners: Corners, x: number, y: number): boolean {
  return corners.reduce((inside, [ax, ay], index) => {
    const [bx, by] = corners[(index + 1) % 4]!;
    const crosses = ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax);
    return crosses ? !inside : inside;
  }, false);
}
