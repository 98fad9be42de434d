import type { Pin, Plan } from '../../server/contract/plans.ts';
import type { Wishes } from './steps.ts';

/** The wishes behind a plan, as the service keeps them. */
export function wishesOf({ asked }: Plan): Wishes {
  return asked;
}

/** The pins with one more; a layer holds one pin, so an older one of that layer goes. */
export function withPin(pins: readonly Pin[], pin: Pin): Pin[] {
  return [...withoutPin(pins, pin.card, pin.layer), pin];
}

export function withoutPin(pins: readonly Pin[], card: number, layer: string): Pin[] {
  return pins.filter((pin) => pin.card !== card || pin.layer !== layer);
}

export function pinOf(pins: readonly Pin[], card: number, layer: string): Pin | undefined {
  return pins.find((pin) => pin.card === card && pin.layer === layer);
}
