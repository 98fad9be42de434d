/** What went wrong. */
export const mishapWords = {
  title: 'That did not work',
  again: 'Try again',
  tryAgain: 'Try again in a moment.',
  away: 'Take this notice away',
  unknown: (status: number): string => `The service answered with ${status}.`,
  unreachable: 'The service does not answer.',
  unreachableMend: 'Check that it still runs and that this device is on the same network.',
  unreadable: 'The answer of the service could not be read.',
  screen: 'This part of the page did not come.',
  screenMend: 'Your pads and plans are safe. Check that the service still runs, then try again.',
  drawing: 'This part of the page could not be drawn.',
  drawingMend: 'Your pads and plans are safe. Try again, or go to another step above.',
};
