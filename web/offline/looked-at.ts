import { remembered } from '../table/memory.ts';

const MOST = 100;

/** The pads that she looked at on this device, the last one first. */
const looked = remembered<readonly string[]>('looked-at', [], isIds);

export function lookedAt(): readonly string[] {
  return looked.peek();
}

export function noteLooked(pad: string): void {
  if (looked.peek()[0] === pad) return;
  looked.value = [pad, ...looked.peek().filter((one) => one !== pad)].slice(0, MOST);
}

function isIds(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((one) => typeof one === 'string');
}
