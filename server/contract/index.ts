/** What goes over the wire, noun by noun. */
export * as values from './values.ts';
export * as health from './health.ts';
export * as pads from './pads.ts';
export * as supplies from './supplies.ts';
export * as layouts from './layouts.ts';
export * as plans from './plans.ts';
