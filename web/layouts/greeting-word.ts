import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import {
  ACROSS,
  ALONG,
  LONGEST,
  greetingRoom,
  type Room,
} from '../../server/layouts/greeting-room.ts';
import { elementsOf, type Element } from './elements.ts';
import { boxOf } from './place-layer.ts';

/** Height of the word where it is 1 long. */
export const HIGH = 0.411;

/** The word for what will be stamped on a greeting. */
export interface Word {
  /** In mm, along the longer side of the greeting. */
  readonly long: number;
  readonly upright: boolean;
  /** The box that it takes on the card, in mm. */
  readonly box: Room;
}

/** Where the word stands: along the longer side of a greeting, where nothing else is stamped or glued. */
export function greetingWord(layer: Layer, elements: readonly Element[]): Word {
  const whole = boxOf(layer);
  const on = elements.filter((one) => one.layer === layer.id);
  const { x, y, width, height } = greetingRoom(whole, on.map(boxOf));
  const upright = whole.height > whole.width;
  const [along, across] = upright ? [height, width] : [width, height];
  const long = Math.min(ALONG * along, (ACROSS * across) / HIGH, LONGEST);
  const [wide, high] = upright ? [HIGH * long, long] : [long, HIGH * long];
  return {
    long,
    upright,
    box: { x: x + (width - wide) / 2, y: y + (height - high) / 2, width: wide, height: high },
  };
}

/** A greeting whose words have become smaller, or lie under what is stamped or glued on it. */
export interface Squeezed {
  readonly layer: string;
  readonly elements: readonly Element[];
  /** Whether no stretch of it is left for the words. */
  readonly covered: boolean;
}

/** The greetings that what is stamped or glued on them leaves too little room. */
export function squeezedGreetings(layout: NewLayout): Squeezed[] {
  return layout.layers
    .filter(({ role }) => role === 'greeting')
    .flatMap((layer): Squeezed[] => {
      const elements = elementsOf(layout).filter((one) => one.layer === layer.id);
      const { long, box } = greetingWord(layer, elements);
      const covered = elements.some((one) => meet(boxOf(one), box));
      const squeezed = long < Math.min(SMALL, STILL_LARGE * greetingWord(layer, []).long);
      return covered || squeezed ? [{ layer: layer.id, elements, covered }] : [];
    });
}

/** Words that were made smaller than this (mm) are too small for most stamps. Common practice, no source. */
const SMALL = 25.4;
/** From this part of their size on, words look as large as before. */
const STILL_LARGE = 0.9;

/** Whether two boxes have an area in common. */
export function meet(one: Room, other: Room): boolean {
  return (
    one.x < other.x + other.width - SLACK &&
    other.x < one.x + one.width - SLACK &&
    one.y < other.y + other.height - SLACK &&
    other.y < one.y + one.height - SLACK
  );
}

/** Of rounding, in mm. */
const SLACK = 0.01;
