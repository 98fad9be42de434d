/** The phone beside the laptop. */
export const phoneWords = {
  title: 'Use my phone',
  how: 'Point the camera of your phone at this picture. It opens this pad there, for adding photos and looking; the photos lie here by themselves.',
  picture: 'Picture of the address for the camera of the phone',
  address: 'Or type this address on the phone:',
  other: 'If it does not open, the phone may be on another of your networks; try:',
  until: (time: string): string => `Good for one phone, until ${time}.`,
  again: 'Another code',
  wifi: 'The phone must be on the same home network.',
  noNetwork: 'This computer has no address on a network: connect it to the one of your phone.',
  keys: 'Devices that may come in',
  keyFor: (name: string, whole: boolean): string =>
    whole ? `${name}: everything of yours` : `${name}: one pad, for photos`,
  takeAway: (name: string): string => `Do not let in any more: ${name}`,
  name: 'Phone',
  opening: 'Letting this device in …',
};
