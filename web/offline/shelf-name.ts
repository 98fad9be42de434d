/** The name under which the offline worker keeps answers; the worker, which is not built, spells it itself. */
export const SHELF = 'plyhue-shelf';
