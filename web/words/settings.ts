/** Settings of this device. */
export const settingsWords = {
  title: 'Your table',
  look: 'Light',
  looks: { auto: 'as the device', light: 'light', dark: 'dark' },
  ruler: 'Ruler',
  rulers: { in: 'inches', mm: 'millimetres' },
  print: 'Paper in your printer',
  prints: { letter: 'Letter', a4: 'A4' },
  stock: 'Sheets of your cardstock',
  stocks: { 'as-printed': 'as the printer’s', letter: '8 1/2 x 11 in', a4: 'A4' },
  kept: 'Kept on this device.',
};
