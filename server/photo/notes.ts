import type { LightField } from './light.ts';
import type { Reference } from './white-reference.ts';

/** Sentences for her about the light and the white in her photo. */
export function notesOnLight({ range, error }: LightField): string[] {
  if (error > 0.1)
    return [
      'There is too little bare table in the picture to tell how the light falls; leave some around the papers.',
    ];
  if (range > 2.2)
    return [
      'The light is very uneven over the picture; it was evened, but daylight from a window without sun reads colours better.',
    ];
  return [];
}

/** How strongly the tones had been bent, 1 as a phone bends them; 0 when they were not. */
export function notesOnTones(bend: number): string[] {
  return bend === 0
    ? []
    : [
        'Something has deepened the dark tones of this picture to please; that was undone, but its colours are less sure. Send the file as the camera made it.',
      ];
}

export function notesOnWhite({ kind, burnt }: Reference): string[] {
  if (kind === 'none')
    return [
      'No white card was found, so all colours may be off together by more than a match allows; lay a plain white card beside the papers, or tap one.',
    ];
  if (burnt > 0.2)
    return ['The white card is too bright for the camera; take the photo a little darker.'];
  return [];
}
